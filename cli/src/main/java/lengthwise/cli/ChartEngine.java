package lengthwise.cli;

import java.io.IOException;
import java.util.List;
import java.util.function.BooleanSupplier;
import lengthwise.report.Chart.Cell;

/** Works out the cells of a chart: here a pool of threads does, and many machines could. */
interface ChartEngine {
    /** Takes a cell that is finished; called by one thread at a time. */
    interface Finished {
        void take(ChartTask task, Cell cell) throws IOException;
    }

    /**
     * Works out all tasks, in any order, and returns when all are done or it is told to stop. What was broken off is not
     * handed over.
     *
     * @throws Estimating.RejectedException if a marker does not pass the check
     */
    void run(List<ChartTask> tasks, Finished finished, BooleanSupplier cancelled)
            throws IOException, Estimating.RejectedException;
}
