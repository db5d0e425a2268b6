package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;

class OutwardSimplificationTest {
    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    /** A wavy closed curve, flattened finely as curves of drawings are. */
    private static Ring curve(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double wave = 0.05 + 0.2 * random.nextDouble();
        int waves = random.nextInt(2, 6);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 800; i++) {
            double angle = 2 * Math.PI * i / 800;
            double radius = 150_000 * (1 + wave * Math.sin(waves * angle));
            points.add(new Point(Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))));
        }
        return Ring.of(points);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void coversTheRingStaysNearItAndHasFarFewerVertices(long seed) {
        Ring ring = curve(seed);
        Ring simple = OutwardSimplification.of(ring, 50);
        assertThat(simple.size()).isLessThan(ring.size() / 2);
        assertThat(JtsOracle.polygon(simple).isValid()).isTrue();
        // corners are rounded to the grid, so half a micrometre and a little may be cut off
        assertThat(JtsOracle.polygon(simple).buffer(1).covers(JtsOracle.polygon(ring)))
                .isTrue();
        assertThat(DiscreteHausdorffDistance.distance(
                        JtsOracle.polygon(ring).getExteriorRing(),
                        JtsOracle.polygon(simple).getExteriorRing(),
                        0.02))
                .isLessThan(52 + 3_000 * 0.02);
    }
}
