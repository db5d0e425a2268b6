package lengthwise.model;

/**
 * Lengths in words for people, in metric and in inches or yards with fractions as on a tape measure; the same in every
 * locale. 1 in = 25.4 mm and 1 yd = 36 in exactly (International Yard and Pound Agreement, 1959).
 */
public final class LengthWords {
    private static final long INCH = 25_400;
    private static final long YARD = 36 * INCH;
    private static final long MILLIMETRE = 1_000;

    private LengthWords() {}

    /** Returns for example "46.2 cm (18 1/4 in)": to the nearest millimetre and eighth of an inch. */
    public static String both(Length length) {
        return metric(length) + " (" + inches(length, 8) + ")";
    }

    /** Returns metres from 1 m on, centimetres from 1 cm on, else millimetres; to the millimetre or, below 1 cm, to a tenth. */
    public static String metric(Length length) {
        long size = Math.abs(length.micrometres());
        if (size >= 1_000 * MILLIMETRE - MILLIMETRE / 2) {
            return decimal(length.micrometres(), MILLIMETRE, 3) + " m";
        }
        if (size >= 10 * MILLIMETRE) {
            return withoutTrailingZeros(decimal(length.micrometres(), MILLIMETRE, 1)) + " cm";
        }
        return withoutTrailingZeros(decimal(length.micrometres(), MILLIMETRE / 10, 1)) + " mm";
    }

    /** Returns the same as {@link #both}, each rounded down: what nothing is shorter than is never said to be more. */
    public static String atLeast(Length length) {
        return metricDown(length) + " (" + inchesDown(length) + ")";
    }

    /** Returns the same as {@link #metric}, rounded down to the millimetre. */
    public static String metricDown(Length length) {
        return metric(length.downTo(new Length(MILLIMETRE)));
    }

    /** Returns inches, rounded down to an eighth. */
    public static String inchesDown(Length length) {
        return inches(length.downTo(new Length(INCH / 8)), 8);
    }

    /** Returns centimetres to the millimetre, whatever the length: for columns of figures. */
    public static String centimetres(Length length) {
        return decimal(length.micrometres(), MILLIMETRE, 1);
    }

    /** Returns inches to the nearest part, a power of two, in lowest terms: "18 1/4 in". */
    public static String inches(Length length, int parts) {
        return fraction(roundedDivision(length.micrometres() * parts, INCH), parts) + " in";
    }

    /** Returns yards, rounded up to an eighth: what to ask for in a shop that sells by the yard. */
    public static String yardsUp(Length length) {
        return fraction(Math.floorDiv(length.micrometres() * 8 + YARD - 1, YARD), 8) + " yd";
    }

    /** Returns a length to buy in metres, rounded up to the millimetre, and in yards, rounded up to an eighth. */
    public static String toBuy(Length length) {
        return metricUp(length) + " (" + yardsUp(length) + ")";
    }

    /** Returns the same as {@link #metric}, rounded up to the millimetre: never less than there is to buy. */
    public static String metricUp(Length length) {
        return metric(length.upTo(new Length(MILLIMETRE)));
    }

    /** A number of units of {@code step} micrometres each, with a point before the last {@code digits} digits. */
    private static String decimal(long micrometres, long step, int digits) {
        long units = roundedDivision(Math.abs(micrometres), step);
        StringBuilder text = new StringBuilder(Long.toString(units));
        while (text.length() <= digits) {
            text.insert(0, '0');
        }
        text.insert(text.length() - digits, '.');
        return (micrometres < 0 && units != 0 ? "−" : "") + text;
    }

    private static String withoutTrailingZeros(String decimal) {
        return decimal.endsWith(".0") ? decimal.substring(0, decimal.length() - 2) : decimal;
    }

    /** Returns a number of parts, a power of two of them to the whole, in lowest terms: 5 of 4 are "1 1/4". */
    public static String fraction(long count, int parts) {
        long rest = Math.abs(count) % parts;
        long whole = Math.abs(count) / parts;
        String sign = count < 0 ? "−" : "";
        if (rest == 0) {
            return sign + whole;
        }
        int common = Integer.lowestOneBit((int) rest);
        String part = rest / common + "/" + parts / common;
        return sign + (whole == 0 ? part : whole + " " + part);
    }

    private static long roundedDivision(long value, long by) {
        return Math.floorDiv(2 * value + by, 2 * by);
    }
}
