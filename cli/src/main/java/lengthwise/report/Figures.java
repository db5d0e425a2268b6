package lengthwise.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures for people, the same in every locale: a point before the decimals. */
final class Figures {
    private Figures() {}

    /** Returns for example "85.00 %". */
    static String percent(double fraction) {
        return fixed(fraction * 100, 2) + " %";
    }

    static String money(double amount) {
        return fixed(amount, 2);
    }

    /** Returns an area in m² to a square centimetre. */
    static String squareMetres(double squareMillimetres) {
        return fixed(squareMillimetres / 1e6, 4);
    }

    /** Returns an area in square yards; 1 yd = 0.9144 m exactly (International Yard and Pound Agreement, 1959). */
    static String squareYards(double squareMillimetres) {
        return fixed(squareMillimetres / (914.4 * 914.4), 4);
    }

    static String fixed(double value, int digits) {
        return BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).toPlainString();
    }
}
