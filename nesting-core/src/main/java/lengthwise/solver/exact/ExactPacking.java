package lengthwise.solver.exact;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import lengthwise.solver.compaction.Compaction;

/** The door of this package: packs rectangles with a proof of how much shorter a packing could be. */
public final class ExactPacking {
    /** Beyond so many rectangles a constraint model takes longer to set up than it is worth. */
    private static final int MOST = 60;

    /** What a short packing to begin with may cost, as a share of the effort, and at most. */
    private static final double FIRST_SHARE = 0.1;

    private static final double FIRST_SECONDS = 1;

    private ExactPacking() {}

    /** Returns a short packing and a bound at once if the rectangles all have one width or one height, else nothing. */
    public static Optional<Proof> atOnce(RectangleTask task) {
        return Columns.of(task).or(() -> Rows.of(task));
    }

    /** Says whether {@link #search} can be of use; loads the native library when there is a chance of it. */
    public static boolean canSearch(RectangleTask task) {
        return Skyline.canLay(task) || canProve(task);
    }

    private static boolean canProve(RectangleTask task) {
        return task.items().size() <= MOST && Compaction.isAvailable();
    }

    /**
     * Looks for a packing shorter than the one there is, if {@link #canSearch}: along the skyline, and where there are not
     * too many rectangles then by constraint programming, which may prove that there is none shorter. One thread; the same arguments give the same packings as long as {@code enough} says no.
     *
     * @param length of the packing there is
     * @param lowerBound known so far
     * @param deterministicSeconds effort, about a second each, counted in steps of the solver and not by a clock
     * @param enough asked now and then from another thread; ends the search
     * @param watcher gets packings that may be shorter; some may not keep the gap between corners, so test them
     */
    public static Outcome search(
            RectangleTask task,
            long length,
            long lowerBound,
            double deterministicSeconds,
            long seed,
            BooleanSupplier enough,
            Consumer<Packing> watcher) {
        boolean provable = canProve(task);
        long best = length;
        double effort = 0;
        if (Skyline.canLay(task)) {
            effort = provable ? Math.min(FIRST_SECONDS, FIRST_SHARE * deterministicSeconds) : deterministicSeconds;
            Packing packing = new Skyline(task).shortest(effort, lowerBound, seed, enough);
            if (packing.length() < best) {
                best = packing.length();
                watcher.accept(packing);
            }
        }
        if (!provable || best <= lowerBound) {
            return new Outcome(lowerBound, effort);
        }
        Outcome proved =
                new ConstraintSearch(task, seed, enough, watcher).run(best, lowerBound, deterministicSeconds - effort);
        return new Outcome(proved.lowerBound(), effort + proved.deterministicSeconds());
    }

    /** What a search proved, and the effort it took. */
    public record Outcome(long lowerBound, double deterministicSeconds) {}
}
