package lengthwise.svg;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A length as an SVG attribute states it.
 *
 * <p>Reference: W3C, <i>CSS Values and Units Level 3</i>, section 6: 1 in = 2.54 cm = 96 px = 72 pt = 6 pc; a Q is a
 * quarter of a millimetre. The size of a letter (em, ex) is taken as 16 px and half of that.
 */
record SvgLength(double value, Unit unit) {
    /** Millimetres in one CSS pixel. */
    static final double PIXEL = 25.4 / 96;

    enum Unit {
        NONE("", PIXEL, false),
        PX("px", PIXEL, false),
        PERCENT("%", 0, false),
        MM("mm", 1, true),
        CM("cm", 10, true),
        Q("q", 0.25, true),
        IN("in", 25.4, true),
        PT("pt", 25.4 / 72, true),
        PC("pc", 25.4 / 6, true),
        EM("em", 16 * PIXEL, false),
        REM("rem", 16 * PIXEL, false),
        EX("ex", 8 * PIXEL, false);

        private final String suffix;
        private final double millimetres;
        private final boolean physical;

        Unit(String suffix, double millimetres, boolean physical) {
            this.suffix = suffix;
            this.millimetres = millimetres;
            this.physical = physical;
        }
    }

    /** Returns the length that a text states; empty if it states none. */
    static Optional<SvgLength> parse(String text) {
        Scanner scanner = new Scanner(text.strip());
        OptionalDouble number = scanner.number();
        if (number.isEmpty()) {
            return Optional.empty();
        }
        String suffix = text.strip().substring(scanner.position()).strip().toLowerCase(Locale.ROOT);
        for (Unit unit : Unit.values()) {
            if (unit.suffix.equals(suffix)) {
                return Optional.of(new SvgLength(number.getAsDouble(), unit));
            }
        }
        return Optional.empty();
    }

    /** Says whether the unit is one that a ruler knows. */
    boolean isPhysical() {
        return unit.physical;
    }

    double millimetres() {
        return value * unit.millimetres;
    }

    /** Returns the length in user units, a percentage being one of {@code whole}. */
    double userUnits(double whole) {
        return switch (unit) {
            case NONE, PX -> value;
            case PERCENT -> value / 100 * whole;
            default -> millimetres() / PIXEL;
        };
    }
}
