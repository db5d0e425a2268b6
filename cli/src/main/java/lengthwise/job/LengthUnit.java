package lengthwise.job;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The units a maker writes lengths in. An inch is 25.4 mm and a yard 0.9144 m exactly (International Yard and Pound
 * Agreement, 1959; NIST Handbook 44, appendix C).
 */
public enum LengthUnit {
    MM(1_000, "mm", "millimetre millimetres millimeter millimeters"),
    CM(10_000, "cm", "centimetre centimetres centimeter centimeters"),
    M(1_000_000, "m", "metre metres meter meters"),
    IN(25_400, "in", "\" ″ inch inches"),
    FT(304_800, "ft", "' ′ foot feet"),
    YD(914_400, "yd", "yard yards");

    private final long micrometres;
    private final String symbol;
    private final String otherNames;

    LengthUnit(long micrometres, String symbol, String otherNames) {
        this.micrometres = micrometres;
        this.symbol = symbol;
        this.otherNames = otherNames;
    }

    public long micrometres() {
        return micrometres;
    }

    /** Returns the short name that is printed: mm, cm, m, in, ft, yd. */
    public String symbol() {
        return symbol;
    }

    public boolean isMetric() {
        return this == MM || this == CM || this == M;
    }

    static Optional<LengthUnit> named(String name) {
        String small = name.toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(small)
                        || List.of(unit.otherNames.split(" ", -1)).contains(small))
                .findFirst();
    }
}
