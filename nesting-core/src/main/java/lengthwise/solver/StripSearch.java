package lengthwise.solver;

import java.util.List;
import java.util.Optional;
import lengthwise.rules.LayoutTask;

/**
 * Finds a short legal layout of a task: irregular strip packing with placement domains, obstacles and bonds.
 *
 * <p>Every layout that is told or returned has passed the exact test of {@link lengthwise.geometry.PairTest} for every
 * pair and lies in every domain. The same task, seed, number of workers and budget of iterations give the same layout.
 */
public final class StripSearch {
    private StripSearch() {}

    /** Searches until the stop rule is met, the search is cancelled, or no layout can be shorter by a quarter of a millimetre. */
    public static SearchResult solve(LayoutTask layoutTask, Search search) {
        return solve(layoutTask, search, Optional.empty());
    }

    /**
     * Searches likewise.
     *
     * @param known a legal layout to begin with, where there is one; one that breaks a bond of nearness is passed over
     */
    public static SearchResult solve(LayoutTask layoutTask, Search search, Optional<Layout> known) {
        PreparedTask asGiven = new PreparedTask(layoutTask);
        if (!asGiven.unplaceable().isEmpty()) {
            return new SearchResult.Unplaceable(asGiven.unplaceable());
        }
        if (known.filter(layout -> !layoutTask.isNear(layout.poses())).isPresent()) {
            return solve(layoutTask, search, Optional.empty());
        }
        // elsewhere the lattices may let a layout be shorter: what is proven must hold wherever they are
        long bound = asGiven.lowerBound();
        if (!asGiven.phases().isEmpty() && known.isEmpty()) {
            List<LayoutTask> settled = PhaseChoice.of(asGiven, search.seed(), search.cancelled());
            return settled.isEmpty()
                    ? new SearchResult.Unplaceable(PhaseChoice.members(asGiven))
                    : new PhaseRace(bound, search).result(settled);
        }
        PreparedTask task = known.filter(layout -> !asGiven.phases().isEmpty())
                .map(layout -> new PreparedTask(layoutTask.inPhaseOf(layout.poses())))
                .orElse(asGiven);
        Run run = new Run(task, bound, search);
        known.ifPresent(run::beginWith);
        return run.result();
    }

    /**
     * Looks for a layout that is no longer than some length, and ends with the first one; not finding one proves nothing.
     *
     * @param length in micrometres, above 0
     */
    public static Optional<Layout> within(long length, LayoutTask layoutTask, Search search) {
        PreparedTask asGiven = new PreparedTask(layoutTask);
        if (!asGiven.unplaceable().isEmpty() || asGiven.lowerBound() > length) {
            return Optional.empty();
        }
        Optional<PreparedTask> task = asGiven.phases().isEmpty()
                ? Optional.of(asGiven)
                : PhaseChoice.of(asGiven, search.seed(), search.cancelled()).stream()
                        .findFirst()
                        .map(PreparedTask::new);
        return task.flatMap(settled -> within(length, settled, search));
    }

    private static Optional<Layout> within(long length, PreparedTask task, Search search) {
        Run run = new Run(task, search);
        run.aimAt(length);
        return run.result() instanceof SearchResult.Solved solved
                        && solved.layout().length() <= length
                ? Optional.of(solved.layout())
                : Optional.empty();
    }
}
