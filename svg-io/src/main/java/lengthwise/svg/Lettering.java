package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Estimates how wide text will be, without a font: the widths of common sans-serif faces, rounded up to the widest of
 * those that a viewer may put in their place. Text set by this estimate stays inside its box.
 */
final class Lettering {
    /** The faces asked for, in order; all of them are covered by the estimate. */
    static final String FACES = "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif";

    /** From baseline to the top of a capital, and from one baseline to the next, in parts of the font size. */
    static final double CAPITAL = 0.74;

    static final double LEADING = 1.22;

    private static final Pattern WORDS = Pattern.compile("\\s+");

    private Lettering() {}

    /** Returns the width of a line in parts of the font size. */
    static double width(String line) {
        return line.codePoints().mapToDouble(Lettering::width).sum();
    }

    private static double width(int c) {
        if (c > 0x2E7F) {
            return 1.1;
        }
        if ("iljI.,:;'|!· ".indexOf(c) >= 0) {
            return 0.36;
        }
        if ("ftr()[]-/\"1".indexOf(c) >= 0) {
            return c == '1' ? 0.64 : 0.46;
        }
        if ("mwMWOQ@%&".indexOf(c) >= 0 || c > 0x24F) {
            return 0.99;
        }
        return Character.isUpperCase(c) ? 0.74 : 0.64;
    }

    /** Breaks a text at blanks into lines no wider than {@code width} times the font size; a longer word stands alone. */
    static List<String> wrap(String text, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : WORDS.split(text.strip(), -1)) {
            if (line.length() > 0 && width(line + " " + word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
