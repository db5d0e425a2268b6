package lengthwise.solver;

import java.util.Optional;
import java.util.SplittableRandom;

/**
 * One worker's search: shorten the strip, let the pieces overlap, separate them, again and again.
 *
 * <p>The strip is a little shorter than the best layout; guided local search ({@link Weights}, {@link Relocation}) moves
 * overlapping pieces until what is left is small enough for the finish. If it does not get there, the finish may still
 * push the pieces apart in a part of the length that was taken; else the search goes on from one of its {@link Attempts},
 * where two large pieces change places. After four fifths of the budget only small steps from the best layout are tried
 * (exploration and compression: J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv 2509.13329, 2025).
 */
final class Worker {
    private static final double EXPLORATION = 0.8;
    private static final int MEETING_EVERY = 128;
    /** Failures at one length before a smaller step is tried. */
    private static final int PATIENCE = 2;
    /** Sweeps that bring together what lies too far apart, and how many lengths of the strip they are shared between. */
    private static final int SWEEPS_TOGETHER = 400;

    private static final int LENGTHS_TOGETHER = 8;

    private final Run run;
    private final int number;
    private final Exchange exchange;
    private final SplittableRandom random;
    private final Arrangement state;
    private final Relocation relocation;
    private final Finish finish;
    private final Disturbance disturbance;
    private final Attempts attempts = new Attempts();
    private final double tolerance;
    private final long lowerBound;

    private Layout best;
    private long iteration;
    private double usedAtImprovement;
    private boolean stopped;
    private boolean newBest;

    Worker(
            Run run,
            PreparedTask task,
            Pairs pairs,
            int number,
            SplittableRandom random,
            Exchange exchange,
            Layout first) {
        this.run = run;
        this.number = number;
        this.exchange = exchange;
        this.random = random;
        this.state = new Arrangement(task, pairs);
        this.relocation = new Relocation(state);
        this.disturbance = new Disturbance(state, random);
        this.finish = Finish.onTheWay(task, this::isSpent);
        this.tolerance = task.tolerance();
        this.lowerBound = task.lowerBound();
        this.best = first;
    }

    void work() {
        try {
            double step = 0.01;
            state.pairs.prepare(number, run.workers(), this::isSpent);
            load(best);
            finished();
            while (!stopped) {
                boolean exploring = spent() < EXPLORATION;
                if (exploring) {
                    step = explore(step);
                } else {
                    compress();
                }
            }
        } finally {
            exchange.leave(number, best);
        }
    }

    /** Tries one length until it is reached or given up; returns the next step. */
    private double explore(double step) {
        load(best);
        shorten(step);
        attempts.clear();
        int failures = 0;
        while (!stopped && !newBest) {
            if (separate(200, 3)) {
                return Math.min(0.01, step * 1.3);
            }
            failures++;
            if (spent() >= EXPLORATION) {
                return step;
            }
            if (failures >= PATIENCE && step > 0.001) {
                return step / 2;
            }
            attempts.add(state.snapshot());
            state.restore(attempts.pick(random));
            disturbance.strike();
        }
        return step;
    }

    private void compress() {
        load(best);
        double progress = (spent() - EXPLORATION) / (1 - EXPLORATION);
        double step = 0.0005 + (0.00001 - 0.0005) * Math.min(1, Math.max(0, progress));
        // less than what counts as apart would be left to the finish, which has just done what it can
        shorten(Math.max(step, 3 * tolerance / best.length()));
        separate(100, 3);
    }

    private boolean isSpent() {
        return run.cancelled() || spent() >= 1;
    }

    /** Returns the part of the budget that is used, or of the patience where less of that is left. */
    private double spent() {
        double used = run.fraction(iteration);
        return Math.max(used, (used - usedAtImprovement) / run.patience());
    }

    private void improved(Layout layout) {
        best = layout;
        usedAtImprovement = run.fraction(iteration);
    }

    private boolean isOver() {
        return run.isOver(iteration, best) || run.isShortEnough(best) || spent() >= 1;
    }

    private void load(Layout layout) {
        newBest = false;
        state.load(layout);
    }

