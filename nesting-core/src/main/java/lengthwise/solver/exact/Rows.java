package lengthwise.solver.exact;

import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import lengthwise.solver.exact.FewestBars.Bars;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;

/**
 * Rectangles of one height, each lying one way and none tied to the edge: packed in rows, as many as the strip takes,
 * the longest as short as possible.
 *
 * <p>By the argument of {@link Columns}, turned a quarter: some m lines along the strip, where m is the most rows that
 * fit with gap b, meet every rectangle once, and those on one line are at least a apart along x. So L is at least the
 * least capacity for which m bars with gap a suffice. Rows are longest jobs on equal machines (R. Graham, <i>Bounds on
 * multiprocessing timing anomalies</i>, SIAM J. Appl. Math. 17, 1969), solved here through {@link FewestBars}.
 */
final class Rows {
    private final RectangleTask task;
    private final Kinds kinds;
    private final long height;

    private Rows(RectangleTask task, long height) {
        this.task = task;
        this.height = height;
        this.kinds = Kinds.by(task, item -> item.onlyWay().width());
    }

    /** Returns a short packing and the bound, or nothing if the rectangles are of another sort. */
    static Optional<Proof> of(RectangleTask task) {
        Item first = task.items().get(0);
        long height = first.onlyWay().height();
        boolean fits = task.items().stream()
                .allMatch(item -> item.ways().size() == 1 && item.onlyWay().height() == height && !item.atEdge());
        return fits ? Optional.of(new Rows(task, height).proof()) : Optional.empty();
    }

    private Proof proof() {
        long gap = task.gap();
        long length = least(gap, rows(gap), FewestBars.Cut::count);
        long along = gap == 0 ? 0 : Gaps.along(gap, leastAcross());
        long bound = Math.max(
                least(along, rows(gap), FewestBars.Cut::atLeast),
                least(gap, rows(Math.min(1, gap)), FewestBars.Cut::atLeast));
        return new Proof(new Packing(spots(kinds.bars(length, gap).bars()), length), bound);
    }

    private List<Spot> spots(List<Bars> bars) {
        return kinds.laid(bars, task.gap(), height, (along, across) -> new Spot(0, along, across));
    }

    private long rows(long gap) {
        return (task.height() + gap) / (height + gap);
    }

    /** Returns the least gap across that lets no more rows in than the gap itself does. */
    private long leastAcross() {
        long low = 1;
        long high = Math.max(1, task.gap());
        while (low < high) {
            long middle = (low + high) / 2;
            if (rows(middle) <= rows(task.gap())) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return high;
    }

    /** Returns the least length for which some rows suffice, by what is counted of the bars. */
    private long least(long gap, long rows, ToIntFunction<FewestBars.Cut> count) {
        long total = 0;
        long longest = 0;
        for (int kind = 0; kind < kinds.count(); kind++) {
            total += kinds.members(kind).size() * (kinds.extent(kind) + gap);
            longest = Math.max(longest, kinds.extent(kind));
        }
        long low = Math.max(longest, (total + rows - 1) / rows - gap);
        long high = Math.max(low, total - gap);
        while (low < high) {
            long middle = (low + high) / 2;
            if (count.applyAsInt(kinds.bars(middle, gap)) <= rows) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return high;
    }
}
