package lengthwise.job;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/**
 * Lengths as makers write them: {@code 18 in}, {@code 1 1/4 in}, {@code 1/8 yd}, {@code 12.5 cm}, {@code 2 yd 4 in}.
 *
 * <p>Numbers are whole, decimal with a point, or fractions; the arithmetic is exact, and the result is the nearest
 * micrometre.
 */
public final class LengthText {
    private static final String NUMBER = "([0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\\.[0-9]+|[0-9]+)";
    private static final Pattern BARE = Pattern.compile(NUMBER);
    private static final Pattern TERM = Pattern.compile("\\G ?" + NUMBER + " ?(\\p{L}+|[\"″'′])");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[0-9]*,[0-9]+.*");
    private static final int LONGEST_TEXT = 40;
    private static final int LONGEST_DENOMINATOR = 4;
    private static final BigDecimal LONGEST = BigDecimal.valueOf(1_000_000_000L);
    private static final String EXAMPLES = "a length is a number and a unit: 12.5 cm, 1 1/4 in, 2 yd";

    /** Makers' rulers go down to a 64th of an inch. */
    private static final int FINEST_FRACTION = 64;

    private LengthText() {}

    /**
     * Reads a length that states its unit.
     *
     * @throws JobException in one clause, without a place, if the text is no length
     */
    public static Length parse(String text) throws JobException {
        String number = plain(text).replaceFirst("^- *", "");
        if (number.length() <= LONGEST_TEXT && BARE.matcher(number).matches()) {
            throw new JobException("found the bare number %s; write %s cm or %s in".formatted(number, number, number));
        }
        return parse(text, Optional.empty());
    }

    /**
     * Reads a length. It may be negative or zero.
     *
     * @param units what a bare number is measured in
     * @throws JobException in one clause, without a place, if the text is no length
     */
    public static Length parse(String text, Optional<LengthUnit> units) throws JobException {
        return new Length(
                micrometres(text, units).setScale(0, RoundingMode.HALF_UP).longValueExact());
    }

    /** Reads a length without rounding it to the grid, for what is multiplied afterwards. */
    static BigDecimal micrometres(String text, Optional<LengthUnit> units) throws JobException {
        String plain = plain(text);
        boolean negative = plain.startsWith("-");
        String unsigned = (negative ? plain.substring(1) : plain).trim();
        if (plain.length() > LONGEST_TEXT) {
            throw new JobException("found " + Quote.of(text) + "; " + EXAMPLES);
        }
        if (DECIMAL_COMMA.matcher(unsigned).matches()) {
            throw new JobException("found " + Quote.of(text) + "; numbers are written with a point: "
                    + Quote.of(unsigned.replace(',', '.')));
        }
        BigDecimal size = BARE.matcher(unsigned).matches() ? bare(unsigned, units) : sum(unsigned, text);
        if (size.compareTo(LONGEST) > 0) {
            throw new JobException("found " + Quote.of(text) + ", which is more than 1 km; is the unit right?");
        }
        return negative ? size.negate() : size;
    }

    private static BigDecimal bare(String number, Optional<LengthUnit> units) throws JobException {
        if (units.isEmpty()) {
            throw new JobException(("found the bare number %s and the file states no units; write %s cm or %s in, "
                            + "or put units: cm at the top of the file")
                    .formatted(number, number, number));
        }
        return times(number, units.get());
    }

    private static BigDecimal sum(String unsigned, String text) throws JobException {
        BigDecimal sum = BigDecimal.ZERO;
        Optional<LengthUnit> before = Optional.empty();
        int end = 0;
        Matcher term = TERM.matcher(unsigned);
        while (term.find()) {
            LengthUnit unit = unit(term.group(2), text);
            if (before.isPresent()
                    && (before.get().isMetric() != unit.isMetric()
                            || before.get().micrometres() <= unit.micrometres())) {
                throw new JobException("found %s, which mixes %s and %s; write it in one unit"
                        .formatted(Quote.of(text), before.get().symbol(), unit.symbol()));
            }
            before = Optional.of(unit);
            sum = sum.add(times(term.group(1), unit));
            end = term.end();
        }
        if (before.isEmpty() || end != unsigned.length()) {
            throw new JobException("found " + Quote.of(text) + "; " + EXAMPLES);
        }
        return sum;
    }

