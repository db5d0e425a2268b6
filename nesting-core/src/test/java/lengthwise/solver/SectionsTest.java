package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import lengthwise.rules.LayoutTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SectionsTest {
    @ParameterizedTest(name = "seed {0}, gap {1} µm")
    @CsvSource({"1, 0", "2, 3000"})
    void aLongMarkerIsLegalAndShorterThanTheFirstOne(long seed, long gap) {
        LayoutTask task = Tasks.stars(seed, 210, gap);
        List<Layout> told = new ArrayList<>();
        SearchResult.Solved solved =
                solve(task, Search.of(StopRule.iterations(60), seed, 1).watchedBy(event -> {
                    if (event instanceof SearchEvent.Improved improved) {
                        told.add(improved.layout());
                    }
                }));
        assertThat(told).hasSizeGreaterThan(1);
        LegalLayout.check(task, solved.layout());
        assertThat(solved.layout().length())
                .isEqualTo(told.get(told.size() - 1).length())
                .isLessThan((long) (0.97 * told.get(0).length()));
        assertThat(solved.progress().iteration()).isBetween(60L, 64L);
        assertThat(solved.progress().moves()).isPositive();
    }

    @Test
    void domainsObstaclesAndBondsAreKept() {
        LayoutTask task = Tasks.mixed(3, 200, 2_000);
        SearchResult.Solved solved = solve(task, Search.of(StopRule.iterations(16), 1, 1));
        LegalLayout.check(task, solved.layout());
    }

    @Test
    void theSameSeedWorkersAndIterationsGiveTheSameLayout() {
        LayoutTask task = Tasks.stars(5, 200, 0);
        assertThat(solve(task, Search.of(StopRule.iterations(12), 7, 2)).layout())
                .isEqualTo(solve(task, Search.of(StopRule.iterations(12), 7, 2)).layout());
    }

    @Test
    void aCancelledSearchStillLaysAllPieces() {
        LayoutTask task = Tasks.stars(4, 210, 0);
        AtomicInteger asked = new AtomicInteger();
        AtomicLong shortest = new AtomicLong(Long.MAX_VALUE);
        SearchResult.Solved solved = solve(
                task,
                Search.of(StopRule.iterations(300), 1, 1)
                        .cancelledBy(() -> asked.incrementAndGet() > 400)
                        .watchedBy(event -> {
                            if (event instanceof SearchEvent.Improved improved) {
                                shortest.set(improved.layout().length());
                            }
                        }));
        assertThat(solved.reason()).isEqualTo(SearchResult.StopReason.CANCELLED);
        assertThat(solved.layout().length()).isEqualTo(shortest.get());
        LegalLayout.check(task, solved.layout());
    }

    private static SearchResult.Solved solve(LayoutTask task, Search search) {
        return (SearchResult.Solved) StripSearch.solve(task, search);
    }
}
