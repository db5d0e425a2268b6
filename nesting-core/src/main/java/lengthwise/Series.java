package lengthwise;

import java.time.Duration;
import java.time.Instant;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;

/** Several short searches, one after another, that have one budget together. */
final class Series {
    private final Search search;
    private final Instant start;
    private long sweepsBefore;
    private long sweeps;

    /** @param search its stop rule is asked for all of them together */
    Series(Search search) {
        this.search = search;
        this.start = search.clock().instant();
    }

    /** Returns the next search, by one worker: it ends when its own rule is met, or when the budget for all is used up. */
    Search next(StopRule own) {
        sweepsBefore += sweeps;
        sweeps = 0;
        return new Search(own.or(this::together), search.seed(), 1, search.clock(), search.cancelled(), event -> {});
    }

    /** Says whether a share of the budget is used up, or the maker wants no more. */
    boolean isOver(double share) {
        if (search.cancelled().getAsBoolean()) {
            return true;
        }
        Duration elapsed = Duration.between(start, search.clock().instant());
        long all = sweepsBefore + sweeps;
        return search.stop().fraction(new Progress(all, 0, elapsed, Long.MAX_VALUE)) >= share;
    }

    private double together(Progress one) {
        sweeps = one.iteration();
        return search.stop()
                .fraction(new Progress(
                        sweepsBefore + one.iteration(),
                        one.moves(),
                        Duration.between(start, search.clock().instant()),
                        one.bestLength()));
    }
}
