package lengthwise.svg;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * Says whether a document ends within its DOCTYPE. The XML parser of Java refuses such a file too, but not before it has written
 * stack traces of its own to the standard error stream, and no setting stops that.
 *
 * <p>What a DOCTYPE may hold: <i>Extensible Markup Language (XML) 1.0</i>, fifth edition, 2008, productions 28 to 30.
 */
final class Doctype {
    private final String text;
    private int at;

    private Doctype(String text) {
        this.text = text;
    }

    static boolean isCutShort(byte[] document) {
        return new Doctype(new String(document, charset(document))).endsInside();
    }

    /** What counts here is ASCII, wherever it is not told in two bytes. */
    private static Charset charset(byte[] document) {
        if (document.length > 1) {
            int first = ((document[0] & 0xff) << 8) | (document[1] & 0xff);
            if (first == 0xfeff || first == '<') {
                return StandardCharsets.UTF_16BE;
            }
            if (first == 0xfffe || first == '<' << 8) {
                return StandardCharsets.UTF_16LE;
            }
        }
        return StandardCharsets.ISO_8859_1;
    }

    private boolean endsInside() {
        if (!findsStart()) {
            return false;
        }
        boolean subset = false;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (text.startsWith("<!--", at)) {
                skip("<!--", "-->");
            } else if (text.startsWith("<?", at)) {
                skip("<?", "?>");
            } else if (c == '"' || c == '\'') {
                skip(String.valueOf(c), String.valueOf(c));
            } else if (c == '[') {
                subset = true;
                at++;
            } else if (c == ']') {
                subset = false;
                at++;
            } else if (c == '>' && !subset) {
                return false;
            } else {
                at++;
            }
        }
        return true;
    }

    /** Goes past {@code <!DOCTYPE}, over what may stand before it; answers whether there is one. */
    private boolean findsStart() {
        while (at < text.length()) {
            if (text.startsWith("<!DOCTYPE", at)) {
                at += "<!DOCTYPE".length();
                return true;
            }
            if (text.startsWith("<!--", at)) {
                skip("<!--", "-->");
            } else if (text.startsWith("<?", at)) {
                skip("<?", "?>");
            } else if (text.charAt(at) == '<') {
                return false;
            } else {
                at++;
            }
        }
        return false;
    }

    private void skip(String opening, String closing) {
        int end = text.indexOf(closing, at + opening.length());
        at = end < 0 ? text.length() : end + closing.length();
    }
}
