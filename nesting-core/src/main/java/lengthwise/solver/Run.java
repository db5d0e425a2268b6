package lengthwise.solver;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.solver.SearchResult.StopReason;

/** One search from its first layout to its result. */
final class Run {
    private static final int RASTER_ROWS = 128;

    private final PreparedTask task;
    private final Search search;
    private final Instant start;
    private Optional<Layout> best = Optional.empty();
    private Instant lastGain;

    Run(PreparedTask task, Search search) {
        this.task = task;
        this.search = search;
        this.start = search.clock().instant();
        this.lastGain = start;
    }

    SearchResult result() {
        if (task.size() == 0) {
            Layout nothing = new Layout(List.of(), 0);
            return new SearchResult.Solved(nothing, progress(0, 0), StopReason.PROVEN_SHORTEST);
        }
        for (Comparator<Integer> order : FirstLayout.orders(task)) {
            if (best.isEmpty() || !search.cancelled().getAsBoolean()) {
                FirstLayout.build(task, RASTER_ROWS, order, () -> false).ifPresent(this::offer);
            }
        }
        return best.<SearchResult>map(layout -> new SearchResult.Solved(layout, progress(0, 0), reason()))
                .orElseGet(() -> new SearchResult.Unplaceable(task.unplaceable()));
    }

    private StopReason reason() {
        return search.cancelled().getAsBoolean() ? StopReason.CANCELLED : StopReason.BUDGET;
    }

    private void offer(Layout layout) {
        if (best.isEmpty() || layout.length() < best.get().length()) {
            best = Optional.of(layout);
            lastGain = search.clock().instant();
            search.watcher().accept(new SearchEvent.Improved(layout, progress(0, 0)));
        }
    }

    private Progress progress(long iteration, long lastImprovement) {
        Instant now = search.clock().instant();
        return new Progress(
                iteration,
                lastImprovement,
                Duration.between(start, now),
                Duration.between(lastGain, now),
                best.map(Layout::length).orElse(Long.MAX_VALUE));
    }
}
