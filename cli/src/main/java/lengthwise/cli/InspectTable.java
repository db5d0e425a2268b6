package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.Arrow;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.geometry.Box;

/** What was recognised in a drawing, as lines of text: a row for each piece, then what was left out. */
final class InspectTable {
    private static final List<String> HEADINGS =
            List.of("piece", "size", "mm", "in", "cm²", "grain", "up end", "fold", "notches", "drill", "lettering");

    private InspectTable() {}

    static List<String> of(PatternDrawing drawing) {
        List<String> lines = new ArrayList<>();
        lines.add("%s: %s%s"
                .formatted(
                        drawing.file(),
                        drawing.pieces().size() == 1
                                ? "1 piece"
                                : drawing.pieces().size() + " pieces",
                        drawing.scaleStated() ? "" : ", scale not stated"));
        if (!drawing.pieces().isEmpty()) {
            lines.add("");
            List<List<String>> rows = new ArrayList<>();
            rows.add(HEADINGS);
            drawing.pieces().forEach(piece -> rows.add(row(piece)));
            lines.addAll(aligned(rows));
        }
        if (!drawing.leftOut().isEmpty()) {
            lines.add("");
            lines.add("left out:");
            drawing.leftOut().forEach(leftOut -> lines.add("  " + leftOut));
        }
        lines.add("");
        return lines;
    }

    private static List<String> row(DrawnPiece piece) {
        Box box = piece.outline().box();
        double area = piece.outline().shell().doubleArea() / 2e8;
        double net = piece.outline().squareMillimetres() / 100;
        return List.of(
                piece.name() + (piece.mirrored() ? " (mirrored)" : ""),
                piece.size().orElse("-"),
                "%.1f × %.1f".formatted(box.width() / 1000.0, box.height() / 1000.0),
                "%.2f × %.2f".formatted(box.width() / 25_400.0, box.height() / 25_400.0),
                "%.1f".formatted(area) + (!piece.outline().holes().isEmpty() ? " (net %.1f)".formatted(net) : ""),
                piece.arrow().map(InspectTable::grain).orElse("none"),
                piece.arrow().map(InspectTable::up).orElse("not said"),
                piece.foldEdge()
                        .map(edge -> "%.1f mm".formatted(edge.length() / 1000))
                        .orElse("-"),
                count(piece.notches().size()),
                count(piece.drillHoles().size()),
                piece.lettering().isEmpty() ? "" : "\"" + String.join("\" \"", piece.lettering()) + "\"");
    }

    private static String count(int number) {
        return number == 0 ? "-" : Integer.toString(number);
    }

    private static String grain(Arrow arrow) {
        return "%.1f°".formatted(arrow.degrees())
                + switch (arrow.heads()) {
                    case NONE -> ", no head";
                    case ONE -> "";
                    case BOTH -> ", both ends";
                };
    }

    /** Says to which side of the page the up end points, where a single head says it. */
    private static String up(Arrow arrow) {
        if (arrow.heads() != Arrow.Heads.ONE) {
            return "not said";
        }
        double degrees = arrow.degrees();
        for (int quarter = 0; quarter <= 4; quarter++) {
            if (Math.abs(degrees - 90 * quarter) <= 1) {
                return List.of("right", "top", "left", "bottom", "right").get(quarter);
            }
        }
        return "%.1f°".formatted(degrees);
    }

    private static List<String> aligned(List<List<String>> rows) {
        int[] widths = new int[HEADINGS.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                widths[i] = Math.max(widths[i], columns(row.get(i)));
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder("  ");
            for (int i = 0; i < row.size(); i++) {
                boolean last = i == row.size() - 1;
                line.append(row.get(i)).append(last ? "" : " ".repeat(widths[i] - columns(row.get(i)) + 2));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    /** Returns how many columns of a terminal a text takes; letters of East Asia take two. */
    private static int columns(String text) {
        return text.codePoints()
                .map(c -> Character.isIdeographic(c) || (c >= 0x3040 && c <= 0x30ff) || (c >= 0xac00 && c <= 0xd7a3)
                        ? 2
                        : 1)
                .sum();
    }
}
