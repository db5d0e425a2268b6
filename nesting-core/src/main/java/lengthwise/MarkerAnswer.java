package lengthwise;

import java.util.List;
import lengthwise.check.Violation;
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
     */
    record Made(Marker marker, Length lowerBound, List<String> surplus, Progress progress, StopReason reason)
            implements MarkerAnswer {}

    /** No marker is possible, and why. */
    record Impossible(String reason) implements MarkerAnswer {}

    /** The search gave a marker that the check rejects: a fault of ours; it must not be cut. */
    record Rejected(Marker marker, List<Violation> violations) implements MarkerAnswer {}
}
