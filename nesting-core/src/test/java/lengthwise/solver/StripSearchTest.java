package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StripSearchTest {
    static LongStream seeds() {
        return LongStream.range(0, 8);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyLayoutToldIsLegalAndNotBelowTheAreaBound(long seed) {
        LayoutTask task = Tasks.stars(seed, 18, seed % 2 == 0 ? 0 : 3_000);
        check(task, seed, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void domainsObstaclesAndBondsAreKept(long seed) {
        check(Tasks.mixed(seed, 18, seed % 2 == 0 ? 0 : 3_000), seed, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cellsAboutLatticePointsAreKept(long seed) {
        check(Tasks.inCells(seed, 18, seed % 2 == 0 ? 0 : 3_000), seed, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void latticesThatMoveTogetherStayTogether(long seed) {
        check(Tasks.phased(seed, 18, seed % 2 == 0 ? 0 : 3_000), seed, 60);
    }

    /**
     * Two squares of 100 whose left edges lie alike every 150, on a strip of 100: 250 wherever the first begins. Where the
     * anchor of one lies 50 from its edge they can touch: 200.
     */
    @ParameterizedTest
    @CsvSource({"0, 250000", "50000, 200000", "-50000, 200000"})
    void thePhaseIsFree(long anchor, long length) {
        Outline square = Outline.of(Tasks.rectangle(100_000, 100_000));
        Demand one = matched(square, new Point(0, 0));
        Demand other = matched(square, new Point(anchor, 0));
        LayoutTask task = new LayoutTask(
                100_000, List.of(one, other), List.of(), List.of(new Bond.SamePhase(List.of(0, 1), List.of())));
        SearchResult result = StripSearch.solve(task, Search.of(StopRule.iterations(100), 1, 1));
        Layout layout = ((SearchResult.Solved) result).layout();
        LegalLayout.check(task, layout);
        assertThat(layout.length()).isEqualTo(length);
    }

    private static Demand matched(Outline outline, Point anchor) {
        Positions lattice = new Positions.Lattice(anchor, new Point(77_000, 5_000), 150_000, 0, false, 0);
        return new Demand(outline, new PlacementDomain(Tasks.ONE_WAY, lattice), 0);
    }

    /**
     * Two garments, each a bar and a right-angled triangle, cut one way each. Only when they lie opposite ways do the
     * triangles make up a rectangle: 2 · 70 + 60 mm, which is also the area bound. The first layout lays both alike.
     */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void aGarmentIsTurnedWhereThatSavesCloth(long seed) {
        Outline bar = Outline.of(Ring.of(0, 0, 70_000, 0, 70_000, 100_000, 0, 100_000));
        Outline triangle = Outline.of(Ring.of(0, 0, 60_000, 0, 0, 100_000));
        List<Orientation> bothWays = List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.HALF));
        PlacementDomain domain = new PlacementDomain(bothWays, new Positions.Free());
        Demand barDemand = new Demand(bar, domain, 0);
        Demand triangleDemand = new Demand(triangle, domain, 0);
        LayoutTask task = new LayoutTask(
                100_000,
                List.of(barDemand, triangleDemand, barDemand, triangleDemand),
                List.of(),
                List.of(new Bond.SameTurn(List.of(0, 1)), new Bond.SameTurn(List.of(2, 3))));
        SearchResult result = StripSearch.solve(task, Search.of(StopRule.iterations(3_000), seed, 1));
        assertThat(((SearchResult.Solved) result).layout().length()).isEqualTo(200_000);
    }

    private static void check(LayoutTask task, long seed, long iterations) {
        List<Layout> told = new ArrayList<>();
        SearchResult result = StripSearch.solve(
                task, Search.of(StopRule.iterations(iterations), seed, 1).watchedBy(event -> {
                    if (event instanceof SearchEvent.Improved improved) {
                        told.add(improved.layout());
                    }
                }));
        assertThat(result).isInstanceOf(SearchResult.Solved.class);
        Layout layout = ((SearchResult.Solved) result).layout();
        assertThat(told).isNotEmpty();
        assertThat(told.get(told.size() - 1)).isEqualTo(layout);
        told.forEach(each -> LegalLayout.check(task, each));
        long doubleArea = task.demands().stream()
                .mapToLong(demand -> demand.outline().doubleArea())
                .sum();
        assertThat(2 * layout.length() * task.height()).isGreaterThanOrEqualTo(doubleArea);
    }

    @Test
    void nothingToPlaceTakesNoLength() {
        SearchResult result = StripSearch.solve(Tasks.of(1_000, List.of()), Search.of(StopRule.iterations(1), 1, 1));
        assertThat(((SearchResult.Solved) result).layout()).isEqualTo(new Layout(List.of(), 0));
    }

    @Test
    void whatIsTooWideIsNamed() {
        Demand fits = Tasks.free(Tasks.rectangle(10_000, 500), Tasks.ONE_WAY, 0);
        Demand tooWide = Tasks.free(Tasks.rectangle(500, 1_001), Tasks.EITHER_WAY, 0);
        Demand noLine = new Demand(
                Outline.of(Tasks.rectangle(500, 500)),
                new PlacementDomain(Tasks.ONE_WAY, new Positions.Line(lengthwise.geometry.Point.ORIGIN, 600)),
                0);
        SearchResult result = StripSearch.solve(
                Tasks.of(1_000, List.of(fits, tooWide, noLine)), Search.of(StopRule.iterations(1), 1, 1));
        assertThat(result).isEqualTo(new SearchResult.Unplaceable(List.of(1, 2)));
    }

    @Test
    void piecesGoIntoTheHoleOfAnObstacle() {
        Ring outside = Tasks.rectangle(1_000_000, 100_000);
        Ring hole = Ring.of(200_000, 10_000, 260_000, 10_000, 260_000, 90_000, 200_000, 90_000);
        LayoutTask task = new LayoutTask(
                100_000,
                List.of(
                        Tasks.free(Tasks.rectangle(30_000, 70_000), Tasks.ONE_WAY, 3_000),
                        Tasks.free(Tasks.rectangle(25_000, 70_000), Tasks.ONE_WAY, 3_000)),
                List.of(new Obstacle(new Outline(outside, List.of(hole)))),
                List.of());
        SearchResult.Solved solved =
                (SearchResult.Solved) StripSearch.solve(task, Search.of(StopRule.iterations(20), 1, 1));
        LegalLayout.check(task, solved.layout());
        assertThat(solved.layout().length()).isLessThan(1_000_000);
    }

    @ParameterizedTest(name = "{0} workers")
    @ValueSource(ints = {1, 2})
    void theSameSeedWorkersAndIterationsGiveTheSameLayout(int workers) {
        LayoutTask task = Tasks.mixed(7, 14, 2_000);
        Search search = Search.of(StopRule.iterations(700), 42, workers);
        assertThat(solved(task, search)).isEqualTo(solved(task, search));
    }

    @Test
    void aJigsawCutFromARectangleIsPutTogether() {
        // three rows of 200 mm across, each cut by slanting lines
        List<Demand> demands = new ArrayList<>();
        for (long row = 0; row < 3; row++) {
            long low = 200_000 * row;
            long high = low + 200_000;
            long a = 150_000 + 60_000 * row;
            demands.add(Tasks.free(Ring.of(0, low, a, low, a + 40_000, high, 0, high), Tasks.EITHER_WAY, 0));
            demands.add(
                    Tasks.free(Ring.of(a, low, 500_000, low, 450_000, high, a + 40_000, high), Tasks.EITHER_WAY, 0));
            demands.add(
                    Tasks.free(Ring.of(500_000, low, 700_000, low, 700_000, high, 450_000, high), Tasks.EITHER_WAY, 0));
        }
        Layout layout = solved(Tasks.of(600_000, demands), Search.of(StopRule.iterations(8_000), 1, 1));
        assertThat(layout.length()).isBetween(700_000L, 714_000L);
    }

    @ParameterizedTest(name = "gap {0} mm: {1} mm")
    @CsvSource({"0, 352", "3, 417"})
    void tiesLieInRows(long gap, long expected) {
        // The order of the job sketch: 7 garments, S ×3 and M ×4, all crosswise on 146 cm: two neck ties of 46 cm and a
        // rib tie of the rib measure + 30 cm each, cut 32 mm wide. Worked by hand: eleven and twelve rows.
        List<Demand> demands = new ArrayList<>();
        for (int garment = 0; garment < 7; garment++) {
            long rib = garment < 3 ? 1_000_000 : 1_060_000;
            demands.add(Tasks.free(Tasks.rectangle(32_000, 460_000), Tasks.EITHER_WAY, gap * 1_000));
            demands.add(Tasks.free(Tasks.rectangle(32_000, 460_000), Tasks.EITHER_WAY, gap * 1_000));
            demands.add(Tasks.free(Tasks.rectangle(32_000, rib), Tasks.EITHER_WAY, gap * 1_000));
        }
        Layout layout = solved(Tasks.of(1_460_000, demands), Search.of(StopRule.iterations(2_000), 1, 1));
        assertThat(layout.length()).isEqualTo(expected * 1_000);
    }

    @Test
    void turningAndMirroringTheWholeTaskChangesNothingThatMatters() {
        LayoutTask task = Tasks.stars(5, 10, 0);
        Orientation half = new Orientation(false, QuarterTurn.HALF);
        LayoutTask turned = Tasks.of(
                task.height(),
                task.demands().stream()
                        .map(demand -> new Demand(half.apply(demand.outline()), demand.domain(), demand.gap()))
                        .toList());
        long straight = solved(task, Search.of(StopRule.iterations(500), 1, 1)).length();
        long other = solved(turned, Search.of(StopRule.iterations(500), 1, 1)).length();
        assertThat((double) other).isCloseTo((double) straight, withinPercentage(8));
    }

    @Test
    void whenCancelledTheFirstLayoutComesBack() {
        LayoutTask task = Tasks.stars(1, 12, 0);
        SearchResult.Solved result = (SearchResult.Solved) StripSearch.solve(
                task, Search.of(StopRule.iterations(1_000_000), 1, 2).cancelledBy(() -> true));
        assertThat(result.reason()).isEqualTo(SearchResult.StopReason.CANCELLED);
        LegalLayout.check(task, result.layout());
    }

    @Test
    void aStalledSearchEndsForWantOfGain() {
        LayoutTask task = Tasks.stars(1, 6, 0);
        SearchResult.Solved result = (SearchResult.Solved)
                StripSearch.solve(task, Search.of(StopRule.iterations(100_000).withPatience(0.001), 1, 1));
        assertThat(result.reason()).isEqualTo(SearchResult.StopReason.NO_GAIN);
        assertThat(result.progress().iteration()).isLessThan(100_000);
    }

    @Test
    void aLayoutAsShortAsItsLongestPieceIsProven() {
        List<Demand> demands = List.of(
                Tasks.free(Tasks.rectangle(500_000, 300_000), Tasks.ONE_WAY, 0),
                Tasks.free(Tasks.rectangle(200_000, 300_000), Tasks.ONE_WAY, 0));
        SearchResult.Solved result = (SearchResult.Solved)
                StripSearch.solve(Tasks.of(700_000, demands), Search.of(StopRule.iterations(100_000), 1, 1));
        assertThat(result.reason()).isEqualTo(SearchResult.StopReason.PROVEN_SHORTEST);
        assertThat(result.layout().length()).isEqualTo(500_000);
    }

    @Test
    void aWindowIsKept() {
        Demand inWindow = new Demand(
                Outline.of(Tasks.rectangle(100_000, 100_000)),
                new PlacementDomain(Tasks.ONE_WAY, new Positions.Window(250_000, 400_000)),
                0);
        LayoutTask task =
                Tasks.of(100_000, List.of(inWindow, Tasks.free(Tasks.rectangle(200_000, 100_000), Tasks.ONE_WAY, 0)));
        Layout layout = solved(task, Search.of(StopRule.iterations(50), 1, 1));
        LegalLayout.check(task, layout);
        assertThat(layout.length()).isEqualTo(350_000);
    }

    private static Layout solved(LayoutTask task, Search search) {
        return ((SearchResult.Solved) StripSearch.solve(task, search)).layout();
    }
}
