package lengthwise;

import java.util.List;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.plan.Purchase;
import lengthwise.solver.Progress;
import lengthwise.solver.SearchResult.StopReason;

/**
 * The answer for one fabric: a marker that the check has passed, and what the maker needs to know about it.
 *
 * @param lowerBound no marker for this order can be shorter
 * @param assumptions what was assumed, for the marker and the report
 * @param costs what the rules of this fabric cost, or another way of spreading would, a sentence each
 * @param fillers of each kind, how many lie in the marker
 * @param surplus pieces that are cut and not ordered, said honestly (odd pieces on folded fabric)
 */
public record FabricRun(
        Marker marker,
        Length lowerBound,
        Purchase purchase,
        List<Assumption> assumptions,
        List<String> surplus,
        List<String> costs,
        List<Filling.Kind> fillers,
        Progress progress,
        StopReason reason) {
    /**
     * Something not said and therefore assumed.
     *
     * @param text the assumption, a sentence
     * @param otherChoice what the other choice would cost, a sentence; empty where that is not cheap to find
     */
    public record Assumption(String text, String otherChoice) {}
}
