package lengthwise.solver.exact;

import java.util.Optional;
import lengthwise.solver.exact.Packing.Spot;

/**
 * Rectangles of one width, each lying one way: packed in columns, as few as possible. Columns cut alike are neighbours,
 * so that equal rectangles come out as straight-cut blocks.
 *
 * <p>No layout is shorter. Draw lines across the strip, w + a apart, where w is the width and a ≤ gap; each rectangle,
 * grown by a / 2 to the left and to the right, meets one line, but for a shift of all lines that can be avoided. A strip
 * of length L needs ⌊(L + a) / (w + a)⌋ lines. Rectangles on one line are less than a apart along x, hence at least b
 * apart along y for the a and b of {@link Gaps}, so they fit a bar of the strip's height with gap b. If such bars number
 * k at least, L ≥ k·w + (k − 1)·a.
 */
final class Columns {
    private Columns() {}

    /** Returns a short packing and the bound, or nothing if the rectangles are of another sort. */
    static Optional<Proof> of(RectangleTask task) {
        long width = task.items().get(0).onlyWay().width();
        boolean fits = task.items().stream()
                .allMatch(item -> item.ways().size() == 1 && item.onlyWay().width() == width);
        if (!fits) {
            return Optional.empty();
        }
        Kinds kinds = Kinds.by(task, item -> item.onlyWay().height());
        FewestBars.Cut cut = kinds.bars(task.height(), task.gap());
        Packing packing = new Packing(
                kinds.laid(cut.bars(), task.gap(), width, (along, across) -> new Spot(0, across, along)),
                length(cut.count(), width, task.gap()));
        return Optional.of(new Proof(packing, bound(task, kinds, cut.atLeast(), width)));
    }

    private static long length(long columns, long width, long gap) {
        return columns * width + (columns - 1) * gap;
    }

    /** Returns the better of two bounds: as many columns as the least b needs that needs all, and as b = 1 needs. */
    private static long bound(RectangleTask task, Kinds kinds, int columns, long width) {
        if (task.gap() == 0) {
            return length(columns, width, 0);
        }
        long low = 1;
        long high = task.gap();
        while (low < high) {
            long middle = (low + high) / 2;
            if (columns(task, kinds, middle) >= columns) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        long all = length(columns, width, Gaps.along(task.gap(), high));
        return Math.max(all, length(columns(task, kinds, 1), width, task.gap()));
    }

    private static int columns(RectangleTask task, Kinds kinds, long gap) {
        return kinds.bars(task.height(), gap).atLeast();
    }
}
