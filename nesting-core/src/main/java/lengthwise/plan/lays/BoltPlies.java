package lengthwise.plan.lays;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import lengthwise.model.Length;
import lengthwise.ortools.StoppableSearch;

/**
 * Which plies are cut from which bolts of one cloth: every ply whole from one bolt, as few bolts begun as can be, and
 * of these the shortest, so that what is left is left on bolts that nobody touched.
 *
 * @param plies by bolt, then by lay
 * @param left on each bolt, less what a bolt that is begun loses
 */
public record BoltPlies(List<List<Integer>> plies, List<Length> left) {
    private static final double EFFORT = 5;
    private static final int PORTFOLIO = 8;

    /**
     * Returns the plies of each bolt, or nothing where the bolts do not hold all plies (or no way was found in the time
     * there is).
     *
     * @param lengths of a ply of each lay, ends included
     * @param wanted plies of each lay
     * @param lost of each bolt that is begun, for its ends to be cut square
     */
    public static Optional<BoltPlies> of(
            List<Length> bolts, List<Length> lengths, List<Integer> wanted, Length lost, BooleanSupplier enough) {
        CpModel model = new CpModel();
        IntVar[][] plies = new IntVar[bolts.size()][lengths.size()];
        BoolVar[] begun = new BoolVar[bolts.size()];
        LinearExprBuilder used = LinearExpr.newBuilder();
        for (int b = 0; b < bolts.size(); b++) {
            long room = Math.max(0, bolts.get(b).minus(lost).micrometres());
            begun[b] = model.newBoolVar("begun " + b);
            LinearExprBuilder taken = LinearExpr.newBuilder();
            for (int j = 0; j < lengths.size(); j++) {
                long each = lengths.get(j).micrometres();
                plies[b][j] =
                        model.newIntVar(0, Math.min(wanted.get(j), each == 0 ? wanted.get(j) : room / each), "plies");
                taken.addTerm(plies[b][j], each);
            }
            taken.addTerm(begun[b], -room);
            model.addLessOrEqual(taken.build(), 0);
            used.addTerm(begun[b], bolts.get(b).micrometres() / 1000 + 1);
        }
        for (int j = 0; j < lengths.size(); j++) {
            LinearExprBuilder all = LinearExpr.newBuilder();
            for (IntVar[] bolt : plies) {
                all.addTerm(bolt[j], 1);
            }
            model.addEquality(all.build(), wanted.get(j));
        }
        model.minimize(used.build());
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(PORTFOLIO)
                .setInterleaveSearch(true)
                .setMaxDeterministicTime(EFFORT);
        CpSolverStatus status = StoppableSearch.solve(solver, model, enough, new CpSolverSolutionCallback());
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            return Optional.empty();
        }
        List<List<Integer>> byBolt = new ArrayList<>();
        List<Length> left = new ArrayList<>();
        for (int b = 0; b < bolts.size(); b++) {
            List<Integer> of = new ArrayList<>();
            boolean isBegun = false;
            Length rest = bolts.get(b);
            for (int j = 0; j < lengths.size(); j++) {
                int count = (int) solver.value(plies[b][j]);
                of.add(count);
                isBegun |= count > 0;
                rest = rest.minus(lengths.get(j).times(count));
            }
            byBolt.add(List.copyOf(of));
            left.add(isBegun ? rest.minus(lost) : rest);
        }
        return Optional.of(new BoltPlies(List.copyOf(byBolt), List.copyOf(left)));
    }
}
