package lengthwise.geometry;

import static lengthwise.geometry.PairTestTest.SLOT;
import static lengthwise.geometry.PairTestTest.SQUARE;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PitchTest {
    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @Test
    void oneBehindTheOther() {
        assertThat(Pitch.least(SQUARE, SQUARE, 0, 0, 0)).isEqualTo(10);
        assertThat(Pitch.least(SQUARE, SQUARE, 0, 3, 2)).isEqualTo(12);
    }

    @Test
    void whatLiesAtAnotherHeightIsNotInTheWay() {
        assertThat(Pitch.least(SQUARE, SQUARE, 0, 10, 0)).isZero();
        assertThat(Pitch.least(SQUARE, SQUARE, 25, 0, 0)).isEqualTo(25);
    }

    @Test
    void intoASlotOfItsOwnBreadthAndBeyondIt() {
        assertThat(Pitch.least(SLOT, SQUARE, 0, 10, 0)).isEqualTo(10);
        assertThat(Pitch.least(SLOT, SQUARE, 11, 10, 0)).isEqualTo(30);
        assertThat(Pitch.least(SLOT, SQUARE, 0, 10, 1)).isEqualTo(31);
    }

    /** By hand: 3 above and 4 beside the corner is 5 away. */
    @Test
    void theGapIsRoundAtCorners() {
        assertThat(Pitch.least(SQUARE, SQUARE, 0, 13, 5)).isEqualTo(14);
    }

    /** Every whole displacement up to it is forbidden, and it is not. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isTheFirstThatTheExactTestAllows(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        ConvexParts a = ConvexParts.of(ring(random));
        ConvexParts b = ConvexParts.of(ring(random));
        long from = random.nextLong(-200, 100);
        long dy = random.nextLong(-60, 60);
        long gap = random.nextInt(3) == 0 ? 0 : random.nextLong(30);
        long first = from;
        while (PairTest.conflict(a, b, first, dy, gap)) {
            first++;
        }
        assertThat(Pitch.least(a, b, from, dy, gap)).isEqualTo(first);
    }

    private static Ring ring(SplittableRandom random) {
        return random.nextBoolean()
                ? RandomRings.star(random, random.nextInt(3, 12), 15, 110)
                : RandomRings.staircase(random, random.nextInt(2, 7), 20);
    }
}
