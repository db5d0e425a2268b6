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
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.model.Length;
import lengthwise.ortools.Natives;
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
     * Returns the plies of each bolt, or nothing where the bolts do not hold all plies, or no way was found in the time
     * there is; asked to end at once, or without its solver, it takes what a simple rule gives.
     *
     * @param lengths of a ply of each lay, ends included
     * @param wanted plies of each lay
     * @param lost of each bolt that is begun, for its ends to be cut square
     */
    public static Optional<BoltPlies> of(
            List<Length> bolts, List<Length> lengths, List<Integer> wanted, Length lost, BooleanSupplier enough) {
        if (!Natives.areLoaded() || enough.getAsBoolean()) {
            return firstFit(bolts, lengths, wanted, lost);
        }
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
        if (status == CpSolverStatus.INFEASIBLE) {
            return Optional.empty();
        }
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            return firstFit(bolts, lengths, wanted, lost);
        }
        int[][] counts = new int[bolts.size()][lengths.size()];
        for (int b = 0; b < bolts.size(); b++) {
            for (int j = 0; j < lengths.size(); j++) {
                counts[b][j] = (int) solver.value(plies[b][j]);
            }
        }
        return Optional.of(cut(bolts, lengths, lost, counts));
    }

    /**
     * Cuts the longest plies first, each from the first bolt that is begun and has room, else from the shortest that has: where
     * the search is ended before it has found anything. First fit decreasing; D. S. Johnson, "Fast algorithms for bin packing",
     * Journal of Computer and System Sciences 8, 1974.
     */
    private static Optional<BoltPlies> firstFit(
            List<Length> bolts, List<Length> lengths, List<Integer> wanted, Length lost) {
        List<Integer> shortestFirst = IntStream.range(0, bolts.size())
                .boxed()
                .sorted(Comparator.comparing(bolts::get))
                .toList();
        List<Integer> longestFirst = IntStream.range(0, lengths.size())
                .boxed()
                .sorted(Comparator.comparing(lengths::get, Comparator.reverseOrder()))
                .toList();
        long[] room =
                bolts.stream().mapToLong(bolt -> bolt.minus(lost).micrometres()).toArray();
        List<Integer> begun = new ArrayList<>();
        int[][] counts = new int[bolts.size()][lengths.size()];
        for (int lay : longestFirst) {
            long each = lengths.get(lay).micrometres();
            for (int ply = 0; ply < wanted.get(lay); ply++) {
                Optional<Integer> bolt = Stream.concat(
                                begun.stream(), shortestFirst.stream().filter(other -> !begun.contains(other)))
                        .filter(b -> room[b] >= each)
                        .findFirst();
                if (bolt.isEmpty()) {
                    return Optional.empty();
                }
                int from = bolt.get();
                if (!begun.contains(from)) {
                    begun.add(from);
                }
                room[from] -= each;
                counts[from][lay]++;
            }
        }
        return Optional.of(cut(bolts, lengths, lost, counts));
    }

    private static BoltPlies cut(List<Length> bolts, List<Length> lengths, Length lost, int[][] counts) {
        List<List<Integer>> byBolt = new ArrayList<>();
        List<Length> left = new ArrayList<>();
        for (int b = 0; b < bolts.size(); b++) {
            List<Integer> of = new ArrayList<>();
            Length rest = bolts.get(b);
            for (int j = 0; j < lengths.size(); j++) {
                of.add(counts[b][j]);
                rest = rest.minus(lengths.get(j).times(counts[b][j]));
            }
            boolean isBegun = of.stream().anyMatch(count -> count > 0);
            byBolt.add(List.copyOf(of));
            left.add(isBegun ? rest.minus(lost) : rest);
        }
        return new BoltPlies(List.copyOf(byBolt), List.copyOf(left));
    }
}
