package lengthwise.ortools;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import java.util.function.BooleanSupplier;

/** Solves a constraint model until its limits are met or someone has had enough. */
public final class StoppableSearch {
    private static final int LOOK_EVERY_MILLIS = 20;

    private StoppableSearch() {}

    /**
     * Solves a model.
     *
     * @param enough asked every so often, on another thread
     * @param solutions called for every better solution
     */
    public static CpSolverStatus solve(
            CpSolver solver, CpModel model, BooleanSupplier enough, CpSolverSolutionCallback solutions) {
        Thread watch = new Thread(
                () -> {
                    try {
                        while (!enough.getAsBoolean()) {
                            Thread.sleep(LOOK_EVERY_MILLIS);
                        }
                        solver.stopSearch();
                    } catch (InterruptedException over) {
                        // the solver ended by itself
                    }
                },
                "lengthwise-ortools-watch");
        watch.setDaemon(true);
        watch.start();
        try {
            return solver.solve(model, solutions);
        } finally {
            watch.interrupt();
        }
    }
}
