package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.LongStream;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.JtsOracle;
import lengthwise.geometry.NoFitPolygon;
import lengthwise.geometry.PairTest;
import lengthwise.geometry.Point;
import lengthwise.geometry.RandomRings;
import lengthwise.geometry.Ring;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DepthMapTest {
    private static final double BAND = 5_000;

    static LongStream seeds() {
        return LongStream.range(0, 30);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSignIsThatOfTheExactTestAndOutsideItIsTheDistance(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ring a = RandomRings.star(random, random.nextInt(4, 16), 20_000, 200_000);
        Ring b = RandomRings.star(random, random.nextInt(4, 16), 20_000, 200_000);
        ConvexParts partsA = ConvexParts.of(a);
        ConvexParts partsB = ConvexParts.of(b);
        DepthMap map = new DepthMap(NoFitPolygon.of(partsA, partsB), BAND);
        Contact contact = new Contact();
        for (int i = 0; i < 200; i++) {
            Point at = new Point(random.nextInt(-420_000, 420_000), random.nextInt(-420_000, 420_000));
            double x = (double) at.x();
            double y = (double) at.y();
            double depth = map.depth(x, y);
            map.look(x, y, contact);
            assertThat(contact.depth).isEqualTo(depth);
            if (Math.abs(depth) > 1) {
                assertThat(depth > 0)
                        .as("%s against %s at %s: depth %s", a, b, at, depth)
                        .isEqualTo(PairTest.overlap(partsA, partsB, at.x(), at.y()));
            }
            if (depth > 1) {
                // the way out leads out, and no shorter way does
                assertThat(map.depth(x + contact.outX * depth * 1.001, y + contact.outY * depth * 1.001))
                        .isLessThan(0.01 * depth);
                double angle = 2 * Math.PI * random.nextDouble();
                assertThat(map.depth(x + Math.cos(angle) * depth * 0.98, y + Math.sin(angle) * depth * 0.98))
                        .isGreaterThan(0);
            } else if (depth < -1) {
                double distance = JtsOracle.distance(a, b.moved(at));
                if (depth == DepthMap.FAR) {
                    assertThat(distance).isGreaterThan(BAND - 1);
                } else {
                    assertThat(-depth).isCloseTo(distance, within(0.01));
                }
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void answersTheSameAfterItHasLetGoAndTellsHowItGrows(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        ConvexParts a = ConvexParts.of(RandomRings.star(random, 12, 20_000, 200_000));
        ConvexParts b = ConvexParts.of(RandomRings.star(random, 12, 20_000, 200_000));
        AtomicLong bytes = new AtomicLong();
        DepthMap map = new DepthMap(NoFitPolygon.of(a, b), BAND, bytes::addAndGet);
        long atFirst = bytes.get();
        double[] x = random.doubles(100, map.minX, map.maxX).toArray();
        double[] y = random.doubles(100, map.minY, map.maxY).toArray();
        double[] depths = new double[100];
        for (int i = 0; i < 100; i++) {
            depths[i] = map.depth(x[i], y[i]);
            assertThat(Math.max(-1, map.rareDepth(x[i], y[i]))).isEqualTo(Math.max(-1, depths[i]));
        }
        assertThat(atFirst).isPositive();
        assertThat(map.shrink()).isEqualTo(bytes.get() - atFirst).isPositive();
        assertThat(map.shrink()).isZero();
        for (int i = 0; i < 100; i++) {
            assertThat(map.depth(x[i], y[i])).isEqualTo(depths[i]);
        }
    }
}
