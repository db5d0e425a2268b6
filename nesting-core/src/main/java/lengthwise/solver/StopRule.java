package lengthwise.solver;

import java.time.Duration;

/** Says how much of a search's budget is used. Stateless; combine with {@link #or}. */
@FunctionalInterface
public interface StopRule {
    /** Returns 0 at the start of the search, 1 or more when it should end. Phases of the search follow this number. */
    double fraction(Progress progress);

    default boolean isMet(Progress progress) {
        return fraction(progress) >= 1;
    }

    default StopRule or(StopRule other) {
        return progress -> Math.max(fraction(progress), other.fraction(progress));
    }

    static StopRule iterations(long count) {
        return progress -> progress.iteration() / (double) count;
    }

    static StopRule elapsed(Duration limit) {
        return progress -> progress.elapsed().toNanos() / (double) limit.toNanos();
    }
}
