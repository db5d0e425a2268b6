package lengthwise.solver;

import java.util.Arrays;

/**
 * Where workers tell one another their best layouts, all at the same iteration counts, so that the outcome does not
 * depend on which is faster. What they learn at a meeting is what all had brought to the one before, so a worker waits only
 * for one that is more than a meeting behind. Ties go to the worker with the lower number.
 */
final class Exchange {
    /** While the slowest still learns of the meeting before its own, the fastest may bring to two beyond its own. */
    private static final int KEPT = 4;

    private final Layout[][] brought;
    private final long[] meetings;
    private final boolean[] left;
    private final Layout[] last;

    Exchange(int workers, Layout first) {
        brought = new Layout[KEPT][workers];
        meetings = new long[workers];
        left = new boolean[workers];
        last = new Layout[workers];
        Arrays.fill(last, first);
    }

    /**
     * Brings a layout to the worker's next meeting, and returns it or one that is shorter, if any was brought to the meeting
     * before.
     */
    synchronized Layout meet(int worker, Layout mine) {
        long meeting = meetings[worker]++;
        brought[(int) (meeting % KEPT)][worker] = mine;
        last[worker] = mine;
        notifyAll();
        boolean interrupted = false;
        while (isAwaited(meeting - 1)) {
            try {
                wait();
            } catch (InterruptedException e) {
                // the search is told to stop by its cancel flag; keep the request for the caller
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        Layout shortest = mine;
        for (int other = 0; other < last.length && meeting > 0; other++) {
            Layout known = meeting - 1 < meetings[other] ? brought[(int) ((meeting - 1) % KEPT)][other] : last[other];
            if (known.length() < shortest.length()) {
                shortest = known;
            }
        }
        return shortest;
    }

    private boolean isAwaited(long meeting) {
        for (int worker = 0; worker < meetings.length; worker++) {
            if (!left[worker] && meetings[worker] <= meeting) {
                return true;
            }
        }
        return false;
    }

    /** Leaves with a last layout, which counts at all meetings that the worker misses; the others go on. */
    synchronized void leave(int worker, Layout mine) {
        last[worker] = mine;
        left[worker] = true;
        notifyAll();
    }

    /** Returns the shortest layout of all, once every worker has left. */
    synchronized Layout shortest() {
        Layout shortest = last[0];
        for (Layout layout : last) {
            if (layout.length() < shortest.length()) {
                shortest = layout;
            }
        }
        return shortest;
    }
}
