package lengthwise.plan.lays;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import lengthwise.model.Length;

/**
 * The constraint model of a plan of at most so many lays. What a lay gives of a size is plies times garments in the marker;
 * the product is taken apart by the garments: with a switch for the k-th garment of a size, each garment that is there
 * adds the plies (the linearisation of Z. Degraeve and M. Vandebroek, <i>A mixed integer programming model for solving a
 * layout problem in the fashion industry</i>, Management Science 44, 1998; method as described, reference from memory).
 * Lays are numbered from the highest down.
 */
final class LayModel {
    private final CutOrder order;
    private final LayLimits limits;
    private final PlyLength lengths;
    private final PlanBounds bounds;
    private final int lays;
    private final long unit;
    private final CpModel model = new CpModel();

    /** By lay and colour. */
    private final IntVar[][] plies;

    /** By lay and size: whether there is a k-th garment. */
    private final BoolVar[][][] garment;

    private final LinearExprBuilder fabric = LinearExpr.newBuilder();

    LayModel(CutOrder order, LayLimits limits, PlyLength lengths, int lays) {
        this.order = order;
        this.limits = limits;
        this.lengths = lengths;
        this.bounds = new PlanBounds(order, limits, lengths);
        this.lays = lays;
        this.unit = unit(lengths);
        this.plies = new IntVar[lays][order.colours().size()];
        this.garment = new BoolVar[lays][order.sizes().size()][];
        build();
    }

    CpModel model() {
        return model;
    }

    /** Returns the fabric that an objective value stands for. */
    Length fabric(double objective) {
        return new Length(Math.round(objective) * unit);
    }

    /** Begins with a plan; lays that it does not have are empty. */
    void hint(List<Lay> known) {
        for (int j = 0; j < lays; j++) {
            boolean there = j < known.size();
            for (int c = 0; c < plies[j].length; c++) {
                model.addHint(plies[j][c], there ? known.get(j).plies().get(c) : 0);
            }
            for (int s = 0; s < garment[j].length; s++) {
                for (int k = 0; k < garment[j][s].length; k++) {
                    model.addHint(
                            garment[j][s][k], there && known.get(j).ratio().get(s) > k ? 1 : 0);
                }
            }
        }
    }

    /** Returns the lays that the values of a solution make, without empty ones. */
    List<Lay> lays(ToLongFunction<IntVar> value) {
        List<Lay> found = new ArrayList<>();
        for (int j = 0; j < lays; j++) {
            List<Integer> ratio = new ArrayList<>();
            for (BoolVar[] ofSize : garment[j]) {
                int count = 0;
                for (BoolVar one : ofSize) {
                    count += (int) value.applyAsLong(one);
                }
                ratio.add(count);
            }
            List<Integer> byColour = new ArrayList<>();
            for (IntVar of : plies[j]) {
                byColour.add((int) value.applyAsLong(of));
            }
            Lay lay = new Lay(ratio, byColour);
            if (lay.allPlies() > 0 && lay.allGarments() > 0) {
                found.add(lay);
            }
        }
        return found;
    }

    private void build() {
        int sizes = order.sizes().size();
        int colours = order.colours().size();
        LinearExprBuilder[][] cut = new LinearExprBuilder[colours][sizes];
        for (int c = 0; c < colours; c++) {
            for (int s = 0; s < sizes; s++) {
                cut[c][s] = LinearExpr.newBuilder();
            }
        }
        for (int j = 0; j < lays; j++) {
            buildLay(j, cut);
        }
        for (int c = 0; c < colours; c++) {
            for (int s = 0; s < sizes; s++) {
                int ordered = order.garments(c, s);
                model.addLinearConstraint(cut[c][s], limits.fewest(ordered), limits.most(ordered));
            }
        }
        numberEqualSizes();
        long least = bounds.fabric().micrometres();
        model.addGreaterOrEqual(fabric.build(), least / unit);
        model.minimize(fabric.build());
    }