    private static LengthUnit unit(String name, String text) throws JobException {
        Optional<LengthUnit> unit = LengthUnit.named(name);
        if (unit.isEmpty()) {
            throw new JobException("found %s, and %s is no unit of length; the units are mm, cm, m, in, ft and yd"
                    .formatted(Quote.of(text), Quote.of(name)));
        }
        return unit.get();
    }

    /** A fraction is multiplied before it is divided, so that 1/3 yd is exact. */
    private static BigDecimal times(String number, LengthUnit unit) throws JobException {
        BigDecimal one = BigDecimal.valueOf(unit.micrometres());
        int slash = number.indexOf('/');
        if (slash < 0) {
            return new BigDecimal(number).multiply(one);
        }
        int gap = Math.max(number.indexOf(' '), number.indexOf('-'));
        BigInteger whole = gap < 0 ? BigInteger.ZERO : new BigInteger(number.substring(0, gap));
        BigInteger denominator = new BigInteger(number.substring(slash + 1));
        if (denominator.signum() == 0 || number.length() - slash - 1 > LONGEST_DENOMINATOR) {
            throw new JobException(
                    "found the fraction " + Quote.of(number) + ", which is no number; write 1/8 or 0.125");
        }
        BigInteger numerator = whole.multiply(denominator).add(new BigInteger(number.substring(gap + 1, slash)));
        return new BigDecimal(numerator).multiply(one).divide(new BigDecimal(denominator), MathContext.DECIMAL128);
    }

    /** Single plain spaces, a plain minus, and ½ as 1/2. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder();
        text.codePoints().forEach(point -> {
            String letter = Character.toString(point);
            String expanded = Normalizer.normalize(letter, Normalizer.Form.NFKC);
            boolean vulgarFraction = Character.getType(point) == Character.OTHER_NUMBER && expanded.indexOf('⁄') >= 0;
            plain.append(vulgarFraction ? " " + expanded : letter);
        });
        return plain.toString()
                .replace('⁄', '/')
                .replace('−', '-')
                .replaceAll("[\\s\\p{Z}]+", " ")
                .trim();
    }

    /** Returns text that reads back as the same length, {@code 1 1/4 in}, {@code 12.5 cm}: exact, not rounded to a tape. */
    public static String print(Length length, LengthUnit unit) {
        String sign = length.micrometres() < 0 ? "-" : "";
        long size = Math.abs(length.micrometres());
        if (!unit.isMetric()) {
            for (int parts = 1; parts <= FINEST_FRACTION; parts *= 2) {
                long count = nearestCount(size, parts, unit);
                if (nearest(BigDecimal.valueOf(count * unit.micrometres())
                                .divide(BigDecimal.valueOf(parts), MathContext.DECIMAL128))
                        == size) {
                    return sign + LengthWords.fraction(count, parts) + " " + unit.symbol();
                }
            }
        }
        BigDecimal one = BigDecimal.valueOf(unit.micrometres());
        int digits = 0;
        BigDecimal value;
        do {
            value = BigDecimal.valueOf(size).divide(one, digits++, RoundingMode.HALF_UP);
        } while (nearest(value.multiply(one)) != size);
        return sign + value.toPlainString() + " " + unit.symbol();
    }

    private static long nearestCount(long size, long parts, LengthUnit unit) {
        return nearest(BigDecimal.valueOf(size * parts)
                .divide(BigDecimal.valueOf(unit.micrometres()), MathContext.DECIMAL128));
    }

    private static long nearest(BigDecimal value) {
        return value.setScale(0, RoundingMode.HALF_UP).longValueExact();
    }
}
