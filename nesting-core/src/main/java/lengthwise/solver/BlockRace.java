package lengthwise.solver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds out how large the straight-cut blocks of a marker may be: the search is run with the strips in blocks as large
 * as can be, of half that many strips, of a quarter, and with single strips; after each round the shorter half goes on.
 * Where it costs nothing, larger blocks win; the best of those that were left behind get a second try at the end. Fewer pieces are also quicker to lay, so that a coarser task often comes out
 * shorter in the time there is.
 *
 * <p>Reference: K. Jamieson, A. Talwalkar, <i>Non-stochastic best arm identification and hyperparameter optimization</i>,
 * AISTATS 2016: successive halving.
 */
final class BlockRace {
    /** What is called nothing, in micrometres: less than hands can cut. */
    private static final long NOTHING = 1_000;

    private static final int MOST_SIZES_OF_BLOCKS = 3;
    private static final double SHARE_OF_A_ROUND = 0.125;
    private static final double SECOND_TRY = 0.05;

    private final List<Entrant> entrants;

    private BlockRace(List<Entrant> entrants) {
        this.entrants = entrants;
    }

    /** One size of blocks, and the shortest layout of them so far. */
    private static final class Entrant {
        final Blocks blocks;
        final PreparedTask task;
        Optional<Layout> best = Optional.empty();

        Entrant(Blocks blocks, PreparedTask task) {
            this.blocks = blocks;
            this.task = task;
        }

        long length() {
            return best.map(Layout::length).orElse(Long.MAX_VALUE);
        }
    }

    /** Returns the race for a task, or nothing where no two strips are equal. */
    static Optional<BlockRace> of(PreparedTask single) {
        List<Entrant> entrants = new ArrayList<>();
        int most = Blocks.largest(single.layoutTask());
        for (int size = most; size > 1 && entrants.size() < MOST_SIZES_OF_BLOCKS; size = (size + 1) / 2) {
            Blocks blocks = Blocks.of(single.layoutTask(), size);
            PreparedTask task = new PreparedTask(blocks.task(), single);
            if (task.unplaceable().isEmpty()) {
                entrants.add(new Entrant(blocks, task));
            }
            if (size == 2) {
                break;
            }
        }
        if (entrants.isEmpty()) {
            return Optional.empty();
        }
        entrants.add(new Entrant(Blocks.of(single.layoutTask(), 1), single));
        return Optional.of(new BlockRace(entrants));
    }

    /** Returns the layout to take, given the shortest one of the single pieces so far. */
    Layout run(Run run, Layout first) {
        Pairs pairs = run.pairs();
        entrants.get(entrants.size() - 1).best = Optional.of(first);
        List<Entrant> running = entrants;
        while (running.size() > 1) {
            double share = SHARE_OF_A_ROUND / running.size();
            round(run, pairs, running, share);
            running = leaders(running, (running.size() + 1) / 2);
        }
        Entrant leader = running.get(0);
        List<Entrant> larger = entrants.subList(0, entrants.indexOf(leader));
        search(run, pairs, leader, 1 - run.fraction(0) - (larger.isEmpty() ? 0 : SECOND_TRY));
        if (!larger.isEmpty()) {
            search(run, pairs, leaders(larger, 1).get(0), Math.min(SECOND_TRY, 1 - run.fraction(0)));
        }
        Entrant winner = leaders(entrants, 1).get(0);
        Layout layout = winner.best.orElseThrow();
        return winner.blocks.apart(run.finish(winner.task, pairs, layout).orElse(layout));
    }

    /** Lets each search in turn, up to one that cannot be beaten. */
    private static void round(Run run, Pairs pairs, List<Entrant> running, double share) {
        for (Entrant entrant : running) {
            search(run, pairs, entrant, share);
            if (run.isProven(entrant.length())) {
                return;
            }
        }
    }

    private static void search(Run run, Pairs pairs, Entrant entrant, double share) {
        if (share > 0) {
            Optional<Layout> found = run.aside(entrant.task, pairs, share, entrant.best, entrant.blocks::apart);
            entrant.best = found.or(() -> entrant.best);
        }
    }

    /** Returns the shortest few of some, larger blocks first where what they cost is nothing. */
    private static List<Entrant> leaders(List<Entrant> some, int count) {
        List<Entrant> left = new ArrayList<>(some);
        List<Entrant> leaders = new ArrayList<>();
        while (leaders.size() < count) {
            long shortest = left.stream().mapToLong(Entrant::length).min().orElseThrow();
            Entrant next = left.stream()
                    .filter(entrant -> entrant.length() - NOTHING <= shortest)
                    .findFirst()
                    .orElseThrow();
            leaders.add(next);
            left.remove(next);
        }
        leaders.sort(Comparator.comparingInt(some::indexOf));
        return leaders;
    }
}
