package lengthwise.dxf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads lettering as DXF files have it: letters by number, signs by code, and the formatting of long texts. */
final class DxfText {
    private static final Pattern BY_NUMBER = Pattern.compile("\\\\[Uu]\\+([0-9A-Fa-f]{4})");
    private static final Pattern SIGN = Pattern.compile("%%(\\d{3}|.)", Pattern.DOTALL);
    private static final Pattern CONTROL = Pattern.compile("\\^(.)", Pattern.DOTALL);

    /** Formatting with an argument up to a semicolon, and such without. */
    private static final Pattern FORMAT = Pattern.compile("\\\\[ACcfFHQTWp][^;\\\\{}]*;|\\\\[LlOoKkNX]");

    private static final Pattern STACKED = Pattern.compile("\\\\S([^;]*);");

    private DxfText() {}

    /** Returns the words of a single line. */
    static String plain(String value) {
        String signs = SIGN.matcher(value).replaceAll(found -> Matcher.quoteReplacement(sign(found.group(1))));
        String controls =
                CONTROL.matcher(signs).replaceAll(found -> found.group(1).equals(" ") ? "^" : " ");
        return byNumber(controls).replaceAll("\\p{Cntrl}", " ").strip();
    }

    /** Returns the lines of a text that may have several. */
    static List<String> lines(String value) {
        // A doubled backslash is one that formats nothing: kept aside until the end.
        String aside = byNumber(value)
                .replace("\\\\", "\u0001")
                .replace("\\{", "\u0002")
                .replace("\\}", "\u0003");
        String stacked = STACKED.matcher(aside)
                .replaceAll(found -> Matcher.quoteReplacement(found.group(1).replaceAll("[#^]", "/")));
        String bare = FORMAT.matcher(stacked.replace("\\~", " ")).replaceAll("").replaceAll("[{}]", "");
        List<String> lines = new ArrayList<>();
        for (String line : Arrays.asList(bare.split("\\\\P|\n", -1))) {
            String words =
                    plain(line.replace('\u0001', '\\').replace('\u0002', '{').replace('\u0003', '}'));
            if (!words.isEmpty()) {
                lines.add(words);
            }
        }
        return lines;
    }

    private static String byNumber(String text) {
        return BY_NUMBER
                .matcher(text)
                .replaceAll(
                        found -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(found.group(1), 16))));
    }

    private static String sign(String code) {
        return switch (code) {
            case "d", "D" -> "°";
            case "p", "P" -> "±";
            case "c", "C" -> "⌀";
            case "%" -> "%";
            // Lines over and under the words.
            case "o", "O", "u", "U", "k", "K" -> "";
            default -> code.length() == 3 ? String.valueOf((char) Integer.parseInt(code)) : code;
        };
    }
}
