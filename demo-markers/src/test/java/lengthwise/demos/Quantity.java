package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A length as a page shows it, for example "3.300 m" or "3 5/8 yd". 1 in = 25.4 mm and 1 yd = 36 in exactly (International
 * Yard and Pound Agreement, 1959).
 *
 * @param step the least that the figure can tell apart, in its unit
 */
record Quantity(double value, double step, String unit) {
    private static final Pattern SHOWN = Pattern.compile(
            "(?<![\\d./−-])(−?)(?:(\\d+)\\.(\\d+)|(?:(\\d+) )?(\\d+)/(\\d+)|(\\d+)) (mm|cm|m|in|yd)(?![a-z²/])");

    static List<Quantity> in(String text) {
        List<Quantity> found = new ArrayList<>();
        Matcher shown = SHOWN.matcher(text);
        while (shown.find()) {
            String unit = shown.group(8);
            double sign = shown.group(1).isEmpty() ? 1 : -1;
            double value;
            if (shown.group(2) != null) {
                value = Double.parseDouble(shown.group(2) + "." + shown.group(3));
            } else if (shown.group(5) != null) {
                value = (shown.group(4) == null ? 0 : Double.parseDouble(shown.group(4)))
                        + Double.parseDouble(shown.group(5)) / Double.parseDouble(shown.group(6));
            } else {
                value = Double.parseDouble(shown.group(7));
            }
            found.add(new Quantity(sign * value, step(unit), unit));
        }
        return found;
    }

    /** Metres and centimetres are shown to the millimetre, what is shorter to a tenth; inches and yards to an eighth. */
    private static double step(String unit) {
        return switch (unit) {
            case "m" -> 0.001;
            case "cm", "mm" -> 0.1;
            default -> 0.125;
        };
    }

    private double millimetres() {
        return switch (unit) {
            case "m" -> 1000;
            case "cm" -> 10;
            case "mm" -> 1;
            case "in" -> 25.4;
            case "yd" -> 914.4;
            default -> throw new IllegalStateException(unit);
        };
    }

    /** Says whether a length, rounded to the nearest step, is shown so. */
    boolean shows(double mm) {
        return Math.abs(value - mm / millimetres()) <= step / 2 + 1e-9;
    }

    /** Says whether a length to buy, rounded up to the next step, is shown so. */
    boolean showsUp(double mm) {
        double over = value - mm / millimetres();
        return over > -1e-9 && over < step;
    }

    /** Says whether what nothing is shorter than, rounded down to the step before, is shown so. */
    boolean showsDown(double mm) {
        double under = mm / millimetres() - value;
        return under > -1e-9 && under < step;
    }

    /** A cell that shows one length in both systems, or one of them. */
    static void assertShows(String cell, double mm) {
        assertThat(in(cell))
                .as(cell)
                .isNotEmpty()
                .allSatisfy(shown ->
                        assertThat(shown.shows(mm)).as("%s for %s mm", cell, mm).isTrue());
    }

    static void assertShowsAtLeast(String cell, double mm) {
        assertThat(in(cell))
                .as(cell)
                .isNotEmpty()
                .allSatisfy(shown -> assertThat(shown.showsDown(mm))
                        .as("%s for %s mm", cell, mm)
                        .isTrue());
    }

    static void assertShowsToBuy(String cell, double mm) {
        assertThat(in(cell))
                .as(cell)
                .isNotEmpty()
                .allSatisfy(shown -> assertThat(shown.showsUp(mm))
                        .as("%s for %s mm", cell, mm)
                        .isTrue());
    }
}
