package lengthwise.job;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Length;

/**
 * Reads numbers, shares and lengths, in the units of one job file.
 *
 * @param units what a bare number is measured in
 */
record Measuring(Optional<LengthUnit> units) {
    private static final Pattern PERCENT = Pattern.compile("([0-9]+(?:\\.[0-9]+)?) ?%");
    private static final Pattern FACTOR = Pattern.compile("([0-9]{1,4}(?:\\.[0-9]{1,6})?) ?(%)?");
    private static final BigDecimal MOST_TIMES = BigDecimal.valueOf(100);
    private static final Pattern WHOLE = Pattern.compile("[+-]?[0-9]{1,9}");
    private static final BigDecimal MOST_SHRINKAGE = BigDecimal.valueOf(50);
    private static final BigDecimal SMALLEST_UNIT = BigDecimal.ONE;
    private static final BigDecimal LARGEST_UNIT = BigDecimal.valueOf(1_000_000);
    private static final String EXAMPLE = "a length, such as 12.5 cm or 1 1/4 in";

    /** A length of either sign. */
    Length signed(Entry entry) throws JobException {
        String text = entry.text(EXAMPLE);
        try {
            return LengthText.parse(text, units);
        } catch (JobException e) {
            throw entry.error(e.getMessage());
        }
    }

    Length notNegative(Entry entry) throws JobException {
        Length length = signed(entry);
        if (length.micrometres() < 0) {
            throw entry.error("found %s; it must not be negative".formatted(Quote.of(entry.text(EXAMPLE))));
        }
        return length;
    }

    Length positive(Entry entry) throws JobException {
        Length length = signed(entry);
        if (length.micrometres() <= 0) {
            throw entry.error("found %s; it must be more than 0".formatted(Quote.of(entry.text(EXAMPLE))));
        }
        return length;
    }

    Length positive(Entry entry, Length most) throws JobException {
        return atMost(most, positive(entry), entry);
    }

    Length notNegative(Entry entry, Length most) throws JobException {
        return atMost(most, notNegative(entry), entry);
    }

    private static Length atMost(Length most, Length length, Entry entry) throws JobException {
        if (length.compareTo(most) > 0) {
            throw entry.error("found %s, which is more than %s; is the unit right?"
                    .formatted(Quote.of(entry.text(EXAMPLE)), LengthText.print(most, LengthUnit.M)));
        }
        return length;
    }

    /** A factor from the drawing's units to millimetres, not rounded to the grid. */
    double millimetresPerUnit(Entry entry) throws JobException {
        String text = entry.text("the length of one unit of the drawing, such as 1 mm or 1/96 in");
        try {
            return millimetresPerUnit(text, units);
        } catch (JobException e) {
            throw entry.error(e.getMessage());
        }
    }

    static double millimetresPerUnit(String text, Optional<LengthUnit> units) throws JobException {
        BigDecimal micrometres = LengthText.micrometres(text, units);
        if (micrometres.compareTo(SMALLEST_UNIT) < 0 || micrometres.compareTo(LARGEST_UNIT) > 0) {
            throw new JobException("found %s; one unit of a drawing is from 0.001 mm to 1 m".formatted(Quote.of(text)));
        }
        return micrometres.movePointLeft(3).doubleValue();
    }

    /** A percentage from 0 to below 50, as a fraction: 0.03 for 3 %. */
    static double share(Entry entry) throws JobException {
        String text = entry.text("a percentage, such as 3 %");
        Matcher percent = PERCENT.matcher(text);
        if (!percent.matches()) {
            throw entry.error(
                    "found " + Quote.of(text) + "; write a percentage from 0 % to below 50 %, such as 3 % or 2.5 %");
        }
        BigDecimal value = new BigDecimal(percent.group(1));
        if (value.compareTo(MOST_SHRINKAGE) >= 0) {
            throw entry.error("found " + Quote.of(text) + "; it must be below 50 %");
        }
        return value.movePointLeft(2).doubleValue();
    }

    /** A factor above 0, written as a number or a percentage: 0.75 or 75 %. */
    static double factor(Entry entry) throws JobException {
        String example = "a factor such as 0.75 or 75 %";
        String text = entry.text(example);
        Matcher factor = FACTOR.matcher(text);
        if (!factor.matches()) {
            throw entry.error("found " + Quote.of(text) + "; write " + example);
        }
        BigDecimal number = new BigDecimal(factor.group(1)).movePointLeft(factor.group(2) == null ? 0 : 2);
        if (number.signum() == 0 || number.compareTo(MOST_TIMES) > 0) {
            throw entry.error("found %s; it must be more than 0 and at most %s"
                    .formatted(Quote.of(text), MOST_TIMES.toPlainString()));
        }
        return number.doubleValue();
    }

    /** A whole number from 1 to a largest one. */
    static int count(Entry entry, int most, String example) throws JobException {
        String text = entry.text(example);
        if (!WHOLE.matcher(text).matches()) {
            throw entry.error("found " + Quote.of(text) + "; write a whole number from 1 to " + most);
        }
        int count = Integer.parseInt(text);
        if (count < 1 || count > most) {
            throw entry.error("found " + Quote.of(text) + "; write a whole number from 1 to " + most);
        }
        return count;
    }
}