    private void shorten(double step) {
        long next = Math.min((long) (best.length() * (1 - step)), best.length() - 1);
        long shorter = Math.max(lowerBound, run.aim() > 0 ? Math.min(next, run.aim()) : next);
        for (Variant variant : state.variant) {
            shorter = Math.max(shorter, variant.region().leastLength());
        }
        state.setLength(shorter);
        state.measureAll();
        state.resetWeights();
    }

    /**
     * Sweeps until the pieces are apart. When nothing has come of it for a while, and the least overlap seen leaves nothing
     * shorter than the best layout either, it starts again from there, with the weights as they have become; after some
     * starts in a row without progress it gives up.
     */
    private boolean separate(int patience, int starts) {
        Arrangement.Snapshot least = state.snapshot();
        int without = 0;
        while (without < starts) {
            double before = least.total;
            int idle = 0;
            while (idle < patience) {
                sweep();
                if (stopped || newBest) {
                    return false;
                }
                if (state.largest() <= tolerance) {
                    return finished() || pushedApart();
                }
                idle++;
                double total = state.total();
                if (total < least.total) {
                    if (total < 0.98 * least.total) {
                        idle = 0;
                    }
                    least = state.snapshot();
                }
                Weights.update(state, tolerance);
            }
            without = least.total < 0.98 * before ? 0 : without + 1;
            state.restore(least);
            if (pushedApart()) {
                return true;
            }
        }
        return false;
    }

    /** Says whether the finish makes a shorter layout than the best one, which it then is. */
    private boolean finished() {
        Optional<Layout> shorter = finish.of(state).filter(layout -> layout.length() < best.length());
        shorter.ifPresent(this::improve);
        return shorter.isPresent();
    }

    /** Says the same where the pieces may lie anywhere in less than the best length. */
    private boolean pushedApart() {
        long length = state.length();
        if (length >= best.length() - 1) {
            return false;
        }
        state.setLength(best.length() - 1);
        boolean shorter = finished();
        state.setLength(length);
        return shorter;
    }

    /**
     * Makes a legal layout of one where pieces lie too far from each other, in a strip with room to move; nothing if it does
     * not come to one.
     */
    Optional<Layout> drawTogether() {
        state.pairs.prepare(0, 1, run::cancelled);
        load(best);
        for (int sweep = 0; sweep < SWEEPS_TOGETHER && !run.cancelled(); sweep++) {
            if (sweep % (SWEEPS_TOGETHER / LENGTHS_TOGETHER) == 0) {
                state.setLength(state.length() + best.length() / LENGTHS_TOGETHER);
                state.measureAll();
            }
            moveAll();
            if (state.largest() <= tolerance) {
                Optional<Layout> legal =
                        Finish.onTheWay(state.task, run::cancelled).of(state);
                if (legal.isPresent()) {
                    return legal;
                }
            }
            Weights.update(state, tolerance);
        }
        return Optional.empty();
    }

    private void sweep() {
        moveAll();
        iteration++;
        if (iteration % MEETING_EVERY == 0) {
            Layout agreed = exchange.meet(number, best);
            if (agreed.length() < best.length()) {
                improved(agreed);
                newBest = true;
            }
        }
        stopped = stopped || isOver();
    }

    /** Moves every piece that something hinders, in an order at random. */
    private void moveAll() {
        int[] order = new int[state.pieces];
        int n = 0;
        for (int i = 0; i < state.pieces; i++) {
            if (state.largestOf(i) > tolerance) {
                order[n++] = i;
            }
        }
        for (int k = n - 1; k > 0; k--) {
            int other = random.nextInt(k + 1);
            int piece = order[k];
            order[k] = order[other];
            order[other] = piece;
        }
        for (int k = 0; k < n && !stopped; k++) {
            if (state.largestOf(order[k]) > tolerance) {
                relocation.move(order[k]);
                stopped = run.cancelled();
            }
        }
    }

    private void improve(Layout layout) {
        improved(layout);
        run.offer(layout, iteration);
        stopped = stopped || isOver();
    }
}
