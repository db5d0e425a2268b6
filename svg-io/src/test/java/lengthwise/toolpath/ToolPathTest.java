package lengthwise.toolpath;

import static lengthwise.testing.MarkerDrawings.box;
import static lengthwise.testing.MarkerDrawings.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.svg.LaidState;
import lengthwise.svg.MarkerDrawing;
import lengthwise.testing.MarkerDrawings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ToolPathTest {
    private static final Kerf FIFTH = new Kerf(Length.ofMillimetres(0.2), Kerf.Side.OUTWARD);

    /** Two squares of 100 mm have 800 mm of edge, of which they share 100. */
    @Test
    void whatTwoPiecesShareIsCutOnce() throws Exception {
        MarkerDrawing touching = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(100, 0, 100, 100));
        assertThat(ToolPath.of(touching, Kerf.NONE).cutLength()).isEqualTo(700_000);
        MarkerDrawing apart = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(101, 0, 100, 100));
        assertThat(ToolPath.of(apart, Kerf.NONE).cutLength()).isEqualTo(800_000);
    }

    /** A grid of n by n squares has 2n(n + 1) edges, each cut once. */
    @Test
    void aGridOfSquaresIsCutAlongEachEdgeOnce() throws Exception {
        Outline[] squares = new Outline[16];
        for (int i = 0; i < 16; i++) {
            squares[i] = rectangle(i % 4 * 50, i / 4 * 50, 50, 50);
        }
        assertThat(ToolPath.of(MarkerDrawings.of(squares), Kerf.NONE).cutLength())
                .isEqualTo(2 * 4 * 5 * 50_000);
    }

    /** A long strip along three short ones: only where they touch, and each stretch of it once. */
    @Test
    void partsOfAnEdgeAreShared() throws Exception {
        MarkerDrawing marker = MarkerDrawings.of(
                rectangle(0, 0, 300, 40),
                rectangle(10, 40, 60, 50),
                rectangle(100, 40, 60, 50),
                rectangle(250, 40, 60, 50));
        assertThat(ToolPath.of(marker, Kerf.NONE).cutLength())
                .isEqualTo(680_000 + 3 * 220_000 - 60_000 - 60_000 - 50_000);
    }

    /** Half the kerf on each side: 100 mm and 0.2 mm make 100.2 mm, with four corners. */
    @Test
    void theKerfIsAllowedForOnBothSidesWithSquareCorners() throws Exception {
        MarkerDrawing marker = MarkerDrawings.of(rectangle(10, 20, 100, 100));
        Pass outward = ToolPath.of(marker, FIFTH).passes().get(0);
        assertThat(boxOf(outward)).isEqualTo(box(9.9, 19.9, 100.2, 100.2));
        assertThat(outward.points()).hasSize(5);
        Pass inward = ToolPath.of(marker, new Kerf(Length.ofMillimetres(0.2), Kerf.Side.INWARD))
                .passes()
                .get(0);
        assertThat(boxOf(inward)).isEqualTo(box(10.1, 20.1, 99.8, 99.8));
        assertThat(inward.points()).hasSize(5);
    }

    @Test
    void theKerfMakesTheWayInAHoleSmaller() throws Exception {
        Outline frame = new Outline(
                box(0, 0, 100, 100).ring(), List.of(box(40, 40, 20, 20).ring()));
        List<Pass> passes = ToolPath.of(MarkerDrawings.of(frame), FIFTH).passes();
        assertThat(passes).extracting(Pass::kind).containsExactly(Pass.Kind.HOLE, Pass.Kind.OUTLINE);
        assertThat(boxOf(passes.get(0))).isEqualTo(box(40.1, 40.1, 19.8, 19.8));
    }

    /** Paths that the kerf moves onto each other are one line; nearer than the kerf one would eat into the other. */
    @Test
    void piecesAKerfApartAreCutByOneLineAndNearerOnesAreRefused() throws Exception {
        MarkerDrawing aKerf = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(100.2, 0, 100, 100));
        assertThat(ToolPath.of(aKerf, FIFTH).cutLength()).isEqualTo(2 * 400_800 - 100_200);
        MarkerDrawing nearer = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(100.1, 0, 100, 100));
        assertThatThrownBy(() -> ToolPath.of(nearer, FIFTH))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("a of garment 1 and b of garment 1")
                .hasMessageContaining("kerf");
    }

    @Test
    void whatCannotBeCutRightIsRefused() {
        MarkerDrawing overlapping = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(99, 0, 100, 100));
        assertThatThrownBy(() -> ToolPath.of(overlapping, Kerf.NONE)).hasMessageContaining("overlap");
        MarkerDrawing crossing = MarkerDrawings.of(Outline.of(Ring.of(0, 0, 100_000, 0, 0, 90_000, 100_000, 100_000)));
        assertThatThrownBy(() -> ToolPath.of(crossing, Kerf.NONE)).hasMessageContaining("crosses");
        // Two squares joined by a neck 1 mm wide fall apart when 2 mm are taken off inside.
        MarkerDrawing necked = MarkerDrawings.of(Outline.of(Ring.of(
                0, 0, 50_000, 0, 50_000, 24_500, 80_000, 24_500, 80_000, 0, 130_000, 0, 130_000, 50_000, 80_000, 50_000,
                80_000, 25_500, 50_000, 25_500, 50_000, 50_000, 0, 50_000)));
        Kerf wide = new Kerf(Length.ofMillimetres(2), Kerf.Side.INWARD);
        assertThatThrownBy(() -> ToolPath.of(necked, wide)).hasMessageContaining("narrower");
        MarkerDrawing cut = MarkerDrawings.withState(
                MarkerDrawings.of(rectangle(0, 0, 10, 10)), 0, new LaidState(Optional.empty(), List.of(), true));
        assertThatThrownBy(() -> ToolPath.of(cut, Kerf.NONE)).hasMessageContaining("no piece to be cut");
    }

    /** Moved by hand into another piece a notch would be cut there. */
    @Test
    void aNotchOrADrillHoleOutsideItsPieceIsRefused() throws Exception {
        MarkerDrawing two = MarkerDrawings.of(rectangle(0, 0, 100, 100), rectangle(200, 0, 100, 100));
        PieceMarks notched = new PieceMarks(
                Optional.empty(),
                List.of(new Segment(new Point(250_000, 0), new Point(250_000, 5_000))),
                List.of(),
                List.of());
        assertThatThrownBy(() -> ToolPath.of(MarkerDrawings.withMarks(two, 0, notched), Kerf.NONE))
                .hasMessageContaining("a of garment 1 has a notch or a drill hole outside");
        assertThat(ToolPath.of(MarkerDrawings.withMarks(two, 1, notched), Kerf.NONE)
                        .passes())
                .hasSize(3);
        PieceMarks drilled =
                new PieceMarks(Optional.empty(), List.of(), List.of(new Point(150_000, 50_000)), List.of());
        assertThatThrownBy(() -> ToolPath.of(MarkerDrawings.withMarks(two, 1, drilled), Kerf.NONE))
                .hasMessageContaining("outside its cut line");
    }

    @Test
    void innerCutsComeBeforeTheOutlineOfTheirPiece() throws Exception {
        Outline frame = new Outline(
                box(0, 0, 100, 100).ring(), List.of(box(40, 40, 20, 20).ring()));
        PieceMarks marks = new PieceMarks(
                Optional.empty(),
                List.of(new Segment(new Point(0, 50_000), new Point(5_000, 50_000))),
                List.of(new Point(80_000, 80_000)),
                List.of());
        MarkerDrawing marker = MarkerDrawings.withMarks(MarkerDrawings.of(frame, rectangle(200, 0, 50, 50)), 0, marks);
        List<Pass> passes = ToolPath.of(marker, Kerf.NONE).passes();
        List<Pass> first = passes.subList(0, 4);
        assertThat(first).extracting(Pass::piece).containsOnly(0);
        assertThat(first.subList(0, 3))
                .extracting(Pass::kind)
                .containsExactlyInAnyOrder(Pass.Kind.SLIT, Pass.Kind.DRILL_HOLE, Pass.Kind.HOLE);
        assertThat(first.get(3).kind()).isEqualTo(Pass.Kind.OUTLINE);
        Pass drilled = first.stream()
                .filter(pass -> pass.kind() == Pass.Kind.DRILL_HOLE)
                .findFirst()
                .orElseThrow();
        assertThat(boxOf(drilled)).isEqualTo(box(79.5, 79.5, 1, 1));
    }

    /** Once the hole is cut, what lies in it would move. */
    @Test
    void aPieceInAHoleIsCutBeforeTheHole() throws Exception {
        Outline frame = new Outline(
                box(0, 0, 200, 200).ring(), List.of(box(50, 50, 100, 100).ring()));
        Outline inside = new Outline(
                box(60, 60, 80, 80).ring(), List.of(box(80, 80, 40, 40).ring()));
        MarkerDrawing marker = MarkerDrawings.of(frame, inside, rectangle(90, 90, 20, 20));
        assertThat(ToolPath.of(marker, Kerf.NONE).passes())
                .extracting(pass -> pass.piece() + " " + pass.kind())
                .containsExactly("2 OUTLINE", "1 HOLE", "1 OUTLINE", "0 HOLE", "0 OUTLINE");
    }

    /** The opened piece is one: of a half piece 100 mm by 60 mm with its long side on the fold 220 mm are cut. */
    @Test
    void nothingIsCutOnTheFold() throws Exception {
        Segment fold = new Segment(new Point(0, 0), new Point(100_000, 0));
        MarkerDrawing marker = MarkerDrawings.withState(
                MarkerDrawings.of(rectangle(0, 0, 100, 60)), 0, new LaidState(Optional.of(fold), List.of(), false));
        List<Pass> passes = ToolPath.of(marker, Kerf.NONE).passes();
        assertThat(passes).hasSize(1);
        assertThat(passes.get(0).length()).isEqualTo(220_000);
        assertThat(passes.get(0).isClosed()).isFalse();
        List<Pass> withKerf = ToolPath.of(marker, FIFTH).passes();
        assertThat(withKerf).hasSize(1);
        // Both ends cross the fold by half the kerf.
        assertThat(withKerf.get(0).length()).isEqualTo(100_200 + 2 * 60_200);
    }

    @Test
    void whatIsCutAlreadyIsNotCutAgain() throws Exception {
        MarkerDrawing marker = MarkerDrawings.withState(
                MarkerDrawings.of(rectangle(0, 0, 100, 60), rectangle(200, 0, 100, 60)),
                0,
                new LaidState(Optional.empty(), List.of(), true));
        assertThat(ToolPath.of(marker, Kerf.NONE).passes())
                .extracting(Pass::piece)
                .containsExactly(1);
    }

    static LongStream seeds() {
        return LongStream.range(0, 12);
    }

    /** Squares on a shuffled grid: the way is never longer than in the order in which they are named. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theWayBetweenPiecesGetsShorter(long seed) throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        Outline[] squares = new Outline[30];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = rectangle(i % 6 * 150 + random.nextInt(40), i / 6 * 150 + random.nextInt(40), 80, 80);
        }
        Collections.shuffle(Arrays.asList(squares), new Random(seed));
        ToolPath path = ToolPath.of(MarkerDrawings.of(squares), Kerf.NONE);
        double named = 0;
        Point at = Point.ORIGIN;
        for (Outline square : squares) {
            named += at.distance(square.shell().vertex(0));
            at = square.shell().vertex(0);
        }
        assertThat(path.passes()).hasSize(30);
        assertThat(path.cutLength()).isEqualTo(30 * 320_000);
        assertThat(path.travelLength()).isLessThan(named / 2);
    }

    /** 700 mm and nothing between at 50 mm/s: 14 s. */
    @Test
    void timeIsLengthBySpeed() {
        ToolPath path = new ToolPath(List.of(
                new Pass(Pass.Kind.OUTLINE, 0, List.of(new Point(30_000, 40_000), new Point(680_000, 40_000)))));
        assertThat(path.cutLength()).isEqualTo(650_000);
        assertThat(path.travelLength()).isEqualTo(50_000, within(1e-9));
        assertThat(path.time(50)).isEqualTo(Duration.ofSeconds(14));
        assertThat(ToolPathPicture.summary(path, 50)).contains("0 min 14 s at 50 mm/s", "65 cm", "5 cm");
    }

    private static Box boxOf(Pass pass) {
        return Ring.of(pass.points()).box();
    }
}
