package lengthwise.solver;

import java.util.Arrays;

/**
 * Where workers tell one another their best layouts, all at the same iteration counts, so that the outcome does not
 * depend on which is faster. Ties go to the worker with the lower number.
 */
final class Exchange {
    private final Layout[] best;
    private int present;
    private int arrived;
    private long meeting;
    private Layout agreed;

    Exchange(int workers, Layout first) {
        best = new Layout[workers];
        Arrays.fill(best, first);
        present = workers;
        agreed = first;
    }

    /** Waits for all workers that still search and returns the shortest layout of all. */
    synchronized Layout meet(int worker, Layout mine) {
        best[worker] = mine;
        arrived++;
        if (arrived == present) {
            conclude();
            return agreed;
        }
        long current = meeting;
        boolean interrupted = false;
        while (meeting == current) {
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
        return agreed;
    }

    /** Leaves with a last layout; the others go on. */
    synchronized void leave(int worker, Layout mine) {
        best[worker] = mine;
        present--;
        if (present > 0 && arrived == present) {
            conclude();
        }
    }

    /** Returns the shortest layout of all, once every worker has left. */
    synchronized Layout shortest() {
        Layout shortest = best[0];
        for (Layout layout : best) {
            if (layout.length() < shortest.length()) {
                shortest = layout;
            }
        }
        return shortest;
    }

    private void conclude() {
        agreed = shortest();
        arrived = 0;
        meeting++;
        notifyAll();
    }
}
