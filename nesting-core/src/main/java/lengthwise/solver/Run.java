package lengthwise.solver;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import lengthwise.rules.Bond;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.SearchResult.StopReason;
import org.jspecify.annotations.Nullable;

/** One search from its first layout to its result: what all workers share. */
final class Run {
    private static final int RASTER_ROWS = 128;
    private static final int FIELD_ROWS = 48;
    private static final double MARGIN = 2;
    /** What is not worth looking for, in micrometres: less than the line that is cut along is wide. */
    private static final long NOTHING_TO_GAIN = 250;

    private final PreparedTask task;
    private final Search search;
    private final Instant start;
    private long bound;
    private long sweepsBefore;
    private long movesBefore;
    private @Nullable Pairs searching;
    private int asides;
    private long aim;
    private Layout best = new Layout(List.of(), Long.MAX_VALUE);
    private Instant lastWord;
    private Progress lastProgress;

    Run(PreparedTask task, Search search) {
        this(task, task.lowerBound(), search);
    }

    /** A search that takes no more for proven than that no layout is shorter than a bound. */
    Run(PreparedTask task, long bound, Search search) {
        this.task = task;
        this.search = search;
        this.start = search.clock().instant();
        this.lastWord = start;
        this.bound = bound;
        this.lastProgress = progress(0);
    }

    /** Takes a legal layout in place of the constructive pass. */
    void beginWith(Layout known) {
        best = known;
    }

    /** Ends the search with the first layout that is no longer than this, and looks for one of this length at once. */
    void aimAt(long length) {
        aim = length;
    }

    /** Returns the length to aim at, or 0 where shorter is better without end. */
    long aim() {
        return aim;
    }

    SearchResult result() {
        if (task.size() == 0) {
            Layout nothing = new Layout(List.of(), 0);
            return new SearchResult.Solved(nothing, 0, progress(0), StopReason.PROVEN_SHORTEST);
        }
        boolean sectioned = Sections.suit(task);
        if (best.poses().isEmpty()) {
            layFirst(sectioned ? 1 : Integer.MAX_VALUE);
        }
        if (best.poses().isEmpty()) {
            return new SearchResult.Unplaceable(task.unplaceable());
        }
        proven(LowerBound.of(task.layoutTask()), 0);
        Optional<RectangleStart> rectangles = isOver(0, best) ? Optional.empty() : RectangleStart.of(task);
        rectangles.ifPresent(exact -> exact.pack(this, best, bound, search.seed()));
        if (sectioned) {
            if (!isOver(0, best)) {
                new Sections(this, task).lay();
                isOver(0, best);
            }
            return new SearchResult.Solved(best, bound, lastProgress, reason());
        }
        boolean packed = isOver(0, best) && rectangles.isPresent();
        Optional<BlockRace> race = packed || aim > 0 || isSpent() ? Optional.empty() : BlockRace.of(task);
        if (race.isPresent()) {
            Layout chosen = race.get().run(this, best);
            offer(chosen, 0);
            best = chosen;
            isOver(0, best);
        } else if (!isOver(0, best)) {
            Pairs pairs = pairs();
            best = searched(pairs, best);
            finish(task, pairs, best).ifPresent(layout -> offer(layout, lastProgress.iteration()));
        }
        return new SearchResult.Solved(best, bound, lastProgress, reason());
    }

    /** Returns an empty store of pairs for the shapes that the task has by now. */
    Pairs pairs() {
        return new Pairs(task, Math.max(task.height(), task.longestSide() / 8) / (double) FIELD_ROWS, MARGIN);
    }

