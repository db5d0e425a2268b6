package lengthwise.solver;

import java.time.Duration;
import lengthwise.solver.SearchResult.StopReason;

/** Says how much of a search's budget is used. Stateless; combine with {@link #or}. */
@FunctionalInterface
public interface StopRule {
    /** Returns 0 at the start of the search, 1 or more when it should end. Phases of the search follow this number. */
    double fraction(Progress progress);

    /** Returns why the search ends when this rule is met. */
    default StopReason reason(Progress progress) {
        return StopReason.BUDGET;
    }

    /**
     * Returns the share of the budget after which a search ends that has found nothing better. Rules made of this one have no
     * patience but what they are given.
     */
    default double patience() {
        return Double.POSITIVE_INFINITY;
    }

    default boolean isMet(Progress progress) {
        return fraction(progress) >= 1;
    }

    /** Returns the rule that ends as soon as this or another one does, and for the reason of that one. */
    default StopRule or(StopRule other) {
        return new Either(this, other);
    }

    /** Returns the rule that also ends a search when nothing better came for a share of the budget. */
    default StopRule withPatience(double share) {
        return new Patient(this, share);
    }

    /** Returns the rule that is met when a share of this one's budget is used. */
    default StopRule share(double of) {
        return new Share(this, of);
    }

    static StopRule iterations(long count) {
        return progress -> progress.iteration() / (double) count;
    }

    static StopRule elapsed(Duration limit) {
        return progress -> progress.elapsed().toNanos() / (double) limit.toNanos();
    }

    /** The rule that is further along decides. */
    record Either(StopRule one, StopRule other) implements StopRule {
        @Override
        public double fraction(Progress progress) {
            return Math.max(one.fraction(progress), other.fraction(progress));
        }

        @Override
        public StopReason reason(Progress progress) {
            return (one.fraction(progress) >= other.fraction(progress) ? one : other).reason(progress);
        }
    }

    /** A rule of which a share will do. */
    record Share(StopRule rule, double share) implements StopRule {
        @Override
        public double fraction(Progress progress) {
            return rule.fraction(progress) / share;
        }

        @Override
        public StopReason reason(Progress progress) {
            return rule.reason(progress);
        }
    }

    /** A rule with some patience. */
    record Patient(StopRule rule, double patience) implements StopRule {
        @Override
        public double fraction(Progress progress) {
            return rule.fraction(progress);
        }

        @Override
        public StopReason reason(Progress progress) {
            return rule.reason(progress);
        }
    }
}
