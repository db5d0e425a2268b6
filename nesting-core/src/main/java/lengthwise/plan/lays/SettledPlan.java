package lengthwise.plan.lays;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.model.Length;
import lengthwise.plan.lays.CutOrderPlanning.Answer;
import lengthwise.plan.lays.CutOrderPlanning.Effort;

/**
 * A plan whose lengths are those of real markers: an order is planned with guessed lengths, the markers that come of it are laid,
 * the guess is corrected, and so on until a plan asks for no marker that was not laid. Lengths that are only estimated give
 * wrong totals (R. M'Hallah, A. Bouziri, <i>Heuristics for the combined cut order planning two-dimensional layout problem in the
 * apparel industry</i>, International Transactions in Operational Research 23, 2016).
 *
 * @param plan the best of all rounds by the markers laid; its bound counts garments by their area, so that it holds for any markers
 * @param guess the lengths that the last round was planned with
 * @param byGuess what no plan takes less than if the guess is right
 * @param settled whether the last round asked for no other marker
 */
public record SettledPlan(CutPlan plan, PlyLength guess, Length byGuess, boolean settled) {
    private static final int ROUNDS = 4;

    /** Lays markers. */
    @FunctionalInterface
    public interface Markers {
        /** Returns the length of a marker for a size ratio; empty where there is none, or no more time for it. */
        Optional<Length> length(List<Integer> ratio);
    }

    /** Says what was laid, or why nothing was found. */
    public sealed interface Outcome {
        record Settled(SettledPlan plan) implements Outcome {}

        record Not(Answer why) implements Outcome {}

        /** A marker that any plan needs could not be laid. */
        record NoMarker(List<Integer> ratio) implements Outcome {}
    }

    /**
     * Plans an order.
     *
     * @param net length of a garment of each size: its area over the cuttable width
     * @param ends what a ply has beyond its marker
     * @param effort for all rounds together
     */
    public static Outcome of(
            CutOrder order, LayLimits limits, List<Length> net, Length ends, Aim aim, Effort effort, Markers markers) {
        PlyLength least = new PlyLength(ends, net);
        Effort each = new Effort(effort.deterministicSeconds() / ROUNDS, effort.seed(), effort.enough());
        MarkerLengths lengths = new MarkerLengths(net, ends, limits.table().isPresent());
        for (List<Integer> sample : samples(order, limits, net, least)) {
            Optional<Length> marker = markers.length(sample);
            if (marker.isEmpty()) {
                return new Outcome.NoMarker(sample);
            }
            lengths.add(sample, marker.get());
        }
        Optional<SettledPlan> best = Optional.empty();
        Answer last = new Answer.NotFound();
        for (int round = 0; round < ROUNDS && !(round > 0 && effort.enough().getAsBoolean()); round++) {
            PlyLength guess = lengths.guess();
            last = CutOrderPlanning.plan(order, limits, guess, aim, each);
            if (!(last instanceof Answer.Planned planned)) {
                break;
            }
            boolean settled = true;
            boolean allLaid = true;
            for (Lay lay : planned.plan().lays()) {
                if (!lengths.knows(lay.ratio())) {
                    settled = false;
                    Optional<Length> marker = markers.length(lay.ratio());
                    marker.ifPresent(length -> lengths.add(lay.ratio(), length));
                    allLaid &= marker.isPresent();
                }
            }
            if (!allLaid) {
                break;
            }
            SettledPlan now = new SettledPlan(
                    measured(planned.plan(), lengths, new PlanBounds(order, limits, least).fabric()),
                    guess,
                    planned.plan().bound(),
                    settled);
            if (fits(now.plan, lengths, limits)
                    && best.map(before -> shorter(now.plan, before.plan, aim)).orElse(true)) {
                best = Optional.of(now);
            }
            if (settled) {
                best = best.map(found ->
                        new SettledPlan(found.plan, guess, planned.plan().bound(), true));
                break;
            }
        }
        Answer why = last;
        return best.<Outcome>map(Outcome.Settled::new).orElseGet(() -> new Outcome.Not(why));
    }

    /** Returns two ratios to begin with: a garment of the longest size alone, and one of each, as many as a marker may hold. */
    private static List<List<Integer>> samples(CutOrder order, LayLimits limits, List<Length> net, PlyLength least) {
        int sizes = order.sizes().size();
        List<Integer> wanted = IntStream.range(0, sizes)
                .filter(size ->
                        IntStream.range(0, order.colours().size()).anyMatch(colour -> order.garments(colour, size) > 0))
                .boxed()
                .toList();
        if (wanted.isEmpty()) {
            return List.of();
        }
        int longest =
                wanted.stream().max((a, b) -> net.get(a).compareTo(net.get(b))).orElseThrow();
        List<Integer> one = ratio(sizes, List.of(longest));
        List<Integer> some = new ArrayList<>();
        for (int size : wanted) {
            List<Integer> more = new ArrayList<>(some);
            more.add(size);
            boolean room = limits.table()
                    .map(table -> least.of(ratio(sizes, more)).compareTo(table) <= 0)
                    .orElse(true);
            if (more.size() <= limits.garments() && room) {
                some.add(size);
            }
        }
        List<Integer> mixed = ratio(sizes, some);
        return some.isEmpty() || mixed.equals(one) ? List.of(one) : List.of(one, mixed);
    }

    private static List<Integer> ratio(int sizes, List<Integer> of) {
        return IntStream.range(0, sizes)
                .mapToObj(size -> of.contains(size) ? 1 : 0)
                .toList();
    }

    private static CutPlan measured(CutPlan plan, MarkerLengths lengths, Length bound) {
        Length fabric = Length.ZERO;
        for (Lay lay : plan.lays()) {
            fabric = fabric.plus(lengths.ply(lay.ratio()).orElseThrow().times(lay.allPlies()));
        }
        return new CutPlan(plan.lays(), fabric, bound, plan.fewestLays());
    }

    private static boolean fits(CutPlan plan, MarkerLengths lengths, LayLimits limits) {
        return limits.table()
                .map(table -> plan.lays().stream()
                        .allMatch(lay -> lengths.ply(lay.ratio()).orElseThrow().compareTo(table) <= 0))
                .orElse(true);
    }

    private static boolean shorter(CutPlan plan, CutPlan than, Aim aim) {
        int byFabric = plan.fabric().compareTo(than.fabric());
        int byLays = Integer.compare(plan.lays().size(), than.lays().size());
        int first = aim == Aim.LAYS ? byLays : byFabric;
        return (first != 0 ? first : byFabric + byLays) < 0;
    }
}
