package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;
import lengthwise.solver.SearchResult.StopReason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Tasks of rectangles only: packed with a proof. */
class RectanglesTest {
    private static final List<Orientation> ANY_QUARTER =
            List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.QUARTER));

    static LongStream seeds() {
        return LongStream.range(0, 6);
    }

    /** 7 garments: two neck ties of 46 cm and a rib tie of 100 or 106 cm each, all crosswise on 146 cm, worked by hand. */
    @ParameterizedTest(name = "gap {0} mm: {1} mm")
    @CsvSource({"0, 352", "3, 417"})
    void tiesAreProvenAtOnce(long gap, long expected) {
        SearchResult.Solved solved = solved(ties(1_460_000, gap, new Positions.Free()), 1);
        assertThat(solved.layout().length()).isEqualTo(expected * 1_000);
        assertThat(solved.lowerBound()).isEqualTo(expected * 1_000);
        assertThat(solved.reason()).isEqualTo(StopReason.PROVEN_SHORTEST);
        assertThat(solved.progress().iteration()).isZero();
    }

    /** Ends on the fold, half lengths: every tie takes a row of its own. */
    @ParameterizedTest(name = "gap {0} mm: {1} mm")
    @CsvSource({"0, 672", "3, 732"})
    void tiesOnTheFoldAreProvenAtOnce(long gap, long expected) {
        LayoutTask task = ties(1_060_000, gap, new Positions.Line(Point.ORIGIN, 0));
        SearchResult.Solved solved = solved(task, 1);
        assertThat(solved.layout().length()).isEqualTo(expected * 1_000);
        assertThat(solved.reason()).isEqualTo(StopReason.PROVEN_SHORTEST);
    }

    /**
     * By hand: on 100 mm three rows of 32 mm, 2 mm apart at most: 46 + 46, 46 + 46 and 100 cm. With 3 mm there is room for
     * two: 100 + 46 and 46 + 46 + 46. Then the bound allows for corners, less than a gap.
     */
    @ParameterizedTest(name = "gap {0} mm: {1} mm")
    @CsvSource({"0, 1000", "1, 1000", "2, 1000", "3, 1463"})
    void stripsAlongTheClothLieInRows(long gap, long expected) {
        List<Demand> demands = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            long length = i == 4 ? 1_000_000 : 460_000;
            demands.add(Tasks.free(Tasks.rectangle(length, 32_000), Tasks.EITHER_WAY, gap * 1_000));
        }
        LayoutTask task = Tasks.of(100_000, demands);
        SearchResult.Solved solved = solved(task, 1);
        LegalLayout.check(task, solved.layout());
        assertThat(solved.layout().length()).isEqualTo(expected * 1_000);
        assertThat(solved.lowerBound()).isBetween(expected * 1_000 - (gap == 3 ? 1_000 : 0), expected * 1_000);
    }

    /**
     * By hand: two strips of 32 mm on 1000.5 mm, 500 mm long, 3 mm apart. Side by side they take 67 mm; moved along until
     * they pass each other they may be as near as √(3² − 0.5²) = 2.958 mm along the cloth. The bound allows for that.
     */
    @Test
    void cornersMayComeNearerThanTheGap() {
        Demand strip = Tasks.free(Tasks.rectangle(32_000, 500_000), Tasks.ONE_WAY, 3_000);
        SearchResult.Solved solved = solved(Tasks.of(1_000_500, List.of(strip, strip)), 1);
        assertThat(solved.lowerBound()).isEqualTo(66_959);
        assertThat(solved.layout().length()).isBetween(66_959L, 67_000L);
    }

    /** A rectangle of 70 × 50 cm cut into six: put together again. */
    @Test
    void aCutRectangleIsPutTogether() {
        SearchResult.Solved solved = solved(of(50, 0, 40, 20, 30, 20, 25, 30, 45, 15, 20, 15, 25, 15), 20_000);
        assertThat(solved.reason()).isEqualTo(StopReason.PROVEN_SHORTEST);
        assertThat(solved.layout().length()).isEqualTo(700_000);
    }

    /** By hand: two squares of 60 cm cannot stand above each other on 100 cm, nor with a third piece of 50 × 45 cm. */
    @ParameterizedTest(name = "gap {0} mm: {1} mm")
    @CsvSource({"0, 1700", "3, 1706"})
    void largePiecesCannotStandAboveEachOther(long gap, long expected) {
        SearchResult.Solved solved = solved(of(100, gap, 60, 60, 60, 60, 50, 45, 40, 20), 20_000);
        assertThat(solved.reason()).isEqualTo(StopReason.PROVEN_SHORTEST);
        assertThat(solved.layout().length()).isEqualTo(expected * 1_000);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void rectanglesAtRandomAreLegalAndTheBoundHolds(long seed) {
        LayoutTask task = random(seed, 7);
        SearchResult.Solved solved = solved(task, 3_000);
        LegalLayout.check(task, solved.layout());
        assertThat(solved.lowerBound()).isLessThanOrEqualTo(solved.layout().length());
        assertThat(solved.lowerBound()).isGreaterThanOrEqualTo(LowerBound.of(task));
        assertThat(solved(task, 3_000).layout()).isEqualTo(solved.layout());
    }

    @Test
    void interruptedItEndsSoon() {
        AtomicInteger asked = new AtomicInteger();
        SearchResult.Solved solved = (SearchResult.Solved) StripSearch.solve(
                random(3, 20),
                Search.of(StopRule.iterations(10_000_000), 1, 1).cancelledBy(() -> asked.incrementAndGet() > 10));
        assertThat(solved.reason()).isEqualTo(StopReason.CANCELLED);
    }

    /** Returns a task of rectangles that lie one way; all but the gap in centimetres. */
    private static LayoutTask of(long height, long gap, long... sides) {
        List<Demand> demands = new ArrayList<>();
        for (int i = 0; i < sides.length; i += 2) {
            demands.add(
                    Tasks.free(Tasks.rectangle(sides[i] * 10_000, sides[i + 1] * 10_000), Tasks.ONE_WAY, gap * 1_000));
        }
        return Tasks.of(height * 10_000, demands);
    }

    private static LayoutTask random(long seed, int pieces) {
        SplittableRandom random = new SplittableRandom(seed);
        long gap = seed % 2 == 0 ? 0 : 3_000;
        List<Demand> demands = new ArrayList<>();
        while (demands.size() < pieces) {
            long width = random.nextLong(5, 40) * 10_000;
            long height = random.nextLong(5, 40) * 10_000;
            for (int copies = random.nextInt(1, 4); copies > 0; copies--) {
                demands.add(Tasks.free(
                        Tasks.rectangle(width, height), seed % 3 == 0 ? ANY_QUARTER : Tasks.EITHER_WAY, gap));
            }
        }
        return Tasks.of(600_000, demands);
    }

    private static LayoutTask ties(long height, long gap, Positions positions) {
        List<Demand> demands = new ArrayList<>();
        for (int garment = 0; garment < 7; garment++) {
            long half = positions instanceof Positions.Line ? 2 : 1;
            for (long length : new long[] {460_000, 460_000, garment < 3 ? 1_000_000 : 1_060_000}) {
                demands.add(new Demand(
                        Outline.of(Tasks.rectangle(32_000, length / half)),
                        new PlacementDomain(half == 2 ? Tasks.ONE_WAY : Tasks.EITHER_WAY, positions),
                        gap * 1_000));
            }
        }
        return Tasks.of(height, demands);
    }

    private static SearchResult.Solved solved(LayoutTask task, long iterations) {
        SearchResult.Solved solved =
                (SearchResult.Solved) StripSearch.solve(task, Search.of(StopRule.iterations(iterations), 1, 1));
        LegalLayout.check(task, solved.layout());
        return solved;
    }
}
