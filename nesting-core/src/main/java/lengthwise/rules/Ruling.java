package lengthwise.rules;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Outline;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;

/** What all rules together make of an order. */
public sealed interface Ruling {
    /**
     * The task for the search.
     *
     * @param items one for each demand of the task, in its order
     * @param surplus what is cut that nobody ordered, a sentence each
     * @param lengths which lengths the marker may have
     */
    record Task(List<Item> items, LayoutTask task, List<String> surplus, WholeRepeats lengths) implements Ruling {}

    /** Two rules contradict; the reason names them and the way out. */
    record Refused(String reason) implements Ruling {}

    /** Applies every rule to an order. */
    static Ruling of(MarkerOrder asOrdered) {
        MarkerOrder order = UpEndRule.upright(asOrdered);
        try {
            SpreadRule.Contours contours = SpreadRule.of(order);
            List<Demand> demands = new ArrayList<>();
            for (Item item : contours.items()) {
                PlacementDomain domain =
                        PositionRule.domain(item, order.fabric(), DirectionRule.orientations(item, order.fabric()));
                Length gap = order.gapOf(item.piece().name());
                demands.add(new Demand(item.piece().outline(), domain, gap.micrometres()));
            }
            List<Obstacle> obstacles = new ArrayList<>(RemnantRule.outside(order.fabric()));
            order.fabric().flaws().forEach(flaw -> obstacles.add(new Obstacle(Outline.of(flaw.ring()))));
            List<Bond> bonds = GarmentDirectionRule.bonds(contours.items(), order.fabric());
            obstacles.addAll(CutAlreadyRule.gone(order.cutAlready()));
            LayoutTask task = new LayoutTask(
                    order.fabric().cuttableWidth().micrometres(),
                    CutAlreadyRule.pinned(contours.items(), demands, order),
                    obstacles,
                    bonds);
            WholeRepeats lengths = WholeRepeats.of(contours.items(), order.fabric());
            return new Task(contours.items(), task, contours.surplus(), lengths);
        } catch (RefusedException refused) {
            return new Refused(String.valueOf(refused.getMessage()));
        }
    }
}
