package lengthwise.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;

class GrainLineTest {
    @Test
    void theDrawnLineGoesWithThePiece() {
        Piece bare = TestPieces.rectangle("front", 200, 100);
        Piece piece = new Piece(
                bare.name(),
                bare.size(),
                bare.outline(),
                bare.up(),
                bare.turning(),
                bare.foldEdge(),
                bare.matchPoint(),
                bare.strip(),
                new PieceMarks(
                        Optional.of(new Segment(new Point(10_000, 30_000), new Point(150_000, 30_000))),
                        List.of(),
                        List.of(),
                        List.of()));
        Pose pose = new Pose(new Orientation(true, QuarterTurn.HALF), new Point(500_000, 7_000));
        assertThat(GrainLine.of(laid(piece, pose)))
                .isEqualTo(new Segment(new Point(490_000, 37_000), new Point(350_000, 37_000)));
    }

    @Test
    void withoutOneItRunsAlongTheFabricInsideThePiece() {
        Placement placement =
                laid(TestPieces.triangle("flag", 200, 100), new Pose(Orientation.AS_DRAWN, new Point(1_000, 2_000)));
        Segment line = GrainLine.of(placement);
        assertThat(line.from().y()).isEqualTo(line.to().y()).isEqualTo(52_000);
        // Half way up a right triangle the chord is half as long as its base, 100 mm; the line takes 60 % of it.
        assertThat(line.from().x()).isBetween(20_990L, 21_010L);
        assertThat(line.to().x()).isBetween(80_990L, 81_010L);
    }

    @Test
    void aStripIsMeasuredFromTheMiddleOfOneEndToTheMiddleOfTheOther() {
        Placement placement = laid(
                TestPieces.strip("tie", 460, 32),
                new Pose(new Orientation(false, QuarterTurn.QUARTER), new Point(32_000, 0)));
        Segment line = GrainLine.middleOfStrip(placement).orElseThrow();
        assertThat(List.of(line.from(), line.to()))
                .containsExactlyInAnyOrder(new Point(16_000, 0), new Point(16_000, 460_000));
        assertThat(GrainLine.middleOfStrip(
                        laid(TestPieces.rectangle("front", 9, 9), new Pose(Orientation.AS_DRAWN, Point.ORIGIN))))
                .isEmpty();
    }

    private static Placement laid(Piece piece, Pose pose) {
        return new Placement(new Item(piece, List.of(new Garment(1, Size.ONE)), Hand.NONE, false), pose);
    }
}
