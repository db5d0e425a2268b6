package lengthwise.solver;

import static lengthwise.solver.Tasks.ONE_WAY;
import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import lengthwise.geometry.RandomRings;
import lengthwise.geometry.Ring;
import lengthwise.model.Cut;
import lengthwise.model.MarkerOrder;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Ruling;
import lengthwise.testing.RandomOrders;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LowerBoundTest {
    /** By hand: 40 triangles of 300 × 200 / 2 on 1460 mm. */
    @Test
    void areaOverHeight() {
        MarkerOrder order =
                order(TestFabric.plain().fabric(), 0, 40, cut(triangle("flap", 300, 200), 1, Cut.Manner.ALIKE));
        assertThat(bound(order)).isEqualTo((long) Math.ceil(40 * 300e3 * 200e3 / 2 / 1460e3));
    }

    @Test
    void theLongestPiece() {
        MarkerOrder order =
                order(TestFabric.plain().fabric(), 0, 1, cut(triangle("flap", 300, 200), 1, Cut.Manner.PAIR));
        assertThat(bound(order)).isEqualTo(300_000);
    }

    /** By hand: three half pieces with 300 mm each on the fold, 3 mm apart. */
    @Test
    void whatLiesOnTheFoldLiesSideBySide() {
        MarkerOrder order = order(
                TestFabric.plain().folded().fabric(),
                3,
                3,
                cut(onFold(rectangle("front", 300, 50), 300), 1, Cut.Manner.ON_FOLD));
        assertThat(bound(order)).isEqualTo(906_000);
    }

    /** By hand: a hundred rectangles of 100 × 200 mm, 4 mm apart, grown by 2 mm with round corners, on 10 m. */
    @Test
    void gapsTakeRoom() {
        LayoutTask task = Tasks.of(
                10_000_000, Collections.nCopies(100, Tasks.free(Tasks.rectangle(100_000, 200_000), ONE_WAY, 4_000)));
        double grown = 100 * (100 * 200 + 4 * (100 + 200) + Math.PI * 4);
        long expected = Math.round(1_000 * (grown / 10_004 - 4));
        assertThat(LowerBound.of(task)).isBetween(expected - 200, expected);
    }

    /** By hand: what is higher than half of the strip cannot stand above each other: 4 × 100 mm, area says 260. */
    @Test
    void highPiecesLieSideBySide() {
        LayoutTask task =
                Tasks.of(200_000, Collections.nCopies(4, Tasks.free(Tasks.rectangle(100_000, 130_000), ONE_WAY, 0)));
        assertThat(LowerBound.of(task)).isBetween(399_999L, 400_000L);
    }

    /** By hand: two of 80 mm fit on 200 mm, so six take three columns of 100 mm; area says 240. */
    @Test
    void piecesAboveAThirdOfTheHeightLieInTwos() {
        LayoutTask task =
                Tasks.of(200_000, Collections.nCopies(6, Tasks.free(Tasks.rectangle(100_000, 80_000), ONE_WAY, 0)));
        assertThat(LowerBound.of(task)).isBetween(299_999L, 300_000L);
    }

    /** By hand: triangles 400 mm high at one end of 300 mm: where they are above half of 400 mm, for half of their length. */
    @Test
    void onlyTheHighPartOfAPieceCountsWhole() {
        Ring triangle = Ring.of(0, 0, 300_000, 0, 300_000, 400_000);
        LayoutTask task = Tasks.of(400_000, Collections.nCopies(5, Tasks.free(triangle, ONE_WAY, 0)));
        assertThat(LowerBound.of(task)).isBetween(750_000L, 760_000L);
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /** No layout that the search finds may be shorter, whatever the pieces. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noLayoutFallsBelow(long seed) {
        if (Ruling.of(RandomOrders.of(seed)) instanceof Ruling.Task ruled
                && StripSearch.solve(ruled.task(), Search.of(StopRule.iterations(20), seed, 1))
                        instanceof SearchResult.Solved solved) {
            assertThat(LowerBound.of(ruled.task()))
                    .isLessThanOrEqualTo(solved.layout().length());
            assertThat(LowerBound.of(ruled.task())).isGreaterThanOrEqualTo(LowerBound.atOnce(ruled.task()));
        }
    }

    /** High pieces on narrow cloth, with gaps of their own: where slices and gaps count most. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noLayoutOfHighPiecesFallsBelow(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Demand> demands = new ArrayList<>();
        for (int i = random.nextInt(2, 7); i > 0; i--) {
            Ring ring = RandomRings.star(random, random.nextInt(4, 9), 60_000, 160_000);
            demands.add(Tasks.free(ring, random.nextBoolean() ? ONE_WAY : Tasks.EITHER_WAY, random.nextLong(9_000)));
        }
        LayoutTask task = Tasks.of(random.nextLong(330_000, 600_000), demands);
        SearchResult.Solved solved =
                (SearchResult.Solved) StripSearch.solve(task, Search.of(StopRule.iterations(60), seed, 1));
        assertThat(LowerBound.of(task)).isLessThanOrEqualTo(solved.layout().length());
    }

    private static long bound(MarkerOrder order) {
        return LowerBound.of(((Ruling.Task) Ruling.of(order)).task());
    }
}
