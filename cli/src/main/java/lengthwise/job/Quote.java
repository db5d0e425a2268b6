package lengthwise.job;

/** Shows text from a file in a message: in quotes, on one line, not too long, nothing invisible. */
public final class Quote {
    private static final int LONGEST = 60;

    private Quote() {}

    /** Returns the text as it can be shown. */
    public static String of(String text) {
        StringBuilder shown = new StringBuilder("\"");
        text.codePoints().limit(LONGEST).forEach(point -> {
            shown.append(isInvisible(point) ? "\\u%04x".formatted(point) : Character.toString(point));
        });
        return shown.append(text.codePointCount(0, text.length()) > LONGEST ? "…\"" : "\"")
                .toString();
    }

    /** Says whether the text has line breaks or other control characters in it. */
    public static boolean breaksLine(String text) {
        return text.codePoints().anyMatch(Quote::breaksLine);
    }

    private static boolean breaksLine(int point) {
        int type = Character.getType(point);
        return type == Character.CONTROL || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR;
    }

    static boolean isInvisible(int point) {
        int type = Character.getType(point);
        return breaksLine(point)
                || type == Character.FORMAT
                || type == Character.SURROGATE
                || type == Character.PRIVATE_USE
                || type == Character.UNASSIGNED;
    }
}
