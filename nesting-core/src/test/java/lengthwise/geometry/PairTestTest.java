package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PairTestTest {
    static final ConvexParts SQUARE = ConvexParts.of(Ring.of(0, 0, 10, 0, 10, 10, 0, 10));
    /** A square of side 30 with a slot of 10 × 20 from the top. */
    static final ConvexParts SLOT = ConvexParts.of(Ring.of(0, 0, 30, 0, 30, 30, 20, 30, 20, 10, 10, 10, 10, 30, 0, 30));

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    @Test
    void touchingIsAllowedAndOneMicrometreLessIsNot() {
        assertThat(PairTest.conflict(SQUARE, SQUARE, 10, 3, 0)).isFalse();
        assertThat(PairTest.conflict(SQUARE, SQUARE, 9, 3, 0)).isTrue();
        assertThat(PairTest.conflict(SQUARE, SQUARE, 10, 10, 0)).isFalse();
    }

    @Test
    void anExactFitIsAllowed() {
        assertThat(PairTest.conflict(SLOT, SQUARE, 10, 10, 0)).isFalse();
        assertThat(PairTest.conflict(SLOT, SQUARE, 10, 17, 0)).isFalse();
        assertThat(PairTest.conflict(SLOT, SQUARE, 11, 10, 0)).isTrue();
        assertThat(PairTest.conflict(SLOT, SQUARE, 10, 9, 0)).isTrue();
    }

    @Test
    void theGapIsEuclidean() {
        // 3 and 4 apart at the corners: 5 in all
        assertThat(PairTest.conflict(SQUARE, SQUARE, 13, 14, 5)).isFalse();
        assertThat(PairTest.conflict(SQUARE, SQUARE, 13, 14, 6)).isTrue();
        assertThat(PairTest.conflict(SQUARE, SQUARE, 13, 13, 5)).isTrue();
    }

    @Test
    void theGapIsExactWhereDoublesAreNot() {
        // The line through (0, 0) and (10^6, 1) lies 10^6 / √(10^12 + 1) below (0, 1): a hair less than 1.
        ConvexParts wedge = ConvexParts.of(Ring.of(0, 0, 0, -1_000_000, 1_000_000, 1));
        ConvexParts needle = ConvexParts.of(Ring.of(5, 1, 6, 1_000_000, 4, 1_000_000));
        assertThat(PairTest.conflict(wedge, needle, 0, 0, 1)).isTrue();
        assertThat(PairTest.conflict(wedge, needle, 0, 1, 1)).isFalse();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesWithTheOverlayOfTheWholeOutlines(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ring a = ring(random);
        Ring b = ring(random);
        ConvexParts partsA = ConvexParts.of(a);
        ConvexParts partsB = ConvexParts.of(b);
        for (int i = 0; i < 40; i++) {
            Point by = new Point(random.nextInt(-80, 80), random.nextInt(-80, 80));
            Ring moved = b.moved(by);
            boolean overlap = JtsOracle.interiorsMeet(a, moved);
            assertThat(PairTest.overlap(partsA, partsB, by.x(), by.y()))
                    .as("%s against %s moved by %s", a, b, by)
                    .isEqualTo(overlap);
            long gap = random.nextInt(1, 20);
            double distance = JtsOracle.distance(a, moved);
            if (Math.abs(distance - gap) > 1e-6) {
                assertThat(PairTest.conflict(partsA, partsB, by.x(), by.y(), gap))
                        .as("%s against %s moved by %s with gap %d", a, b, by, gap)
                        .isEqualTo(overlap || distance < gap);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void doesNotDependOnWhichIsFirstNorOnTurningBoth(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        ConvexParts a = ConvexParts.of(ring(random));
        ConvexParts b = ConvexParts.of(ring(random));
        for (int i = 0; i < 20; i++) {
            Point by = new Point(random.nextInt(-60, 60), random.nextInt(-60, 60));
            long gap = random.nextInt(0, 6);
            boolean expected = PairTest.conflict(a, b, by.x(), by.y(), gap);
            assertThat(PairTest.conflict(b, a, -by.x(), -by.y(), gap)).isEqualTo(expected);
            for (boolean flipped : new boolean[] {false, true}) {
                for (QuarterTurn turn : QuarterTurn.values()) {
                    Orientation g = new Orientation(flipped, turn);
                    Point turned = g.apply(by);
                    assertThat(PairTest.conflict(a.oriented(g), b.oriented(g), turned.x(), turned.y(), gap))
                            .as("%s", g)
                            .isEqualTo(expected);
                }
            }
        }
    }

    private static Ring ring(SplittableRandom random) {
        return random.nextBoolean()
                ? RandomRings.star(random, random.nextInt(4, 14), 8, 50)
                : RandomRings.staircase(random, random.nextInt(1, 7), 10);
    }
}
