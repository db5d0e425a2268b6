package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.PieceEdges;
import lengthwise.drawing.PieceEdges.Line;
import lengthwise.drawing.PieceEdges.Section;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/** How long the edges of the pieces in a drawing are, as lines of text: by these points a job names what is sewn. */
final class InspectEdges {
    private InspectEdges() {}

    static List<String> of(PatternDrawing drawing) {
        List<String> lines = new ArrayList<>();
        lines.add(drawing.file() + ": edges, clockwise on the page");
        for (DrawnPiece piece : drawing.pieces()) {
            lines.add("");
            lines.add("  " + piece.name()
                    + piece.size().map(size -> ", size " + size).orElse("") + (piece.mirrored() ? " (mirrored)" : ""));
            PieceEdges edges = PieceEdges.of(piece);
            edges.sections().forEach(section -> lines.add("    " + line(section)));
            lines.add("    whole outline%s: %s"
                    .formatted(piece.foldEdge().isPresent() ? ", fold left out" : "", words(edges.whole())));
        }
        lines.add("");
        return lines;
    }

    private static String line(Section section) {
        return "%s to %s: %s%s"
                .formatted(
                        section.from().called(),
                        section.to().called(),
                        words(section.length()),
                        section.length().meetsFold() ? ", ends on the fold" : "");
    }

    private static String words(PieceEdges.Measured measured) {
        return LengthWords.both(new Length(StrictMath.round(measured.micrometres())))
                + (measured.along() == Line.SEW_LINE ? " along the sew line" : "");
    }
}
