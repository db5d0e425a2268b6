package lengthwise.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures for people, the same in every locale: a point before the decimals, a thin blank between thousands. */
final class Figures {
    private Figures() {}

    /** Returns for example "85.00 %". */
    static String percent(double fraction) {
        return fixed(fraction * 100, 2) + " %";
    }

    static String money(double amount) {
        return fixed(amount, 2);
    }

    /** Returns an area in whole mm². */
    static String squareMillimetres(double area) {
        String digits = fixed(area, 0);
        StringBuilder grouped = new StringBuilder(digits);
        for (int i = digits.length() - 3; i > (digits.startsWith("-") ? 1 : 0); i -= 3) {
            grouped.insert(i, '\u202F');
        }
        return grouped.toString();
    }

    /** Returns an area in m² to a square centimetre. */
    static String squareMetres(double squareMillimetres) {
        return fixed(squareMillimetres / 1e6, 4);
    }

    static String fixed(double value, int digits) {
        return BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).toPlainString();
    }
}
