package lengthwise.solver.exact;

import java.util.List;

/**
 * Rectangles to pack into a strip, y from 0 to {@code height}, x from 0. Any two are at least {@code gap} apart, by
 * Euclidean distance; the edges of the strip may be touched.
 */
public record RectangleTask(long height, long gap, List<Item> items) {
    public RectangleTask {
        items = List.copyOf(items);
    }

    /**
     * A rectangle.
     *
     * @param ways its size in each way it may lie; every way fits the strip
     * @param atEdge whether it has to lie on the line y = 0
     */
    public record Item(List<Size> ways, boolean atEdge) {
        public Item {
            ways = List.copyOf(ways);
            if (ways.isEmpty()) {
                throw new IllegalArgumentException("A rectangle needs a way to lie.");
            }
        }

        Size onlyWay() {
            return ways.get(0);
        }
    }

    /** The extent along the strip and across it. */
    public record Size(long width, long height) {
        /** Returns the size after a quarter turn. */
        @SuppressWarnings("ArgumentSelectionDefectChecker") // swapped on purpose
        public Size turned() {
            return new Size(height, width);
        }
    }
}
