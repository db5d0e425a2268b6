package lengthwise.plan;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Cut;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LeftoversTest {
    /**
     * A block of 300.5 × 201.3 in the corner of 1000 × 500: behind it 699.5 × 500, which is more than the 1000 × 298.7
     * beside it; then what is left beside it, 300.5 × 298.7. In cells of 2 mm: 698 × 500, and 302 × 298 beside that.
     */
    @Test
    void theRestOfARectangle() {
        Marker marker =
                marker(TestFabric.plain().width(500, 0).fabric(), 1000, at(rectangle("block", 300.5, 201.3), 0, 0));
        assertThat(of(marker))
                .containsExactly(new Box(302_000, 0, 1_000_000, 500_000), new Box(0, 202_000, 302_000, 500_000));
    }

    /** On hand are 1500 mm and the marker is 1000 mm, all taken: 500 × 400 are left, less a flaw of 100 at the end. */
    @Test
    void whatIsBehindTheMarkerOnTheClothOnHand() {
        Fabric fabric = TestFabric.plain()
                .width(400, 0)
                .onHand(1500)
                .flaws(new Box(1_400_000, 0, 1_500_000, 400_000))
                .fabric();
        assertThat(of(marker(fabric, 1000, at(rectangle("block", 1000, 400), 0, 0))))
                .containsExactly(new Box(1_000_000, 0, 1_400_000, 400_000));
    }

    /** A marker of 1000 mm sold by 300 mm: 1200 are bought. */
    @Test
    void whatTheShopsStepAdds() {
        Fabric fabric = TestFabric.plain()
                .width(400, 0)
                .soldBy(Length.ofMillimetres(300))
                .fabric();
        assertThat(of(marker(fabric, 1000, at(rectangle("block", 1000, 400), 0, 0))))
                .containsExactly(new Box(1_000_000, 0, 1_200_000, 400_000));
    }

    /**
     * Of the other half of a square cut in two by its diagonal, the largest rectangle has half its sides: 400 × 400. The
     * cells of 2 mm may leave it short by one each way.
     */
    @Test
    void theLargestRectangleInATriangle() {
        Marker marker = marker(TestFabric.plain().width(800, 0).fabric(), 800, at(triangle("flap", 800, 800), 0, 0));
        Box first = of(marker).get(0);
        assertThat(first.width() / 1e3 * (first.height() / 1e3)).isBetween(398.0 * 398.0, 160_000.0);
    }

    /** Of a remnant with a corner missing nothing outside counts. */
    @Test
    void nothingOutsideARemnant() {
        Fabric fabric = TestFabric.plain()
                .width(400, 0)
                .remnant(0, 0, 300, 0, 300, 200, 600, 200, 600, 400, 0, 400)
                .fabric();
        assertThat(of(marker(fabric, 300, at(rectangle("block", 300, 200), 0, 0))))
                .containsExactly(new Box(0, 200_000, 600_000, 400_000));
    }

    /** The selvedges meet at 250 of 500, with 10 unusable on each: 240 on either side of the join. */
    @Test
    void nothingAcrossTheSelvedgesInTheMiddle() {
        Fabric fabric = TestFabric.plain()
                .width(1000, 10)
                .spread(Spread.Form.SELVEDGES_TO_MIDDLE)
                .fabric();
        assertThat(of(marker(fabric, 1000, at(rectangle("block", 400, 240), 0, 0))))
                .containsExactly(new Box(0, 260_000, 1_000_000, 500_000), new Box(400_000, 0, 1_000_000, 240_000));
    }

    /** Two plies of 1000 mm sold by 300 mm: 2100 are bought, 50 over for each. */
    @Test
    void whatTheShopsStepAddsIsSharedBetweenPlies() {
        Fabric fabric = TestFabric.plain()
                .width(400, 0)
                .plies(Spread.Form.PLIES_FACE_UP, 2, Spread.PlyRun.SAME_WAY)
                .soldBy(Length.ofMillimetres(300))
                .fabric();
        assertThat(of(marker(fabric, 1000, at(rectangle("block", 1000, 400), 0, 0))))
                .containsExactly(new Box(1_000_000, 0, 1_050_000, 400_000));
    }

    @Test
    void scrapsAreNotListed() {
        Marker marker =
                marker(TestFabric.plain().width(400, 0).fabric(), 1000, at(rectangle("block", 1000, 351), 0, 0));
        assertThat(of(marker)).isEmpty();
    }

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    /** Judged by JTS: no rectangle lies over a piece or over another rectangle, and none leaves the cloth. */
    @ParameterizedTest
    @MethodSource("seeds")
    void noneLiesOverAnything(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Placement> placements = new ArrayList<>();
        for (int i = random.nextInt(1, 8); i > 0; i--) {
            Piece piece = triangle("flap", random.nextInt(50, 900) / 1.7, random.nextInt(50, 700) / 1.3);
            placements.add(at(piece, random.nextInt(0, 700_000) / 1e3, random.nextInt(0, 500_000) / 1e3));
        }
        Marker marker = marker(TestFabric.plain().width(1100, 0).fabric(), 1600, placements.toArray(Placement[]::new));
        List<Box> found = of(marker);
        for (int i = 0; i < found.size(); i++) {
            assertThat(new Box(0, 0, 1_600_000, 1_100_000).contains(found.get(i)))
                    .isTrue();
            PlacedArea rectangle = PlacedArea.of(Outline.of(found.get(i).ring()));
            assertThat(placements).noneMatch(piece -> rectangle.overlaps(PlacedArea.of(piece.outline()), 0));
            assertThat(found.subList(0, i)).noneMatch(found.get(i)::overlaps);
        }
        assertThat(found).isNotEmpty();
    }

    private static List<Box> of(Marker marker) {
        return Leftovers.of(marker, Purchase.of(marker.length(), marker.order().fabric()));
    }

    private static Placement at(Piece piece, double x, double y) {
        return new Placement(
                new Item(piece, List.of(new Garment(1, Size.ONE)), Hand.NONE, false),
                new Pose(Orientation.AS_DRAWN, new Point(Math.round(x * 1e3), Math.round(y * 1e3))));
    }

    private static Marker marker(Fabric fabric, double millimetres, Placement... placements) {
        return new Marker(
                order(fabric, 0, 1, cut(placements[0].item().piece(), 1, Cut.Manner.ALIKE)),
                List.of(placements),
                Length.ofMillimetres(millimetres));
    }
}