    /** Of sizes that are wanted alike and as long, the highest lay has no more of a later one. */
    private void numberEqualSizes() {
        for (int s = 1; s < order.sizes().size(); s++) {
            int before = s - 1;
            int size = s;
            boolean alike = lengths.garments().get(s).equals(lengths.garments().get(before))
                    && order.garments().stream()
                            .allMatch(colour -> colour.get(size).equals(colour.get(before)));
            if (alike) {
                model.addLessOrEqual(LinearExpr.sum(garment[0][s]), LinearExpr.sum(garment[0][before]));
            }
        }
    }

    private void buildLay(int j, LinearExprBuilder[][] cut) {
        LinearExprBuilder height = LinearExpr.newBuilder();
        for (int c = 0; c < plies[j].length; c++) {
            plies[j][c] = model.newIntVar(0, Math.min(limits.plies(), most(c)), "plies" + j + "," + c);
            height.add(plies[j][c]);
            fabric.addTerm(plies[j][c], lengths.once().micrometres() / unit);
        }
        IntVar high = model.newIntVar(0, limits.plies(), "high" + j);
        model.addEquality(high, height);
        if (limits.leastPlies() > 1) {
            BoolVar used = model.newBoolVar("used" + j);
            model.addGreaterOrEqual(high, LinearExpr.term(used, limits.leastPlies()));
            model.addLessOrEqual(high, LinearExpr.term(used, limits.plies()));
        }
        LinearExprBuilder held = LinearExpr.newBuilder();
        LinearExprBuilder ply = LinearExpr.newBuilder();
        for (int s = 0; s < garment[j].length; s++) {
            garment[j][s] = new BoolVar[Math.min(bounds.mostGarments(s), mostGarments(s))];
            for (int k = 0; k < garment[j][s].length; k++) {
                BoolVar there = model.newBoolVar("garment" + j + "," + s + "," + k);
                garment[j][s][k] = there;
                held.add(there);
                ply.addTerm(there, lengths.garments().get(s).micrometres() / unit);
                if (k > 0) {
                    model.addImplication(there, garment[j][s][k - 1]);
                }
                addCut(j, s, k, cut);
            }
        }
        model.addLessOrEqual(held, limits.garments());
        limits.table()
                .ifPresent(table -> model.addLessOrEqual(
                        ply, Math.floorDiv(table.minus(lengths.once()).micrometres(), unit)));
        if (j > 0) {
            model.addLessOrEqual(LinearExpr.sum(plies[j]), LinearExpr.sum(plies[j - 1]));
        }
    }

    /** Adds what the k-th garment of a size gives in each colour: the plies, or nothing if it is not there. */
    private void addCut(int j, int s, int k, LinearExprBuilder[][] cut) {
        BoolVar there = garment[j][s][k];
        for (int c = 0; c < plies[j].length; c++) {
            int mostPlies = limits.most(order.garments(c, s)) / (k + 1);
            int most = Math.min(mostPlies, limits.plies());
            IntVar given = model.newIntVar(0, Math.min(most, most(c)), "cut" + j + "," + s + "," + k + "," + c);
            model.addEquality(given, plies[j][c]).onlyEnforceIf(there);
            model.addEquality(given, 0).onlyEnforceIf(there.not());
            model.addLessOrEqual(given, plies[j][c]);
            model.addLessOrEqual(given, LinearExpr.term(there, most));
            cut[c][s].add(given);
            fabric.addTerm(given, lengths.garments().get(s).micrometres() / unit);
        }
    }

    /** Returns the most plies of a colour that can be of use. */
    private int most(int colour) {
        int most = 0;
        for (int s = 0; s < order.sizes().size(); s++) {
            most = Math.max(most, limits.most(order.garments(colour, s)));
        }
        return Math.min(most, limits.plies());
    }

    /** Returns the most garments of a size that can be of use in one marker: all that are cut, in a single ply. */
    private int mostGarments(int size) {
        int most = 0;
        for (int c = 0; c < order.colours().size(); c++) {
            most = Math.max(most, limits.most(order.garments(c, size)));
        }
        return most;
    }

    /** Returns the greatest length that divides all lengths: the solver counts in it. */
    private static long unit(PlyLength lengths) {
        BigInteger unit = BigInteger.valueOf(lengths.once().micrometres());
        for (Length each : lengths.garments()) {
            unit = unit.gcd(BigInteger.valueOf(each.micrometres()));
        }
        return Math.max(1, unit.longValue());
    }
}
