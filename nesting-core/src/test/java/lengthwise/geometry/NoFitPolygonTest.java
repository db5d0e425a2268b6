package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NoFitPolygonTest {
    private static final ConvexParts SQUARE = ConvexParts.of(Ring.of(0, 0, 10, 0, 10, 10, 0, 10));

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    @Test
    void twoSquaresMakeASquareOfTwiceTheSide() {
        assertThat(ConvexSum.of(SQUARE.parts().get(0), SQUARE.parts().get(0)))
                .containsExactly(-10, -10, 10, -10, 10, 10, -10, 10);
        assertThat(segments(NoFitPolygon.of(SQUARE, SQUARE)))
                .containsExactlyInAnyOrder(
                        List.of(-10.0, -10.0, 10.0, -10.0),
                        List.of(10.0, -10.0, 10.0, 10.0),
                        List.of(10.0, 10.0, -10.0, 10.0),
                        List.of(-10.0, 10.0, -10.0, -10.0));
    }

    @Test
    void aSlotAsWideAsThePieceStaysOpen() {
        ConvexParts slot = ConvexParts.of(Ring.of(0, 0, 30, 0, 30, 30, 20, 30, 20, 10, 10, 10, 10, 30, 0, 30));
        // the square slides along x = 10 from y = 10 to the mouth: two segments back to back
        assertThat(segments(NoFitPolygon.of(slot, SQUARE)))
                .contains(List.of(10.0, 30.0, 10.0, 10.0), List.of(10.0, 10.0, 10.0, 30.0));
    }

    /** The definition: on one side of a boundary segment the shapes overlap, on the other they do not. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void shapesOverlapOnTheLeftOfTheBoundaryAndAreApartOnItsRight(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ring a = RandomRings.star(random, random.nextInt(4, 16), 20_000, 200_000);
        Ring b = RandomRings.star(random, random.nextInt(4, 16), 20_000, 200_000);
        NoFitPolygon boundary = NoFitPolygon.of(ConvexParts.of(a), ConvexParts.of(b));
        int tested = 0;
        for (List<Double> s : segments(boundary)) {
            double length = Math.hypot(s.get(2) - s.get(0), s.get(3) - s.get(1));
            if (length > 50) {
                double middleX = (s.get(0) + s.get(2)) / 2;
                double middleY = (s.get(1) + s.get(3)) / 2;
                double leftX = -(s.get(3) - s.get(1)) / length * 3;
                double leftY = (s.get(2) - s.get(0)) / length * 3;
                assertThat(overlap(a, b, middleX + leftX, middleY + leftY))
                        .as("left of %s", s)
                        .isTrue();
                assertThat(overlap(a, b, middleX - leftX, middleY - leftY))
                        .as("right of %s", s)
                        .isFalse();
                tested++;
            }
        }
        assertThat(tested).isGreaterThan(3);
    }

    private static boolean overlap(Ring a, Ring b, double x, double y) {
        return JtsOracle.interiorsMeet(a, b.moved(new Point(Math.round(x), Math.round(y))));
    }

    private static List<List<Double>> segments(NoFitPolygon polygon) {
        List<List<Double>> segments = new ArrayList<>();
        for (int s = 0; s < polygon.size(); s++) {
            segments.add(List.of(polygon.fromX(s), polygon.fromY(s), polygon.toX(s), polygon.toY(s)));
        }
        return segments;
    }
}
