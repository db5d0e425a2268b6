package lengthwise.pdf;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Looks at the table that says what the codes of a font mean before the library does, which puts down every code of a
 * range: one range may claim two thousand million (ISO 32000-1, section 9.10.3: first code, last code, meanings).
 */
final class ToUnicodeRanges {
    private static final Pattern RANGE =
            Pattern.compile("\\s*<([0-9A-Fa-f\\s]*)>\\s*<([0-9A-Fa-f\\s]*)>\\s*(?:<[^>]*>|\\[[^\\]]*\\])");
    private static final String BEGIN = "beginbfrange";
    private static final String END = "endbfrange";

    /** Three times the codes of two bytes. */
    private static final long MOST_CODES = 200_000;

    /** Codes have up to four bytes. */
    private static final int MOST_DIGITS = 8;

    private ToUnicodeRanges() {}

    /** Returns whether all ranges can be read, and have no more codes together than a font has letters. */
    static boolean areBounded(byte[] table) {
        String text = new String(table, StandardCharsets.ISO_8859_1);
        long codes = 0;
        for (int begin = text.indexOf(BEGIN); begin >= 0; begin = text.indexOf(BEGIN, begin + 1)) {
            int end = text.indexOf(END, begin);
            if (end < 0) {
                return false;
            }
            Matcher range = RANGE.matcher(text);
            int at = begin + BEGIN.length();
            while (range.region(at, end).lookingAt()) {
                String first = range.group(1).replaceAll("\\s", "");
                String last = range.group(2).replaceAll("\\s", "");
                if (first.isEmpty() || last.isEmpty() || Math.max(first.length(), last.length()) > MOST_DIGITS) {
                    return false;
                }
                codes += Math.max(0, (long) code(last) - code(first) + 1);
                at = range.end();
            }
            if (codes > MOST_CODES || !text.substring(at, end).isBlank()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns a code as the library takes it: a digit that is missing is 0 (ISO 32000-1, section 7.3.4.3), and the largest of four
     * bytes are negative.
     */
    private static int code(String digits) {
        return Integer.parseUnsignedInt(digits.length() % 2 == 0 ? digits : digits + "0", 16);
    }
}
