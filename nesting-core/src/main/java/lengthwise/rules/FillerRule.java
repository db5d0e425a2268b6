package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.CutAlready;
import lengthwise.model.CutPiece;
import lengthwise.model.MarkerOrder;

/**
 * Fillers lie by the same rules as all other pieces. Of each kind only as many are laid as come out whole: where layers
 * give several at a time, a cut that would give more than are allowed is not made.
 */
public final class FillerRule {
    private FillerRule() {}

    /** Returns what the rules make of an order's fillers by themselves. */
    public static Ruling of(MarkerOrder order) {
        MarkerOrder alone = order.withCutAlready(CutAlready.NONE);
        Map<List<CutPiece>, List<Bundle>> kinds = new LinkedHashMap<>();
        for (Bundle filler : order.fillers()) {
            kinds.computeIfAbsent(filler.pieces(), pieces -> new ArrayList<>()).add(filler);
        }
        List<Bundle> whole = new ArrayList<>();
        for (List<Bundle> kind : kinds.values()) {
            Ruling ruling = Ruling.of(alone.withBundles(kind));
            while (ruling instanceof Ruling.Task task && !task.surplus().isEmpty()) {
                kind.remove(kind.size() - 1);
                ruling = Ruling.of(alone.withBundles(kind));
            }
            if (ruling instanceof Ruling.Refused) {
                return ruling;
            }
            whole.addAll(kind);
        }
        return Ruling.of(alone.withBundles(whole));
    }
}
