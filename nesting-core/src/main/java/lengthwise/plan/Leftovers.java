package lengthwise.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.OnHand;

/**
 * The largest upright rectangles that a marker leaves whole, between the pieces and behind them: what may still be used.
 * The grain runs along x.
 *
 * <p>They are found on cells of 2 mm, larger on very long markers: those that no outline enters are heaped up column by
 * column, and the largest rectangle under such a heap is found with a stack (a textbook method: maximal rectangle by largest
 * rectangle in a histogram). Then the next is sought beside it. So a side may be short by a cell, and never too long.
 */
public final class Leftovers {
    /** Narrower is not worth keeping: common practice, no source. */
    static final Length LEAST_SIDE = Length.ofMillimetres(50);

    static final double LEAST_SQUARE_MILLIMETRES = 20_000;
    private static final int MOST = 6;
    private static final long CELL = 2_000;
    private static final long MOST_CELLS = 4_000_000;

    private final Box cloth;
    private final long cell;
    private final int columns;
    private final int rows;
    private final boolean[] filled;

    private Leftovers(Box cloth) {
        this.cloth = cloth;
        long size = CELL;
        while ((cloth.width() / size) * (cloth.height() / size) > MOST_CELLS) {
            size *= 2;
        }
        this.cell = size;
        this.columns = (int) (cloth.width() / size);
        this.rows = (int) (cloth.height() / size);
        this.filled = new boolean[columns * rows];
    }

    /**
     * Returns the rectangles in marker coordinates, the largest first. They do not overlap. On folded cloth each is there
     * once in each layer.
     *
     * @param purchase what is bought; where there is cloth on hand, all of that counts in its place
     */
    public static List<Box> of(Marker marker, Purchase purchase) {
        Fabric fabric = marker.order().fabric();
        return of(
                marker,
                marker.left()
                        .orElseGet(() -> purchase.rounding()
                                .scaled(fabric.lengthKept() / fabric.spread().lengths())));
    }

    /** Returns likewise those within the length of the marker, where it is cut off behind that. */
    public static List<Box> within(Marker marker) {
        return of(marker, Length.ZERO);
    }

    private static List<Box> of(Marker marker, Length behind) {
        Fabric fabric = marker.order().fabric();
        Leftovers leftovers = new Leftovers(new Box(
                0,
                0,
                marker.length().plus(behind).micrometres(),
                fabric.cuttableWidth().micrometres()));
        marker.placements().forEach(placement -> leftovers.fill(placement.outline(), Side.INSIDE));
        fabric.flaws().forEach(leftovers::fill);
        fabric.join()
                .ifPresent(join -> leftovers.fill(new Box(
                        0,
                        join.from().micrometres(),
                        leftovers.cloth.maxX(),
                        join.to().micrometres())));
        fabric.onHand().flatMap(OnHand::outline).ifPresent(outline -> leftovers.fill(outline, Side.OUTSIDE));
        return leftovers.rectangles();
    }

    private List<Box> rectangles() {
        List<Box> found = new ArrayList<>();
        while (found.size() < MOST) {
            Optional<Box> next = largest();
            if (next.isEmpty() || !isUsable(next.get())) {
                break;
            }
            found.add(next.get());
            fill(next.get());
        }
        return found;
    }

    private static boolean isUsable(Box box) {
        return Math.min(box.width(), box.height()) >= LEAST_SIDE.micrometres()
                && box.width() / 1e3 * (box.height() / 1e3) >= LEAST_SQUARE_MILLIMETRES;
    }

    private enum Side {
        INSIDE,
        OUTSIDE
    }

    private void fill(Box box) {
        fill(Outline.of(box.ring()), Side.INSIDE);
    }

    /** Fills the cells that the outline enters, and all on one side of it. */
    private void fill(Outline outline, Side side) {
        List<Ring> rings = new ArrayList<>(outline.holes());
        rings.add(outline.shell());
        int from = side == Side.INSIDE ? column(outline.box().minX()) : 0;
        int to = side == Side.INSIDE ? column(outline.box().maxX()) : columns - 1;
        for (int column = Math.max(0, from); column <= Math.min(columns - 1, to); column++) {
            fillColumn(rings, column, side);
        }
    }

    private void fillColumn(List<Ring> rings, int column, Side side) {
        double left = cloth.minX() + (double) column * cell;
        double right = left + cell;
        double middle = left + cell / 2.0 + 0.25; // never a vertex
        List<Double> crossings = new ArrayList<>();
        for (Ring ring : rings) {
            for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
                double x0 = ring.x(j);
                double y0 = ring.y(j);
                double x1 = ring.x(i);
                double y1 = ring.y(i);
                if (Math.max(x0, x1) <= left || Math.min(x0, x1) >= right) {
                    continue;
                }
                double ya = x0 == x1 ? y0 : y0 + (y1 - y0) * (clamp(left, x0, x1) - x0) / (x1 - x0);
                double yb = x0 == x1 ? y1 : y0 + (y1 - y0) * (clamp(right, x0, x1) - x0) / (x1 - x0);
                fillRows(column, Math.min(ya, yb), Math.max(ya, yb));
                if ((x0 < middle) != (x1 < middle)) {
                    crossings.add(y0 + (y1 - y0) * (middle - x0) / (x1 - x0));
                }
            }
        }
        crossings.sort(null);
        double previous = side == Side.INSIDE ? Double.NaN : Double.NEGATIVE_INFINITY;
        for (double crossing : crossings) {
            if (!Double.isNaN(previous)) {
                fillRows(column, previous, crossing);
                previous = Double.NaN;
            } else {
                previous = crossing;
            }
        }
        if (side == Side.OUTSIDE) {
            fillRows(column, previous, Double.POSITIVE_INFINITY);
        }
    }

    private static double clamp(double value, double a, double b) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), value));
    }

    /** Fills the cells of a column whose inside meets a stretch. */
    private void fillRows(int column, double from, double to) {
        int first = (int) Math.max(0, Math.floor((from - cloth.minY()) / cell));
        int last = (int) Math.min(rows - 1, Math.ceil((to - cloth.minY()) / cell) - 1);
        for (int row = first; row <= last; row++) {
            filled[column * rows + row] = true;
        }
    }

    private int column(long x) {
        return (int) Math.floorDiv(x - cloth.minX(), cell);
    }

    /** Returns the largest rectangle of free cells, by columns from the left. */
    private Optional<Box> largest() {
        int[] heap = new int[rows + 1]; // free columns up to this one, by row; the last row is always 0
        int[] stack = new int[rows + 1];
        long best = 0;
        Box found = null;
        for (int column = 0; column < columns; column++) {
            int depth = 0;
            for (int row = 0; row <= rows; row++) {
                heap[row] = row == rows || filled[column * rows + row] ? 0 : heap[row] + 1;
                while (depth > 0 && heap[stack[depth - 1]] >= heap[row]) {
                    int wide = heap[stack[--depth]];
                    int above = depth == 0 ? 0 : stack[depth - 1] + 1;
                    long area = (long) wide * (row - above);
                    if (area > best) {
                        best = area;
                        found = new Box(
                                cloth.minX() + (column + 1L - wide) * cell,
                                cloth.minY() + above * cell,
                                cloth.minX() + (column + 1L) * cell,
                                cloth.minY() + row * cell);
                    }
                }
                stack[depth++] = row;
            }
        }
        return Optional.ofNullable(found);
    }
}
