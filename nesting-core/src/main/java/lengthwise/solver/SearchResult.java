package lengthwise.solver;

import java.util.List;

/** The answer of a search. */
public sealed interface SearchResult {
    /**
     * The shortest layout found, and why the search ended.
     *
     * @param lowerBound no layout can be shorter, in micrometres
     */
    record Solved(Layout layout, long lowerBound, Progress progress, StopReason reason) implements SearchResult {}

    /** These demands (by index) cannot lie anywhere in the strip, whatever its length. */
    record Unplaceable(List<Integer> demands) implements SearchResult {}

    /** Why a search ended. */
    enum StopReason {
        /** Its budget was used up. */
        BUDGET,
        /** No layout is shorter by a quarter of a millimetre or more. */
        PROVEN_SHORTEST,
        /** Nothing better came for long enough that more was not expected. */
        NO_GAIN,
        /** It was interrupted. */
        CANCELLED
    }
}
