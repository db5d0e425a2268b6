package lengthwise.dxf;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import lengthwise.drawing.DrawingException;

/**
 * Reads a DXF file group by group: a line with a whole number that says what follows, and a line with the value. Lines
 * end in any of the usual ways; blanks around both are no part of them.
 */
final class GroupReader {
    private static final int LONGEST_TEXT = 20_000;
    private static final int NO_CODE = Integer.MIN_VALUE;
    private static final byte RETURN = '\r';
    private static final byte NEW_LINE = '\n';

    private final String file;
    private final byte[] bytes;
    private final Charset charset;

    private int at;
    private int lines;
    private int code;
    private int from;
    private int to;

    GroupReader(String file, byte[] bytes, Charset charset) {
        this.file = file;
        this.bytes = bytes;
        this.charset = charset;
    }

    /** Returns a reader of the same file that goes on from a mark. */
    GroupReader from(Mark mark) {
        GroupReader other = new GroupReader(file, bytes, charset);
        other.at = mark.at;
        other.lines = mark.lines;
        return other;
    }

    /** A place in the file, behind a group. */
    record Mark(int at, int lines) {}

    Mark mark() {
        return new Mark(at, lines);
    }

    /** Goes to the next group; says whether there is one. */
    boolean next() throws DrawingException {
        code = NO_CODE;
        if (!nextLine()) {
            return false;
        }
        int number = lines;
        if (from == to && onlyBlanksFollow()) {
            return false;
        }
        int found = wholeNumber(number);
        if (!nextLine()) {
            return false;
        }
        code = found;
        return true;
    }

    /** Returns the number of the group; none that files have where there is no further group. */
    int code() {
        return code;
    }

    /** Returns the number of the value's line, from 1. */
    int line() {
        return lines;
    }

    boolean is(String value) {
        if (to - from != value.length()) {
            return false;
        }
        for (int i = 0; i < value.length(); i++) {
            if (bytes[from + i] != value.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** Returns the value as text. */
    String text() {
        return new String(bytes, from, Math.min(to - from, LONGEST_TEXT), charset);
    }

    /** Returns the value as a word of ASCII, such as the kind of an entity. */
    String word() {
        return new String(bytes, from, Math.min(to - from, 100), StandardCharsets.ISO_8859_1);
    }

    /** Goes to the next line and sets its ends, without the blanks around it. */
    private boolean nextLine() {
        if (at >= bytes.length) {
            return false;
        }
        int end = at;
        while (end < bytes.length && bytes[end] != RETURN && bytes[end] != NEW_LINE) {
            end++;
        }
        from = at;
        to = end;
        boolean both = end + 1 < bytes.length && bytes[end] == RETURN && bytes[end + 1] == NEW_LINE;
        at = both ? end + 2 : end + 1;
        lines++;
        while (from < to && isBlank(bytes[from])) {
            from++;
        }
        while (to > from && isBlank(bytes[to - 1])) {
            to--;
        }
        return true;
    }

    /** The end-of-file sign of old systems counts as a blank. */
    private static boolean isBlank(byte letter) {
        return letter >= 0 && letter <= ' ';
    }

    private boolean onlyBlanksFollow() {
        for (int i = at; i < bytes.length; i++) {
            if (!isBlank(bytes[i])) {
                return false;
            }
        }
        return true;
    }

    private int wholeNumber(int line) throws DrawingException {
        boolean sign = from < to && bytes[from] == '-';
        int digits = sign ? from + 1 : from;
        int value = 0;
        for (int i = digits; i < to && to - digits <= 6; i++) {
            int digit = bytes[i] - '0';
            if (digit < 0 || digit > 9) {
                value = -1;
                break;
            }
            value = 10 * value + digit;
        }
        if (digits == to || to - digits > 6 || value < 0) {
            throw new DrawingException(
                    "%s, line %d: found \"%s\" where the number of a group must stand; the file is damaged, or no DXF: export it again as ASCII DXF."
                            .formatted(file, line, Shown.of(word())));
        }
        return sign ? -value : value;
    }
}
