package lengthwise.solver;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.SearchResult.StopReason;

/**
 * Searches one task after another that differ in where their lattices lie, each for a small part of the budget, and goes on
 * with the one that came to the shortest layout.
 */
final class PhaseRace {
    /** What each of them gets of the whole budget. */
    private static final double SHARE = 0.05;

    private final long bound;
    private final Search search;
    private Progress spent = new Progress(0, 0, Duration.ZERO, Long.MAX_VALUE);
    private Optional<Layout> shortest = Optional.empty();

    /**
     * A race within a search's budget.
     *
     * @param bound no layout of any of the tasks is shorter
     */
    PhaseRace(long bound, Search search) {
        this.bound = bound;
        this.search = search;
    }

    /** Returns the shortest layout of any of some tasks, of which there is one at least. */
    SearchResult result(List<LayoutTask> tasks) {
        LayoutTask chosen = tasks.get(0);
        for (LayoutTask task : tasks.size() > 1 ? tasks : List.<LayoutTask>of()) {
            double from = search.stop().fraction(spent);
            Run run = new Run(
                    new PreparedTask(task),
                    bound,
                    part(progress -> (search.stop().fraction(progress) - from) / SHARE));
            if (run.result() instanceof SearchResult.Solved solved) {
                if (shortest.isEmpty()
                        || solved.layout().length() < shortest.get().length()) {
                    shortest = Optional.of(solved.layout());
                    chosen = task;
                }
                spent = after(solved.progress());
            }
        }
        Run run = new Run(new PreparedTask(chosen), bound, part(search.stop()));
        shortest.ifPresent(run::beginWith);
        return run.result() instanceof SearchResult.Solved solved
                ? new SearchResult.Solved(
                        solved.layout(), solved.lowerBound(), after(solved.progress()), solved.reason())
                : new SearchResult.Unplaceable(List.of());
    }

    /** Returns the search with another stop rule, which is asked for all that is spent together. */
    private Search part(StopRule stop) {
        StopRule together = new StopRule() {
            @Override
            public double fraction(Progress progress) {
                return stop.fraction(after(progress));
            }

            @Override
            public StopReason reason(Progress progress) {
                return search.stop().reason(after(progress));
            }
        };
        return new Search(together, search.seed(), search.workers(), search.clock(), search.cancelled(), this::tell);
    }

    private void tell(SearchEvent event) {
        if (event instanceof SearchEvent.Working working) {
            search.watcher().accept(new SearchEvent.Working(after(working.progress())));
        } else if (event instanceof SearchEvent.Improved improved
                && (shortest.isEmpty()
                        || improved.layout().length() < shortest.get().length())) {
            search.watcher().accept(new SearchEvent.Improved(improved.layout(), after(improved.progress())));
        }
    }

    /** Returns how far all of it has come when a part of it has come so far. */
    private Progress after(Progress part) {
        return new Progress(
                spent.iteration() + part.iteration(),
                spent.moves() + part.moves(),
                spent.elapsed().plus(part.elapsed()),
                Math.min(shortest.map(Layout::length).orElse(Long.MAX_VALUE), part.bestLength()));
    }
}
