package lengthwise.cli;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import lengthwise.report.Chart.Cell;
import org.jspecify.annotations.Nullable;

/**
 * Works out the cells of a chart on this machine: one worker a cell, as many at a time as are asked for.
 *
 * @param workers threads
 */
record LocalPool(int workers) implements ChartEngine {
    private record Done(ChartTask task, Cell cell, boolean whole) {}

    @Override
    public void run(List<ChartTask> tasks, Finished finished, BooleanSupplier cancelled)
            throws IOException, Estimating.RejectedException {
        AtomicBoolean failed = new AtomicBoolean();
        BooleanSupplier stop = () -> failed.get() || cancelled.getAsBoolean();
        ExecutorService pool = Executors.newFixedThreadPool(workers);
        try {
            ExecutorCompletionService<Done> running = new ExecutorCompletionService<>(pool);
            for (ChartTask task : tasks) {
                running.submit(() -> work(task, stop));
            }
            for (int i = 0; i < tasks.size(); i++) {
                Done done = running.take().get();
                if (done.whole()) {
                    finished.take(done.task(), done.cell());
                }
            }
        } catch (ExecutionException failure) {
            rethrow(failure.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        } finally {
            failed.set(true);
            pool.shutdownNow();
        }
    }

    private static Done work(ChartTask task, BooleanSupplier stop) throws IOException, Estimating.RejectedException {
        if (stop.getAsBoolean()) {
            return new Done(task, Cell.none("stopped"), false);
        }
        Cell cell = ChartWork.of(task, stop);
        return new Done(task, cell, !stop.getAsBoolean());
    }

    private static void rethrow(@Nullable Throwable cause) throws IOException, Estimating.RejectedException {
        if (cause instanceof IOException unwritable) {
            throw unwritable;
        }
        if (cause instanceof Estimating.RejectedException rejected) {
            throw rejected;
        }
        throw new IllegalStateException(cause);
    }
}
