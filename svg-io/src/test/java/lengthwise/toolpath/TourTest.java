package lengthwise.toolpath;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.geometry.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TourTest {
    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /** Every order of seven stops is tried; the tour is near the shortest, and no turned stretch would shorten it. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theWayIsNearlyTheShortest(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            points.add(new Point(random.nextInt(1_000_000), random.nextInt(1_000_000)));
        }
        List<Point> tour = Tour.through(
                        Point.ORIGIN, points.stream().map(List::of).toList())
                .stream()
                .map(Tour.Entry::at)
                .toList();
        assertThat(tour).containsExactlyInAnyOrderElementsOf(points);
        double shortest = shortest(Point.ORIGIN, points);
        assertThat(length(tour)).isBetween(shortest - 1, 1.35 * shortest);
        for (int i = 0; i < tour.size(); i++) {
            for (int j = i + 2; j <= tour.size(); j++) {
                List<Point> turned = new ArrayList<>(tour);
                Collections.reverse(turned.subList(i, j));
                assertThat(length(turned)).isGreaterThanOrEqualTo(length(tour) - 1);
            }
        }
    }

    @Test
    void aStopIsEnteredAtItsNearestPoint() {
        List<Tour.Entry> tour = Tour.through(
                Point.ORIGIN, List.of(List.of(new Point(900, 0), new Point(500, 0)), List.of(new Point(100, 0))));
        assertThat(tour)
                .containsExactly(new Tour.Entry(1, 0, new Point(100, 0)), new Tour.Entry(0, 1, new Point(500, 0)));
    }

    private static double length(List<Point> way) {
        double sum = 0;
        Point at = Point.ORIGIN;
        for (Point point : way) {
            sum += at.distance(point);
            at = point;
        }
        return sum;
    }

    private static double shortest(Point at, List<Point> left) {
        double best = left.isEmpty() ? 0 : Double.MAX_VALUE;
        for (int i = 0; i < left.size(); i++) {
            List<Point> rest = new ArrayList<>(left);
            Point next = rest.remove(i);
            best = Math.min(best, at.distance(next) + shortest(next, rest));
        }
        return best;
    }
}
