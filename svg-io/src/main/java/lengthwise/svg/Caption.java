package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.geometry.Point;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;

/**
 * What is written on a laid piece for a machine that has letters of one width, a line for each part; to be centred on a
 * point, as large as fits.
 *
 * @param middle of the block, in marker coordinates, micrometres
 * @param height of the letters, in millimetres
 */
public record Caption(List<String> lines, Point middle, double height) {
    /** From one line to the next, in letter heights. */
    public static final double LEADING = 1.6;

    private static final double GREATEST_HEIGHT = 12;

    public Caption {
        lines = List.copyOf(lines);
    }

    /**
     * Returns the caption of a piece: its name and size, then garments and hand where they are said.
     *
     * @param number of the piece in its marker; 0 for none
     */
    public static Caption of(PlacedPiece piece, PieceMarks marks, int number) {
        String title = Stream.of(number == 0 ? "" : number + ":", piece.piece(), piece.size())
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(" "));
        String garments =
                piece.garments().stream().distinct().map(String::valueOf).collect(Collectors.joining("+"));
        String rest = Stream.of(garments.isEmpty() ? "" : "garment " + garments, piece.hand())
                .filter(word -> !word.isEmpty())
                .collect(Collectors.joining(", "));
        List<String> lines =
                Stream.of(title, rest).filter(line -> !line.isEmpty()).toList();
        int longest = lines.stream().mapToInt(String::length).max().orElse(1);
        double rows = 1 + (lines.size() - 1) * LEADING;
        List<Segment> clearOf = new ArrayList<>(marks.grainLine().stream().toList());
        LabelSpot spot = LabelSpot.in(piece.outline(), clearOf, List.of(), longest + 1, rows + 1);
        if (spot.unit() < 3000) {
            spot = LabelSpot.in(piece.outline(), List.of(), List.of(), longest + 1, rows + 1);
        }
        return new Caption(
                lines,
                new Point(StrictMath.round(spot.x()), StrictMath.round(spot.y())),
                Math.min(GREATEST_HEIGHT, spot.unit() / 1000));
    }
}
