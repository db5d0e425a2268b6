package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StripSearchTest {
    static LongStream seeds() {
        return LongStream.range(0, 12);
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
}
