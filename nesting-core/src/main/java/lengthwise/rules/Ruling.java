package lengthwise.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Outline;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;

/** What all rules together make of an order. */
public sealed interface Ruling {
    /**
     * The task for the search.
     *
     * @param items one for each demand of the task, in its order
     * @param tilted the same task where pieces may be off their grain by what is allowed, where anything is
     * @param surplus what is cut that nobody ordered, a sentence each
     * @param lengths which lengths the marker may have
     */
    record Task(
            List<Item> items, LayoutTask task, Optional<LayoutTask> tilted, List<String> surplus, WholeRepeats lengths)
            implements Ruling {}

    /** Two rules contradict; the reason names them and the way out. */
    record Refused(String reason) implements Ruling {}

    /** Applies every rule to an order. */
    static Ruling of(MarkerOrder asOrdered) {
        MarkerOrder order = UpEndRule.upright(asOrdered);
        try {
            SpreadRule.Contours contours = SpreadRule.of(order);
            boolean toTheSelvedge = SelvedgeRule.isAsked(order);
            List<Demand> demands = new ArrayList<>();
            MatchRule match = MatchRule.of(contours.items(), order.fabric());
            MotifRule motifs = new MotifRule(order);
            for (int i = 0; i < contours.items().size(); i++) {
                Item item = contours.items().get(i);
                PlacementDomain tied = motifs.domain(item, tied(i, item, order, match), match.hasFreePhase(i));
                PlacementDomain onGrain = toTheSelvedge ? SelvedgeRule.domain(item, order, tied) : tied;
                PlacementDomain domain = TiltRule.domain(item, order, onGrain);
                Length gap = order.gapOf(item.piece().name());
                demands.add(new Demand(item.piece().outline(), domain, gap.micrometres()));
            }
            List<Obstacle> obstacles = new ArrayList<>(RemnantRule.outside(order.fabric()));
            order.fabric().flaws().forEach(flaw -> obstacles.add(new Obstacle(Outline.of(flaw.ring()))));
            obstacles.addAll(CutAlreadyRule.gone(order.cutAlready()));
            List<Bond> bonds = new ArrayList<>(
                    match.sameTurn(GarmentDirectionRule.bonds(contours.items(), order.fabric()), demands));
            bonds.addAll(match.phases());
            bonds.addAll(ShadeRule.bonds(contours.items(), demands, order));
            bonds.addAll(TiltRule.bonds(contours.items(), order));
            LayoutTask task = toTheSelvedge
                    ? SelvedgeRule.strip(order.fabric(), demands, obstacles, bonds)
                    : new LayoutTask(order.fabric().cuttableWidth().micrometres(), demands, obstacles, bonds);
            WholeRepeats lengths = WholeRepeats.of(contours.items(), order);
            LayoutTask tilted = TiltRule.asLaid(CutAlreadyRule.pinned(contours.items(), task, order));
            LayoutTask onGrain = TiltRule.untilted(tilted);
            return new Task(
                    contours.items(),
                    onGrain,
                    Optional.of(tilted).filter(either -> !either.equals(onGrain)),
                    contours.surplus(),
                    lengths);
        } catch (RefusedException refused) {
            return new Refused(String.valueOf(refused.getMessage()));
        }
    }

    private static PlacementDomain tied(int number, Item item, MarkerOrder order, MatchRule match)
            throws RefusedException {
        Lying lying = order.lyingOf(item.piece().name());
        if (lying.border().isPresent()) {
            BorderRule.refuseMatched(item, order.fabric(), match.lattice(number));
            return BorderRule.domain(item, order, lying.border().get());
        }
        PlacementDomain domain = PositionRule.domain(
                item,
                order.fabric(),
                match.alike(number, DirectionRule.orientations(item, order.fabric())),
                match.lattice(number));
        return lying.zone().isPresent()
                ? ZoneRule.domain(item, order.fabric(), lying.zone().get(), domain)
                : domain;
    }
}
