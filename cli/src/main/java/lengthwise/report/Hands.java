package lengthwise.report;

import java.util.List;
import lengthwise.model.CutOut;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Spread;

/** Says which hands a laid contour gives. */
final class Hands {
    private Hands() {}

    /** Returns L, R, L + R, "on fold", "two", "mirrored", or nothing where there is nothing to say. */
    static String of(Item item, MarkerOrder order) {
        boolean folded = order.fabric().spread().form() == Spread.Form.FOLD_LENGTHWISE;
        if (folded && item.piece().foldEdge().isPresent()) {
            return "on fold";
        }
        List<CutOut> cutOuts = CutOut.of(item, order);
        if (folded && cutOuts.size() == 1) {
            return "one, one spare";
        }
        if (folded) {
            return cutOuts.get(0).hand() == Hand.NONE ? "two" : "L + R";
        }
        return item.hand() == Hand.NONE && item.mirrored()
                ? "mirrored"
                : item.hand().letter();
    }
}
