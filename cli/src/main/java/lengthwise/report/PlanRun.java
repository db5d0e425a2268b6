package lengthwise.report;

import java.util.List;
import java.util.Optional;
import lengthwise.FabricRun;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.BoltPlies;
import lengthwise.plan.lays.CutOrder;
import lengthwise.plan.lays.CutPlan;
import lengthwise.plan.lays.LayLimits;
import lengthwise.plan.lays.OrderChanges.Change;

/**
 * The plan of a job: for each fabric its lays with their markers.
 *
 * @param reproducible false when a clock or an interrupt ended a search
 */
public record PlanRun(
        String job,
        String version,
        long seed,
        int workers,
        boolean reproducible,
        List<Cloth> cloths,
        List<String> warnings) {
    public PlanRun {
        cloths = List.copyOf(cloths);
        warnings = List.copyOf(warnings);
    }

    /**
     * The plan of one fabric.
     *
     * @param plan by the markers of {@code lays}
     * @param byGuess no plan takes less if markers of other ratios are as long as guessed from those laid
     * @param settled whether every marker of the last round was laid before it
     * @param lays the marker of each lay of the plan, all its plies on each other
     * @param jobs the text of a job file for each lay
     * @param purchases for each colour of the order
     * @param bolts for each colour where bolts are listed
     * @param changes what a garment more or fewer would change
     * @param assumptions sentences
     */
    public record Cloth(
            Fabric fabric,
            CutOrder order,
            LayLimits limits,
            CutPlan plan,
            Length byGuess,
            boolean settled,
            List<FabricRun> lays,
            List<String> jobs,
            List<Purchase> purchases,
            List<Bolts> bolts,
            List<Change> changes,
            List<String> assumptions) {
        public Cloth {
            lays = List.copyOf(lays);
            jobs = List.copyOf(jobs);
            purchases = List.copyOf(purchases);
            bolts = List.copyOf(bolts);
            changes = List.copyOf(changes);
            assumptions = List.copyOf(assumptions);
        }

        /** Returns the length of a ply of a lay, ends included. */
        public Length ply(int lay) {
            return fabric.spread().onTable(lays.get(lay).marker().length());
        }
    }

    /**
     * The bolts of one colour, as bought.
     *
     * @param names their labels, where they have any
     * @param unused of the width of each: what it is wider than the markers are made for
     * @param lost of the length of each that is begun, for square ends
     * @param plies which plies are cut from which; empty where the bolts do not hold them all
     * @param shortfall how much cloth there is too little, at the least, in micrometres; 0 where only the pieces do not work out
     */
    public record Bolts(
            int colour,
            List<Optional<String>> names,
            List<Length> lengths,
            List<Length> unused,
            Length lost,
            Optional<BoltPlies> plies,
            long shortfall) {
        public Bolts {
            names = List.copyOf(names);
            lengths = List.copyOf(lengths);
            unused = List.copyOf(unused);
        }
    }
}
