package lengthwise;

import java.util.List;
import java.util.Optional;
import lengthwise.check.Violation;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.solver.Progress;
import lengthwise.solver.SearchResult.StopReason;

/** The answer to one marker order. "No" is an answer, with a reason a maker understands. */
public sealed interface MarkerAnswer {
    /**
     * A marker that the check has passed.
     *
     * @param lowerBound no marker for this order can be shorter
     * @param surplus what is cut that nobody ordered
     * @param onGrain how long the marker came with every piece on its grain, where some are tilted because that is shorter
     */
    record Made(
            Marker marker,
            Length lowerBound,
            List<String> surplus,
            Progress progress,
            StopReason reason,
            Optional<Length> onGrain)
            implements MarkerAnswer {
        /** Every piece lies on its grain. */
        public Made(Marker marker, Length lowerBound, List<String> surplus, Progress progress, StopReason reason) {
            this(marker, lowerBound, surplus, progress, reason, Optional.empty());
        }
    }

    /**
     * More is wanted than the cloth on hand gives, as far as the search could find.
     *
     * @param marker the shortest one found; it goes on beyond the end of the cloth as if there were more of the full
     *     width
     * @param room the longest marker that the cloth has room for
     * @param lowerBound no marker for this order can be shorter; above the room it is certain that the order does not fit
     * @param staysOut what finds no place on the cloth in the best part marker found, in the order of the garments
     */
    record TooLong(Marker marker, Length room, Length lowerBound, List<Item> staysOut) implements MarkerAnswer {
        public TooLong {
            staysOut = List.copyOf(staysOut);
        }

        /** Returns how much longer the cloth would have to be when it is cut. */
        public Length shortfall() {
            return marker.length().minus(room);
        }

        public boolean isCertain() {
            return lowerBound.compareTo(room) > 0;
        }
    }

    /** No marker is possible, and why. */
    record Impossible(String reason) implements MarkerAnswer {}

    /** The search gave a marker that the check rejects: a fault of ours; it must not be cut. */
    record Rejected(Marker marker, List<Violation> violations) implements MarkerAnswer {}
}
