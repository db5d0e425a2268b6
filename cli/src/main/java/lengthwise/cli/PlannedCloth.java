package lengthwise.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import lengthwise.FabricRun;
import lengthwise.job.JobPlan;
import lengthwise.job.PlanOrders;
import lengthwise.model.Length;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.BoltPlies;
import lengthwise.plan.lays.CutPlan;
import lengthwise.plan.lays.OrderChanges;
import lengthwise.plan.lays.SettledPlan;
import lengthwise.report.PlanRun;

/**
 * What a plan comes to when its markers are laid: the cloth it takes, what is bought of each colour, and from which bolts.
 *
 * @param lays a run for each lay of the plan
 */
record PlannedCloth(PlanOrders.Cloth cloth, List<FabricRun> lays) {
    PlanRun.Cloth of(
            SettledPlan found, List<String> jobs, List<OrderChanges.Change> changes, BooleanSupplier interrupted) {
        Length fabric = Length.ZERO;
        for (int i = 0; i < lays.size(); i++) {
            fabric = fabric.plus(ply(i).times(found.plan().lays().get(i).allPlies()));
        }
        // a plan counts what lies on the table; folded across, that is half of the cloth
        int lengths = cloth.fabric().spread().lengths();
        CutPlan plan = new CutPlan(
                found.plan().lays(),
                fabric.times(lengths),
                found.plan().bound().times(lengths),
                found.plan().fewestLays());
        List<Purchase> purchases = new ArrayList<>();
        List<PlanRun.Bolts> bolts = new ArrayList<>();
        for (int colour = 0; colour < cloth.order().colours().size(); colour++) {
            Purchase purchase = purchase(plan, colour);
            purchases.add(purchase);
            bolts(plan, colour, interrupted).ifPresent(bolts::add);
        }
        return new PlanRun.Cloth(
                cloth.fabric(),
                cloth.order(),
                cloth.limits(),
                plan,
                found.byGuess().times(lengths),
                found.settled(),
                lays,
                jobs,
                purchases,
                bolts,
                changes.stream()
                        .map(change -> new OrderChanges.Change(
                                change.colour(), change.size(), change.by(), change.fabric() * lengths, change.lays()))
                        .toList(),
                cloth.assumptions());
    }

    private Length ply(int lay) {
        return cloth.fabric().spread().onTable(lays.get(lay).marker().length());
    }

    private Purchase purchase(CutPlan plan, int colour) {
        Length markers = Length.ZERO;
        Length ends = Length.ZERO;
        for (int i = 0; i < lays.size(); i++) {
            int cloths = plan.lays().get(i).plies().get(colour)
                    * cloth.fabric().spread().lengths();
            Length marker = lays.get(i).marker().length();
            markers = markers.plus(marker.times(cloths));
            ends = ends.plus(ply(i).minus(marker).times(cloths));
        }
        return Purchase.of(markers, ends, cloth.fabric());
    }

    private Optional<PlanRun.Bolts> bolts(CutPlan plan, int colour, BooleanSupplier interrupted) {
        List<Length> bolts =
                cloth.bolts(colour).stream().map(JobPlan.Bolt::length).toList();
        if (bolts.isEmpty()) {
            return Optional.empty();
        }
        double kept = cloth.fabric().lengthKept();
        double allowing = 1 + cloth.fabric().buying().flaws();
        int lengths = cloth.fabric().spread().lengths();
        List<Length> plies = IntStream.range(0, lays.size())
                .mapToObj(lay -> new Length((long) Math.ceil(ply(lay).micrometres() * lengths / kept * allowing)))
                .toList();
        Length lost = new Length(
                (long) Math.ceil(cloth.fabric().buying().squaring().times(2).micrometres() * allowing));
        List<Integer> wanted =
                plan.lays().stream().map(lay -> lay.plies().get(colour)).toList();
        long there = bolts.stream()
                .mapToLong(bolt -> Math.max(0, bolt.minus(lost).micrometres()))
                .sum();
        long needed = IntStream.range(0, lays.size())
                .mapToLong(lay -> plies.get(lay).micrometres() * wanted.get(lay))
                .sum();
        return Optional.of(new PlanRun.Bolts(
                colour,
                cloth.bolts(colour).stream().map(JobPlan.Bolt::name).toList(),
                bolts,
                cloth.unusedWidths(colour),
                lost,
                BoltPlies.of(bolts, plies, wanted, lost, interrupted),
                Math.max(0, needed - there)));
    }
}
