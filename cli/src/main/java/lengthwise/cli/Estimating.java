package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.Estimate.NotLaid;
import lengthwise.MarkerAnswer;
import lengthwise.WiderCloth;
import lengthwise.check.Violation;
import lengthwise.job.WiderFabric;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.plan.Purchase;

/**
 * Lays one order on cloth of several widths, the narrowest first. Where a search comes out longer than the width before, the
 * marker of that one is kept, which lies on wider cloth as well, or on wider cloth that is cut down: so a wider one is never
 * longer. What was found stands only where wider cloth is another cloth ({@link WiderFabric#ANOTHER_CLOTH}).
 *
 * <p>Searches do not begin with the marker of the width before: in short times they stay near it, and come out up to a third
 * longer than those that begin with nothing.
 */
final class Estimating {
    private Estimating() {}

    /**
     * What is asked for one width: the order on cloth of that width, or why there is none.
     *
     * @param refusal empty where there is an order
     */
    record Asked(Length width, Optional<MarkerOrder> order, String refusal) {
        static Asked of(MarkerOrder order) {
            return new Asked(order.fabric().width(), Optional.of(order), "");
        }
    }

    /** A marker that the check rejects: a fault of ours. */
    static final class RejectedException extends Exception {
        private static final long serialVersionUID = 1;

        RejectedException(String message) {
            super(message);
        }
    }

    /**
     * Returns an answer for each width.
     *
     * @param wider how the widths relate
     * @param search makes a marker
     */
    static List<InWidth> widths(
            List<Asked> narrowestFirst, WiderFabric wider, Function<MarkerOrder, MarkerAnswer> search)
            throws RejectedException {
        List<InWidth> widths = new ArrayList<>();
        Optional<Laid> narrower = Optional.empty();
        for (Asked asked : narrowestFirst) {
            if (asked.order().isEmpty()) {
                widths.add(new NotLaid(asked.width(), asked.refusal()));
                continue;
            }
            MarkerOrder order = asked.order().get();
            InWidth found = inWidth(order, search.apply(order));
            if (found instanceof Laid laid) {
                found = narrower.map(before -> shorter(laid, before, wider)).orElse(laid);
                narrower = Optional.of((Laid) found);
            }
            widths.add(found);
        }
        return widths;
    }

    private static Laid shorter(Laid laid, Laid narrower, WiderFabric wider) {
        if (narrower.marker().length().compareTo(laid.marker().length()) >= 0) {
            return laid;
        }
        Optional<Marker> carried = narrower.cutDownTo().isPresent()
                ? Optional.empty()
                : WiderCloth.carried(narrower.marker(), laid.marker().order());
        return carried.or(() -> Optional.of(narrower.marker()).filter(marker -> wider == WiderFabric.CAN_BE_CUT_DOWN))
                .map(marker -> laid(laid.fabric(), marker, Length.min(laid.lowerBound(), narrower.lowerBound())))
                .orElse(laid);
    }

    private static Laid laid(Fabric fabric, Marker marker, Length lowerBound) {
        return new Laid(fabric, marker, lowerBound, Purchase.of(marker.length(), fabric));
    }

    static InWidth inWidth(MarkerOrder order, MarkerAnswer answer) throws RejectedException {
        if (answer instanceof MarkerAnswer.Made made) {
            return laid(order.fabric(), made.marker(), made.lowerBound());
        }
        if (answer instanceof MarkerAnswer.Rejected rejected) {
            throw new RejectedException(
                    "the marker for %s did not pass the check, a fault of ours; nothing is written. %s"
                            .formatted(
                                    order.fabric().name(),
                                    rejected.violations().stream()
                                            .map(Violation::sentence)
                                            .findFirst()
                                            .orElse("")));
        }
        if (answer instanceof MarkerAnswer.Impossible impossible) {
            return new NotLaid(order.fabric().width(), impossible.reason());
        }
        throw new IllegalStateException("Cloth to be bought cannot be too short: " + answer);
    }
}
