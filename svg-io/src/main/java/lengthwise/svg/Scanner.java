package lengthwise.svg;

import java.util.OptionalDouble;

/**
 * Reads the numbers of SVG attributes in double precision, one after the other: {@code "10.5.5-3e2.1"} gives 10.5,
 * 0.5, −300 and 0.1.
 *
 * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, section 8.3.9, the grammar for path data.
 */
final class Scanner {
    private final String text;
    private int at;

    Scanner(String text) {
        this.text = text;
    }

    /** Returns the position of the next character, from 0. */
    int position() {
        return at;
    }

    boolean atEnd() {
        skipSeparators();
        return at >= text.length();
    }

    /** Returns the next character without taking it; 0 at the end. */
    char peek() {
        return at < text.length() ? text.charAt(at) : 0;
    }

    char take() {
        return text.charAt(at++);
    }

    void skipSeparators() {
        while (at < text.length() && isSeparator(text.charAt(at))) {
            at++;
        }
    }

    private static boolean isSeparator(char c) {
        return c == ' ' || c == ',' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
    }

    /** Takes a number, after separators. Takes nothing but separators where none stands. */
    OptionalDouble number() {
        skipSeparators();
        int start = at;
        int i = at;
        if (i < text.length() && (text.charAt(i) == '+' || text.charAt(i) == '-')) {
            i++;
        }
        int whole = digits(i);
        int fraction = 0;
        int end = i + whole;
        if (end < text.length() && text.charAt(end) == '.') {
            fraction = digits(end + 1);
            end += whole + fraction > 0 ? 1 + fraction : 0;
        }
        if (whole + fraction == 0) {
            return OptionalDouble.empty();
        }
        at = exponent(end);
        double value = Double.parseDouble(text.substring(start, at));
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    /** Takes an arc flag, which needs no separator after it. */
    OptionalDouble flag() {
        skipSeparators();
        char c = peek();
        if (c != '0' && c != '1') {
            return OptionalDouble.empty();
        }
        at++;
        return OptionalDouble.of(c - '0');
    }

    private int exponent(int end) {
        if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            int sign = end + 1;
            if (sign < text.length() && (text.charAt(sign) == '+' || text.charAt(sign) == '-')) {
                sign++;
            }
            int digits = digits(sign);
            return digits == 0 ? end : sign + digits;
        }
        return end;
    }

    private int digits(int from) {
        int i = from;
        while (i < text.length() && text.charAt(i) >= '0' && text.charAt(i) <= '9') {
            i++;
        }
        return i - from;
    }
}
