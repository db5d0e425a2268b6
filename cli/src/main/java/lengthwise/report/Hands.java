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
        Spread spread = order.fabric().spread();
        if (spread.mirrors() && item.piece().foldEdge().isPresent()) {
            return "on fold";
        }
        List<CutOut> cutOuts = CutOut.of(item, order);
        if (spread.layers() > 1 && cutOuts.size() < spread.layers()) {
            String some = hands(item, cutOuts, spread);
            return "%s, %s spare".formatted(some, count(spread.layers() - cutOuts.size()));
        }
        return hands(item, cutOuts, spread);
    }

    private static String hands(Item item, List<CutOut> cutOuts, Spread spread) {
        if (spread.mirrors() && cutOuts.get(0).hand() != Hand.NONE) {
            return cutOuts.size() == 2 ? "L + R" : cutOuts.size() / 2 + " L + " + cutOuts.size() / 2 + " R";
        }
        String count = spread.layers() == 1 ? "" : count(cutOuts.size());
        String hand = item.hand() == Hand.NONE && item.mirrored()
                ? "mirrored"
                : item.hand().letter();
        return count.isEmpty() || hand.isEmpty() ? count + hand : count + " " + hand;
    }

    private static String count(int count) {
        return switch (count) {
            case 1 -> "one";
            case 2 -> "two";
            default -> Integer.toString(count);
        };
    }
}
