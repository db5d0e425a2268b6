package lengthwise.solver.exact;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import lengthwise.solver.compaction.Compaction;

/** The door of this package: packs rectangles with a proof of how much shorter a packing could be. */
public final class ExactPacking {
    /** Beyond so many rectangles a constraint model takes longer to set up than it is worth. */
    private static final int MOST = 60;

    private ExactPacking() {}

    /** Returns a short packing and a bound at once if the rectangles all have one width or one height, else nothing. */
    public static Optional<Proof> atOnce(RectangleTask task) {
        return Columns.of(task).or(() -> Rows.of(task));
    }

    /** Says whether {@link #search} can be of use; loads the native library when there is a chance of it. */
    public static boolean canSearch(RectangleTask task) {
        return task.items().size() <= MOST && Compaction.isAvailable();
    }

    /**
     * Looks for a packing shorter than the one there is, by constraint programming, if {@link #canSearch}. One thread;
     * the same arguments give the same packings as long as {@code enough} says no.
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
        return new ConstraintSearch(task, seed, enough, watcher).run(length, lowerBound, deterministicSeconds);
    }

    /** What a search proved, and the effort it took. */
    public record Outcome(long lowerBound, double deterministicSeconds) {}
}
