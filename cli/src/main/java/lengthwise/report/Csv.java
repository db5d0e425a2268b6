package lengthwise.report;

import java.util.List;
import java.util.stream.Collectors;

/** Comma-separated values as RFC 4180 has them: CRLF behind each line, quotes where a value needs them. */
public final class Csv {
    private Csv() {}

    /** Returns the rows as one text. */
    public static String of(List<List<String>> rows) {
        return rows.stream()
                .map(row -> row.stream().map(Csv::cell).collect(Collectors.joining(",", "", "\r\n")))
                .collect(Collectors.joining());
    }

    /** What a spreadsheet would take for a formula gets an apostrophe before it; a plain number is left alone. */
    private static String cell(String value) {
        boolean formula =
                !value.isEmpty() && "=+-@\t\r".indexOf(value.charAt(0)) >= 0 && !value.matches("-?[0-9]+(\\.[0-9]+)?");
        String safe = formula ? "'" + value : value;
        return safe.matches("(?s).*[,\"\r\n].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }
}
