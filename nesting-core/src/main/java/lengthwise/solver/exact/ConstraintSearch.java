package lengthwise.solver.exact;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import lengthwise.ortools.StoppableSearch;
import lengthwise.solver.exact.ExactPacking.Outcome;

/**
 * Constraint models, one after the other. In the first, rectangles and strip are grown by the gap along both axes: every
 * packing of it is legal, and without a gap its shortest one is the shortest of all. Where there is a gap, corners may
 * come nearer than that (see {@link Gaps}). Two more models include every legal layout: rectangles grown by 0.7 of the
 * gap, which is as quick to solve and gives a bound not far below, and one that comes nearer to the truth and may prove
 * that nothing shorter exists.
 *
 * <p>Without linear relaxation: it says little of rectangles, and takes most of the time.
 */
final class ConstraintSearch {
    private final RectangleTask task;
    private final long seed;
    private final BooleanSupplier enough;
    private final Consumer<Packing> watcher;
    private long best;
    private long bound;
    private double effort;

    ConstraintSearch(RectangleTask task, long seed, BooleanSupplier enough, Consumer<Packing> watcher) {
        this.task = task;
        this.seed = seed;
        this.enough = enough;
        this.watcher = watcher;
    }

    Outcome run(long length, long lowerBound, double deterministicSeconds) {
        best = length;
        bound = lowerBound;
        boolean sure = solve(StripModel.grown(task, bound, best), deterministicSeconds, task.gap() == 0);
        if (task.gap() > 0 && sure && best > bound) {
            solve(StripModel.cornered(task, bound, best), (deterministicSeconds - effort) / 2, true);
        }
        if (task.gap() > 0 && sure && best > bound) {
            solve(StripModel.relaxed(task, bound, best), deterministicSeconds - effort, true);
        }
        return new Outcome(Math.min(bound, best), effort);
    }

    /** Solves a model for a length below the best; returns whether it was exhausted. */
    private boolean solve(StripModel model, double deterministicSeconds, boolean bounds) {
        if (model.isEmpty()) {
            bound = bounds ? best : bound;
            return true;
        }
        if (deterministicSeconds <= 0 || enough.getAsBoolean()) {
            return false;
        }
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setLinearizationLevel(0)
                .setRandomSeed((int) (seed & 0x3fff_ffff))
                .setMaxDeterministicTime(deterministicSeconds);
        CpSolverStatus status = watched(solver, model);
        effort += solver.response().getDeterministicTime();
        boolean exhausted = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE;
        if (bounds) {
            long least = status == CpSolverStatus.INFEASIBLE
                    ? best
                    : model.length((long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
            bound = Math.max(bound, Math.min(best, least));
        }
        return exhausted;
    }

    private CpSolverStatus watched(CpSolver solver, StripModel model) {
        return StoppableSearch.solve(solver, model.model(), enough, new CpSolverSolutionCallback() {
            @Override
            public void onSolutionCallback() {
                Packing packing = model.packing(this::value);
                best = Math.min(best, model.isLegal() ? packing.length() : best);
                watcher.accept(packing);
            }
        });
    }
}
