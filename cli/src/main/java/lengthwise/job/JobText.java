package lengthwise.job;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import lengthwise.model.Length;

/** Lines of a job file and the words in them, lengths in its units. */
final class JobText {
    /** Text that means itself in YAML without quotes, also within braces. */
    private static final Pattern PLAIN = Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{N}._/ -]*[\\p{L}\\p{N}._/-])?");

    private static final int COMMENT_COLUMN = 44;

    private final LengthUnit unit;
    private final StringBuilder lines = new StringBuilder();

    JobText(Job job) {
        unit = job.units().orElse(LengthUnit.CM);
    }

    void section(String key) {
        line("");
        line(key + ":");
    }

    void line(String line) {
        lines.append(line).append('\n');
    }

    void line(String line, String comment) {
        int blanks = Math.max(1, COMMENT_COLUMN - line.length());
        line(line + " ".repeat(blanks) + "# " + comment);
    }

    static String percent(double share) {
        return plain(BigDecimal.valueOf(share).movePointRight(2)) + " %";
    }

    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    static String braces(List<String> parts) {
        return "{" + String.join(", ", parts) + "}";
    }

    /** In the file's units, unless another unit is clearly shorter: 58 in, not 147.32 cm; 3 mm, not 0.3 cm. */
    String length(Length length) {
        String shortest = LengthText.print(length, unit);
        int limit = shortest.length() - 1;
        for (LengthUnit other : List.of(LengthUnit.MM, LengthUnit.CM, LengthUnit.M, LengthUnit.IN, LengthUnit.YD)) {
            String text = LengthText.print(length, other);
            if (text.length() < limit) {
                shortest = text;
                limit = text.length();
            }
        }
        return shortest;
    }

    static String quoted(String text) {
        boolean meansNothing = text.toLowerCase(Locale.ROOT).equals("null");
        if (PLAIN.matcher(text).matches() && !meansNothing) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints().forEach(point -> {
            if (point == '"' || point == '\\') {
                quoted.append('\\').appendCodePoint(point);
            } else if (Quote.isInvisible(point)) {
                quoted.append("\\U%08X".formatted(point));
            } else {
                quoted.appendCodePoint(point);
            }
        });
        return quoted.append('"').toString();
    }

    @Override
    public String toString() {
        return lines.toString();
    }
}
