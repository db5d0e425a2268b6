package lengthwise.plan.lays;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lengthwise.model.Length;
import lengthwise.plan.lays.CutOrderPlanning.Answer;
import lengthwise.plan.lays.CutOrderPlanning.Effort;

/** What one or two garments more or fewer would change about a plan. */
public final class OrderChanges {
    /** A garment more is worth a word if it takes less than this share of the fabric that it holds. */
    private static final double CHEAP = 0.5;

    /** A garment fewer is worth a word if it saves more than this many times the fabric that it holds. */
    private static final double DEAR = 1.5;

    private static final int MOST_GARMENTS = 2;

    private OrderChanges() {}

    /**
     * One change of an order.
     *
     * @param by garments more, or fewer below 0
     * @param fabric micrometres more, or less below 0
     * @param lays how many there are then
     */
    public record Change(int colour, int size, int by, long fabric, int lays) {}

    /**
     * Returns the changes worth a word, the most telling first: fewer lays, or fabric out of proportion.
     *
     * @param effort for all of them together
     * @param most how many to return
     */
    public static List<Change> of(
            CutOrder order, LayLimits limits, PlyLength lengths, Aim aim, CutPlan plan, Effort effort, int most) {
        Length fabric = fabric(plan, lengths);
        int plans = 2 * MOST_GARMENTS * order.colours().size() * order.sizes().size();
        Effort each = new Effort(effort.deterministicSeconds() / plans, effort.seed(), effort.enough());
        List<Change> telling = new ArrayList<>();
        for (int colour = 0; colour < order.colours().size(); colour++) {
            for (int size = 0; size < order.sizes().size(); size++) {
                int ordered = order.garments(colour, size);
                for (int by = -MOST_GARMENTS; by <= MOST_GARMENTS; by++) {
                    if (by == 0
                            || ordered == 0
                            || ordered + by < 0
                            || each.enough().getAsBoolean()) {
                        continue;
                    }
                    Answer answer =
                            CutOrderPlanning.plan(order.with(colour, size, ordered + by), limits, lengths, aim, each);
                    if (answer instanceof Answer.Planned other) {
                        long more = fabric(other.plan(), lengths).micrometres() - fabric.micrometres();
                        Change change = new Change(
                                colour, size, by, more, other.plan().lays().size());
                        if (isTelling(change, plan, lengths)) {
                            telling.add(change);
                        }
                    }
                }
            }
        }
        telling.sort(Comparator.comparingInt(Change::lays)
                .thenComparingDouble(change -> change.fabric() - own(change, lengths))
                .thenComparingInt(change -> Math.abs(change.by())));
        return telling.stream().limit(most).toList();
    }

    private static boolean isTelling(Change change, CutPlan plan, PlyLength lengths) {
        boolean fewerLays = change.lays() < plan.lays().size();
        boolean cheap = change.by() > 0 && change.fabric() < CHEAP * own(change, lengths);
        boolean dear = change.by() < 0 && change.fabric() < DEAR * own(change, lengths);
        return (fewerLays && change.fabric() <= Math.max(0, own(change, lengths))) || cheap || dear;
    }

    /** Returns the fabric that the garments themselves hold, below 0 where they are fewer. */
    private static double own(Change change, PlyLength lengths) {
        return (double) change.by() * lengths.garments().get(change.size()).micrometres();
    }

    private static Length fabric(CutPlan plan, PlyLength lengths) {
        Length fabric = Length.ZERO;
        for (Lay lay : plan.lays()) {
            fabric = fabric.plus(lengths.of(lay.ratio()).times(lay.allPlies()));
        }
        return fabric;
    }
}
