package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.RandomRings;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChainTest {
    /** As drawn or mirrored lengthwise, as a half on the fold of a cloth without a direction. */
    private static final List<Orientation> FOLDED =
            List.of(Orientation.AS_DRAWN, new Orientation(true, QuarterTurn.HALF));

    /** 100 mm on the fold, and 100 mm high with its top moved along by as much. */
    private static final Ring LEANS_ON = Ring.of(0, 0, 100_000, 0, 200_000, 100_000, 100_000, 100_000);

    private static final Ring LEANS_BACK = Ring.of(0, 0, 100_000, 0, 0, 100_000, -100_000, 100_000);

    /** By hand: six slanted pieces each 100 mm after the other, and the top of the last reaches 200 mm on. */
    @Test
    void equalSlantsLieAgainstEachOther() {
        assertThat(Chain.leastLength(Collections.nCopies(6, onFold(LEANS_ON, Tasks.ONE_WAY, 0))))
                .isEqualTo(700_000);
    }

    /** By hand: slants at 45°, 4 mm apart, are 4 √2 mm apart along the fold. */
    @Test
    void theGapIsKeptAcrossASlant() {
        assertThat(Chain.leastLength(Collections.nCopies(3, onFold(LEANS_ON, Tasks.ONE_WAY, 4_000))))
                .isEqualTo((long) Math.ceil(400_000 + 8_000 * Math.sqrt(2)));
    }

    /**
     * By hand: three that lean on and three that lean back. All of one kind and then all of the other take 800 mm; where a
     * piece that leans on meets one that leans back, 200 mm of the fold stay free, so taking turns costs 1 200 mm.
     */
    @Test
    void theBestOrderCounts() {
        List<Demand> tied = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            tied.add(onFold(LEANS_ON, Tasks.ONE_WAY, 0));
            tied.add(onFold(LEANS_BACK, Tasks.ONE_WAY, 0));
        }
        assertThat(Chain.leastLength(tied)).isEqualTo(800_000);
    }

    /** By hand: mirrored, one leans as the other does. */
    @Test
    void theBestWayRoundCounts() {
        assertThat(Chain.leastLength(List.of(onFold(LEANS_ON, FOLDED, 0), onFold(LEANS_BACK, FOLDED, 0))))
                .isEqualTo(300_000);
    }

    @Test
    void piecesBesideTheLineDoNotCount() {
        List<Demand> demands = new ArrayList<>(Collections.nCopies(3, onFold(LEANS_ON, Tasks.ONE_WAY, 0)));
        demands.add(Tasks.free(Tasks.rectangle(50_000, 50_000), Tasks.ONE_WAY, 0));
        assertThat(LowerBound.of(Tasks.of(300_000, demands))).isEqualTo(400_000);
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    /** Stars that hang on a line by their lowest corners, some equal, some either way round. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noLayoutFallsBelow(long seed) {
        LayoutTask task = hanging(new SplittableRandom(seed));
        SearchResult.Solved solved =
                (SearchResult.Solved) StripSearch.solve(task, Search.of(StopRule.iterations(60), seed, 1));
        assertThat(Chain.leastLength(task.demands()))
                .isLessThanOrEqualTo(solved.layout().length());
    }

    /** Of two equal pieces that lie alike, the search must reach what is said to be the shortest. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aChainOfTwoIsReached(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ring ring = RandomRings.star(random, random.nextInt(4, 9), 40_000, 160_000);
        List<Demand> two = Collections.nCopies(2, onFold(ring, Tasks.ONE_WAY, random.nextLong(9_000)));
        SearchResult.Solved solved = (SearchResult.Solved)
                StripSearch.solve(Tasks.of(400_000, two), Search.of(StopRule.iterations(400), seed, 1));
        assertThat(solved.layout().length()).isBetween(Chain.leastLength(two), Chain.leastLength(two) + 1_000);
    }

    private static LayoutTask hanging(SplittableRandom random) {
        List<Demand> demands = new ArrayList<>();
        long gap = random.nextBoolean() ? 0 : random.nextLong(9_000);
        while (demands.size() < 5) {
            Ring ring = RandomRings.star(random, random.nextInt(4, 9), 40_000, 160_000);
            List<Orientation> ways = random.nextBoolean() ? FOLDED : Tasks.ONE_WAY;
            for (int copies = random.nextInt(1, 3); copies > 0 && demands.size() < 5; copies--) {
                demands.add(onFold(ring, ways, gap));
            }
        }
        return Tasks.of(400_000, demands);
    }

    /** Ties a ring by its lowest corner to y = 0. */
    private static Demand onFold(Ring ring, List<Orientation> ways, long gap) {
        Point lowest = ring.vertices().stream()
                .min((a, b) -> Long.compare(a.y(), b.y()))
                .orElseThrow();
        return new Demand(Outline.of(ring), new PlacementDomain(ways, new Positions.Line(lowest, 0)), gap);
    }
}
