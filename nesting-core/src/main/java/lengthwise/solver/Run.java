package lengthwise.solver;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import lengthwise.solver.SearchResult.StopReason;

/** One search from its first layout to its result: what all workers share. */
final class Run {
    private static final int RASTER_ROWS = 128;
    private static final int FIELD_ROWS = 48;
    private static final double MARGIN = 2;

    private final PreparedTask task;
    private final Search search;
    private final Instant start;
    private long bound;
    private long sweepsBefore;
    private Layout best = new Layout(List.of(), Long.MAX_VALUE);
    private Instant lastGain;
    private Instant lastWord;
    private Progress lastProgress;

    Run(PreparedTask task, Search search) {
        this.task = task;
        this.search = search;
        this.start = search.clock().instant();
        this.lastGain = start;
        this.lastWord = start;
        this.bound = task.lowerBound();
        this.lastProgress = progress(0, 0);
    }

    SearchResult result() {
        if (task.size() == 0) {
            Layout nothing = new Layout(List.of(), 0);
            return new SearchResult.Solved(nothing, 0, progress(0, 0), StopReason.PROVEN_SHORTEST);
        }
        for (Comparator<Integer> order : FirstLayout.orders(task)) {
            if (best.poses().isEmpty() || !cancelled()) {
                FirstLayout.build(task, RASTER_ROWS, order).ifPresent(layout -> offer(layout, 0));
            }
        }
        if (best.poses().isEmpty()) {
            return new SearchResult.Unplaceable(task.unplaceable());
        }
        proven(LowerBound.of(task.layoutTask()), 0);
        if (!isOver(0, 0, best)) {
            RectangleStart.of(task).ifPresent(exact -> exact.pack(this, best, bound, search.seed()));
        }
        if (!isOver(0, 0, best)) {
            work();
        }
        return new SearchResult.Solved(best, bound, lastProgress, reason());
    }

    private void work() {
        Pairs pairs = new Pairs(task, Math.max(task.height(), task.longestSide() / 8) / (double) FIELD_ROWS, MARGIN);
        Exchange exchange = new Exchange(search.workers(), best);
        SplittableRandom random = new SplittableRandom(search.seed());
        Worker[] workers = new Worker[search.workers()];
        for (int w = 0; w < workers.length; w++) {
            workers[w] = new Worker(this, task, pairs, w, random.split(), exchange, best);
        }
        List<Thread> others = new ArrayList<>();
        for (int w = 1; w < workers.length; w++) {
            Thread thread = new Thread(workers[w]::work, "lengthwise-search-" + w);
            thread.setDaemon(true);
            thread.start();
            others.add(thread);
        }
        workers[0].work();
        others.forEach(Run::await);
        best = exchange.shortest();
        if (!cancelled()) {
            Arrangement last = new Arrangement(task, pairs);
            last.load(best);
            Finish.last(task, this::cancelled).of(last).ifPresent(layout -> offer(layout, lastProgress.iteration()));
        }
    }

    private static void await(Thread thread) {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                // the search is told to stop by its cancel flag; keep the request for the caller
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private StopReason reason() {
        if (best.length() <= bound) {
            return StopReason.PROVEN_SHORTEST;
        }
        return cancelled() ? StopReason.CANCELLED : search.stop().reason(lastProgress);
    }

    boolean cancelled() {
        return search.cancelled().getAsBoolean();
    }

    double fraction(long iteration, long lastImprovement) {
        return search.stop().fraction(progress(iteration, lastImprovement));
    }

    synchronized boolean isOver(long iteration, long lastImprovement, Layout of) {
        Progress progress = progress(iteration, lastImprovement);
        lastProgress = progress;
        if (Duration.between(lastWord, search.clock().instant()).toMillis() > 200) {
            lastWord = search.clock().instant();
            search.watcher().accept(new SearchEvent.Working(progress));
        }
        return of.length() <= bound || cancelled() || search.stop().isMet(progress);
    }

    synchronized void offer(Layout layout, long iteration) {
        if (layout.length() < best.length()) {
            best = layout;
            lastGain = search.clock().instant();
            search.watcher().accept(new SearchEvent.Improved(layout, progress(iteration, iteration)));
        }
    }

    /** Notes that no layout is shorter, and that finding out took as long as some sweeps. */
    synchronized void proven(long lowerBound, long sweeps) {
        bound = Math.max(bound, lowerBound);
        sweepsBefore += sweeps;
    }

    private Progress progress(long iteration, long lastImprovement) {
        Instant now = search.clock().instant();
        return new Progress(
                sweepsBefore + iteration,
                sweepsBefore + lastImprovement,
                Duration.between(start, now),
                Duration.between(lastGain, now),
                best.length());
    }
}
