package lengthwise.svg;

import static lengthwise.testing.MarkerDrawings.box;
import static lengthwise.testing.MarkerDrawings.rectangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a pen writes on a piece is read beside what it draws there: neither runs through the other. */
class CaptionTest {
    private static final double SEAM = 10;

    /** A rectangle of the size of a piece, with a sew line, a notch in each long edge and a grain line below its middle. */
    private static PieceMarks marks(double width, double height) {
        List<Point> sewn = new ArrayList<>(
                box(SEAM, SEAM, width - 2 * SEAM, height - 2 * SEAM).ring().vertices());
        sewn.add(sewn.get(0));
        return new PieceMarks(
                Optional.of(line(width * 0.3, height * 0.7, width * 0.7, height * 0.7)),
                List.of(line(width / 2, 0, width / 2, 5), line(width / 2, height, width / 2, height - 5)),
                List.of(),
                List.of(sewn));
    }

    private static Segment line(double fromX, double fromY, double toX, double toY) {
        return new Segment(point(fromX, fromY), point(toX, toY));
    }

    private static Point point(double x, double y) {
        return new Point(Math.round(x * 1000), Math.round(y * 1000));
    }

    private static List<Line2D> lines(PieceMarks marks) {
        List<Line2D> lines = new ArrayList<>();
        marks.grainLine().ifPresent(grain -> lines.add(drawn(grain.from(), grain.to())));
        marks.notches().forEach(notch -> lines.add(drawn(notch.from(), notch.to())));
        marks.innerLines().forEach(inner -> lines.addAll(drawn(inner)));
        return lines;
    }

    private static List<Line2D> drawn(List<Point> stroke) {
        List<Line2D> lines = new ArrayList<>();
        for (int i = 1; i < stroke.size(); i++) {
            lines.add(drawn(stroke.get(i - 1), stroke.get(i)));
        }
        return lines;
    }

    private static Line2D drawn(Point from, Point to) {
        return new Line2D.Double(from.x(), from.y(), to.x(), to.y());
    }

    private static Caption caption(double width, double height, PieceMarks marks) {
        PlacedPiece piece = new PlacedPiece("gusset", "M", List.of(6), "", rectangle(0, 0, width, height));
        return Caption.of(piece, marks, 79).turnedIfLarger(piece, marks);
    }

    private static List<Line2D> letters(Caption caption) {
        return caption.strokes().stream()
                .flatMap(stroke -> drawn(stroke).stream())
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"300, 200", "110, 220", "75, 60", "40, 150"})
    void lettersStayClearOfMarksWhereThereIsRoom(double width, double height) {
        PieceMarks marks = marks(width, height);
        Caption caption = caption(width, height, marks);
        // Lettering of 3.5 mm is one of the heights of ISO 3098 (from memory).
        assertThat(caption.height()).isGreaterThanOrEqualTo(3.5);
        List<Line2D> drawn = lines(marks);
        assertThat(letters(caption))
                .isNotEmpty()
                .allSatisfy(letter -> assertThat(drawn).noneMatch(letter::intersectsLine));
    }

    /** Where the sew line must be crossed, the notches are not: they are what is cut into. */
    @Test
    void onASmallPieceTheyStayClearOfGrainLineAndNotches() {
        PieceMarks marks = marks(50, 40);
        Caption caption = caption(50, 40, marks);
        List<Line2D> drawn = lines(new PieceMarks(marks.grainLine(), marks.notches(), List.of(), List.of()));
        assertThat(letters(caption))
                .isNotEmpty()
                .allSatisfy(letter -> assertThat(drawn).noneMatch(letter::intersectsLine));
    }

    /** At least as far from the cut line as half a letter is high, however small the piece. */
    @ParameterizedTest
    @CsvSource({"300, 200", "75, 60", "50, 40", "15, 60", "20, 8"})
    void lettersLeaveAirToTheCutLine(double width, double height) {
        Caption caption = caption(width, height, Math.min(width, height) > 30 ? marks(width, height) : PieceMarks.NONE);
        double air = 490 * caption.height();
        assertThat(caption.strokes())
                .isNotEmpty()
                .allSatisfy(stroke -> assertThat(stroke).allSatisfy(point -> {
                    assertThat((double) point.x()).isBetween(air, width * 1000 - air);
                    assertThat((double) point.y()).isBetween(air, height * 1000 - air);
                }));
    }
}