    /** Returns the best layout that comes of a first one when all workers search until the stop rule is met. */
    private Layout searched(Pairs pairs, Layout first) {
        searching = pairs;
        Exchange exchange = new Exchange(search.workers(), first);
        SplittableRandom random = new SplittableRandom(search.seed());
        Worker[] workers = new Worker[search.workers()];
        for (int w = 0; w < workers.length; w++) {
            workers[w] = new Worker(this, task, pairs, w, random.split(), exchange, first);
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
        movesBefore = moves();
        searching = null;
        return exchange.shortest();
    }

    /** Returns a layout made of another by compaction on true outlines, unless the search is cancelled. */
    Optional<Layout> finish(PreparedTask of, Pairs pairs, Layout layout) {
        if (cancelled()) {
            return Optional.empty();
        }
        Arrangement last = new Arrangement(of, pairs);
        last.load(layout);
        return Finish.last(of, this::cancelled).of(last);
    }

    /**
     * Searches another task in this one's place, with a part of this one's budget. Its shapes must be among those that
     * the pairs were made for.
     *
     * @param share of the whole budget, from where it stands now
     * @param first a layout to begin with; without one, the shortest of the constructive pass
     * @param single what a layout of that task is in this one
     * @return nothing where a piece finds no place
     */
    Optional<Layout> aside(
            PreparedTask other, Pairs pairs, double share, Optional<Layout> first, UnaryOperator<Layout> single) {
        double from = fraction(0);
        StopRule part = progress -> (fraction(progress.iteration()) - from) / share;
        StopRule stop = part.withPatience(patience() / share);
        Search aside = new Search(
                stop, search.seed() + ++asides, search.workers(), search.clock(), search.cancelled(), event -> {
                    if (event instanceof SearchEvent.Improved improved) {
                        offer(
                                single.apply(improved.layout()),
                                improved.progress().iteration());
                    } else if (event instanceof SearchEvent.Working working) {
                        tell(progress(working.progress().iteration()));
                    }
                });
        Run run = new Run(other, aside);
        run.bound = bound;
        first.ifPresentOrElse(layout -> run.best = layout, () -> run.layFirst(Integer.MAX_VALUE));
        if (run.best.poses().isEmpty()) {
            return Optional.empty();
        }
        if (!run.isOver(0, run.best)) {
            run.best = run.searched(pairs, run.best);
        }
        sweepsBefore += run.lastProgress.iteration();
        movesBefore += run.moves();
        isOver(0, best);
        return Optional.of(run.best);
    }

    private void layFirst(int orders) {
        FirstLayout.orders(task).stream().limit(orders).forEach(order -> {
            if (best.poses().isEmpty() || !cancelled()) {
                FirstLayout.build(task, RASTER_ROWS, order).ifPresent(layout -> offer(layout, 0));
            }
        });
        if (best.poses().isEmpty() && !task.nearness().isEmpty() && !cancelled()) {
            drawnTogether().ifPresent(layout -> offer(layout, 0));
        }
    }

    /** Returns a layout that a search makes of one where what has to lie near to each other does not. */
    private Optional<Layout> drawnTogether() {
        LayoutTask given = task.layoutTask();
        List<Bond> others = given.bonds().stream()
                .filter(bond -> !(bond instanceof Bond.Within))
                .toList();
        PreparedTask apart = new PreparedTask(given.with(given.demands(), given.obstacles(), others));
        return FirstLayout.build(apart, RASTER_ROWS, FirstLayout.orders(apart).get(0))
                .flatMap(layout -> new Worker(
                                this,
                                task,
                                pairs(),
                                0,
                                new SplittableRandom(search.seed()),
                                new Exchange(1, layout),
                                layout)
                        .drawTogether());
    }

    /**
     * Returns the layout that a part of the pieces comes to while some share of the whole budget is used, from one
     * fraction of it to another.
     */
    Layout section(LayoutTask of, double from, double to) {
        StopRule share = part -> (search.stop()
                                .fraction(new Progress(
                                        sweepsBefore + part.iteration(),
                                        movesBefore + part.moves(),
                                        Duration.between(start, search.clock().instant()),
                                        part.bestLength()))
                        - from)
                / (to - from);
        Search part = new Search(
                share, search.seed() + ++asides, search.workers(), search.clock(), search.cancelled(), event -> {
                    if (event instanceof SearchEvent.Working working) {
                        tell(progress(working.progress().iteration()));
                    }
                });
        Run run = new Run(new PreparedTask(of), part);
        run.layFirst(Integer.MAX_VALUE);
        if (!run.isOver(0, run.best)) {
            run.best = run.searched(run.pairs(), run.best);
        }
        sweepsBefore += run.lastProgress.iteration();
        movesBefore += run.moves();
        return run.best;
    }

    /** Returns a first layout of a part of the pieces. */
    Optional<Layout> first(LayoutTask of) {
        PreparedTask part = new PreparedTask(of);
        return FirstLayout.build(part, RASTER_ROWS, FirstLayout.orders(part).get(0));
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
        if (isProven(best.length())) {
            return StopReason.PROVEN_SHORTEST;
        }
        if (cancelled()) {
            return StopReason.CANCELLED;
        }
        boolean patienceIsOver = Double.isFinite(patience()) && !search.stop().isMet(lastProgress);
        return patienceIsOver ? StopReason.NO_GAIN : search.stop().reason(lastProgress);
    }

    int workers() {
        return search.workers();
    }

    boolean cancelled() {
        return search.cancelled().getAsBoolean();
    }

    /** Returns the share of the budget that may pass without anything better. */
    double patience() {
        return search.stop().patience();
    }

    double fraction(long iteration) {
        return search.stop().fraction(progress(iteration));
    }

    synchronized boolean isOver(long iteration, Layout of) {
        Progress progress = progress(iteration);
        lastProgress = progress;
        tell(progress);
        return of.length() <= bound
                || of.length() <= aim
                || cancelled()
                || search.stop().isMet(progress);
    }

    private synchronized void tell(Progress progress) {
        if (Duration.between(lastWord, search.clock().instant()).toMillis() > 200) {
            lastWord = search.clock().instant();
            search.watcher().accept(new SearchEvent.Working(progress));
        }
    }

    /** Says whether nothing is left of the budget, whatever was found. */
    private boolean isSpent() {
        return cancelled() || search.stop().isMet(lastProgress);
    }

    /** Says whether no layout can be shorter than a length by more than is worth looking for. */
    synchronized boolean isProven(long length) {
        return length < bound + NOTHING_TO_GAIN;
    }

    /** Says whether a layout that was pressed together is as short as is worth looking for; one to be cut from a given length is not. */
    boolean isShortEnough(Layout pressed) {
        return aim == 0 && isProven(pressed.length());
    }

    synchronized void offer(Layout layout, long iteration) {
        if (layout.length() < best.length()) {
            best = layout;
            search.watcher().accept(new SearchEvent.Improved(layout, progress(iteration)));
        }
    }

    /** Notes that no layout is shorter, and that finding out took as long as some sweeps. */
    synchronized void proven(long lowerBound, long sweeps) {
        bound = Math.max(bound, lowerBound);
        sweepsBefore += sweeps;
    }

    private long moves() {
        Pairs pairs = searching;
        return movesBefore + (pairs == null ? 0 : pairs.moves());
    }

    private Progress progress(long iteration) {
        Instant now = search.clock().instant();
        return new Progress(sweepsBefore + iteration, moves(), Duration.between(start, now), best.length());
    }
}
