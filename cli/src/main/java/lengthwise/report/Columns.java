package lengthwise.report;

import java.util.List;

/** Rows of text set in columns for the terminal, the first row their headings. */
final class Columns {
    private Columns() {}

    /** Returns a line for each row, ended by a line feed; columns are as wide as their widest cell, and set to the left. */
    static String of(List<List<String>> rows) {
        return set(rows, false);
    }

    /** Returns the same, all columns but the first set to the right. */
    static String ofFigures(List<List<String>> rows) {
        return set(rows, true);
    }

    private static String set(List<List<String>> rows, boolean right) {
        StringBuilder table = new StringBuilder();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < row.size(); column++) {
                String cell = row.get(column);
                String blanks = " ".repeat(widest(rows, column) - length(cell));
                line.append(column == 0 ? "" : "  ").append(right && column > 0 ? blanks + cell : cell + blanks);
            }
            table.append(line.toString().stripTrailing()).append('\n');
        }
        return table.toString();
    }

    private static int widest(List<List<String>> rows, int column) {
        return rows.stream().mapToInt(row -> length(row.get(column))).max().orElse(0);
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }
}
