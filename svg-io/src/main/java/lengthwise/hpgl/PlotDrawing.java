package lengthwise.hpgl;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.drawing.StrokeLetters;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import lengthwise.model.Spread;
import lengthwise.model.SpreadWords;
import lengthwise.svg.LaidState;
import lengthwise.svg.MarkerDrawing;
import lengthwise.toolpath.Uncut;

/**
 * Draws a marker with pens: before its start a check square, what it is and a caution; then the cuttable area, the cut
 * lines, the marks and the names. x from the start of the drawing, y down the page. What lies on a fold, and what is cut
 * already, is drawn with the pen of the marks.
 */
final class PlotDrawing {
    /** What stands before the start of the marker takes so much of the length. */
    static final long HEAD = 140_000;

    private static final long SQUARE = 100_000;
    private static final long LETTER = 5_000;
    private static final long LEADING = 9_000;
    private static final long DRILL_HOLE = 3_000;
    private static final long AIR = 2_000;
    private static final String FOLD = "fold";

    /** How far the cut line may lie off the fold and still be on it. */
    private static final double ON_FOLD = 50;

    private final MarkerDrawing marker;
    private final List<Stroke> strokes = new ArrayList<>();

    private PlotDrawing(MarkerDrawing marker) {
        this.marker = marker;
    }

    static List<Stroke> of(MarkerDrawing marker) {
        PlotDrawing drawing = new PlotDrawing(marker);
        drawing.head();
        drawing.cloth();
        for (int i = 0; i < marker.pieces().size(); i++) {
            drawing.piece(i);
        }
        return drawing.strokes;
    }

    private void head() {
        line(Stroke.Pen.MARKS, closed(new Box(0, 0, SQUARE, SQUARE).ring()));
        long y = 12_000;
        for (String words : List.of("100 mm each way:", "measure before", "you cut")) {
            write(words, 5_000, y);
            y += LEADING;
        }
        y = SQUARE + 12_000;
        List<String> facts = Stream.of(
                        marker.fabric(),
                        marker.job(),
                        "length " + LengthWords.both(marker.length()),
                        "cuttable width " + LengthWords.both(marker.cuttableWidth()),
                        String.join("; ", spread()),
                        "take care: blades and needles injure; the machine's manual, local rules and trained people go first")
                .filter(fact -> !fact.isBlank())
                .toList();
        for (String fact : facts) {
            for (String words : wrapped(fact)) {
                write(words, 0, y);
                y += LEADING;
            }
            y += LEADING / 3;
        }
    }

    private static List<String> wrapped(String text) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.strip().split("\\s+", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && StrokeLetters.width(longer, LETTER) > HEAD - 15_000) {
                lines.add(line);
                longer = word;
            }
            line = longer;
        }
        lines.add(line);
        return lines;
    }

    private void write(String words, long x, long y) {
        StrokeLetters.strokes(words, new Point(x, y), LETTER).forEach(letter -> line(Stroke.Pen.LETTERING, letter));
    }

    private void cloth() {
        Box area = new Box(
                HEAD,
                0,
                HEAD + marker.length().micrometres(),
                marker.cuttableWidth().micrometres());
        line(Stroke.Pen.MARKS, closed(area.ring()));
    }

    /** How the cloth lies, where the file still says so; how many plies it does not say. */
    private List<String> spread() {
        Optional<Spread> spread = Stream.of(Spread.Form.values())
                .map(form -> new Spread(form, Length.ZERO))
                .filter(one -> SpreadWords.key(one).equals(marker.spread()))
                .findFirst();
        return spread.map(one -> List.of(
                        one.lengths() > 1 && !one.isFoldedCrosswise() ? marker.spread() : SpreadWords.heading(one),
                        "start: " + SpreadWords.start(one),
                        "upper edge: " + SpreadWords.nearEdge(one),
                        "lower edge: " + SpreadWords.farEdge(one)))
                .orElse(List.of());
    }

    private void piece(int index) {
        PlacedPiece piece = marker.pieces().get(index);
        LaidState state = marker.states().get(index);
        Point shift = new Point(HEAD, 0);
        Outline outline = piece.outline().moved(shift);
        if (state.cutAlready()) {
            line(Stroke.Pen.MARKS, closed(outline.shell()));
            return;
        }
        List<Segment> fold =
                state.foldEdge().map(edge -> moved(edge, shift)).stream().toList();
        Uncut.of(outline.shell(), fold, ON_FOLD).forEach(part -> line(Stroke.Pen.CUT_LINES, part));
        fold.forEach(edge -> fold(edge, outline.box()));
        outline.holes().forEach(hole -> line(Stroke.Pen.CUT_LINES, closed(hole)));
        marks(marker.marks().get(index).mapped(point -> point.plus(shift)));
        state.arrowHeads().stream()
                .filter(head -> head.size() == 3)
                .forEach(head -> line(
                        Stroke.Pen.MARKS,
                        closed(Ring.of(
                                head.stream().map(point -> point.plus(shift)).toList()))));
        marker.captionOf(index)
                .strokes()
                .forEach(letter -> line(
                        Stroke.Pen.LETTERING,
                        letter.stream().map(point -> point.plus(shift)).toList()));
    }

    /** The line of the fold, and what it is, inside the piece. */
    private void fold(Segment edge, Box piece) {
        line(Stroke.Pen.MARKS, List.of(edge.from(), edge.to()));
        long width = StrokeLetters.width(FOLD, LETTER);
        long x = (edge.from().x() + edge.to().x()) / 2;
        long y = (edge.from().y() + edge.to().y()) / 2;
        boolean along = edge.from().y() == edge.to().y();
        boolean below = 2 * y < piece.minY() + piece.maxY();
        boolean behind = 2 * x < piece.minX() + piece.maxX();
        if (along) {
            write(FOLD, x - width / 2, below ? y + LETTER + AIR : y - AIR);
        } else {
            write(FOLD, behind ? x + AIR : x - AIR - width, y + LETTER / 2);
        }
    }

    private void marks(PieceMarks marks) {
        marks.grainLine().ifPresent(grain -> line(Stroke.Pen.MARKS, List.of(grain.from(), grain.to())));
        marks.notches().forEach(notch -> line(Stroke.Pen.MARKS, List.of(notch.from(), notch.to())));
        for (Point hole : marks.drillHoles()) {
            line(Stroke.Pen.MARKS, List.of(hole.plus(new Point(-DRILL_HOLE, 0)), hole.plus(new Point(DRILL_HOLE, 0))));
            line(Stroke.Pen.MARKS, List.of(hole.plus(new Point(0, -DRILL_HOLE)), hole.plus(new Point(0, DRILL_HOLE))));
        }
        marks.innerLines().forEach(inner -> line(Stroke.Pen.MARKS, inner));
    }

    private static Segment moved(Segment segment, Point by) {
        return new Segment(segment.from().plus(by), segment.to().plus(by));
    }

    private void line(Stroke.Pen pen, List<Point> points) {
        strokes.add(new Stroke(pen, points));
    }

    private static List<Point> closed(Ring ring) {
        List<Point> points = new ArrayList<>(ring.vertices());
        points.add(points.get(0));
        return points;
    }
}
