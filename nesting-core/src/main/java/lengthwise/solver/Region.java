package lengthwise.solver;

import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * The positions a shape may take, as a union of upright rectangles called cells: one for a free piece, a flat one for a
 * line, one or several about each lattice point. The strip's length cuts them off on the right.
 */
final class Region {
    private static final long ENDLESS = 1L << 30;
    private static final long[] NOTHING = {};

    private final long minX;
    private final long maxX;
    private final long minY;
    private final long maxY;
    private final long shapeEnd;
    private final long originX;
    private final long originY;
    private final long stepX;
    private final long stepY;
    private final long drop;
    /** What is allowed about a lattice point, as minX, maxX, minY, maxY of each rectangle from there. */
    private final long[] about;

    private final boolean laid;
    /** Where the piece may lie across the strip, as minY, maxY of each cell; none overlap. */
    private final long[] rows;

    private Region(
            long shapeEnd,
            long minX,
            long maxX,
            long minY,
            long maxY,
            Point origin,
            long stepX,
            long stepY,
            long drop,
            long[] about,
            boolean laid,
            long... rows) {
        this.shapeEnd = shapeEnd;
        this.minX = minX;
        this.maxX = maxX;
        this.minY = minY;
        this.maxY = maxY;
        this.originX = origin.x();
        this.originY = origin.y();
        this.stepX = stepX;
        this.stepY = stepY;
        this.drop = drop;
        this.about = about;
        this.laid = laid;
        this.rows = rows.length > 0 ? rows : new long[] {minY, maxY};
    }

    /**
     * Returns where a shape may go inside a strip.
     *
     * @param shape box of the shape at position (0, 0)
     * @param shift offset of the pose less the position of the shape
     * @param strip the task that has it; here it begins at y = 0
     */
    static Region of(Positions positions, Orientation orientation, Box shape, Point shift, LayoutTask strip) {
        long lowX = -shape.minX();
        long lowY = -shape.minY();
        long highY = strip.height() - shape.maxY();
        if (positions instanceof Positions.Line line) {
            long y = line.y() - orientation.apply(line.anchor()).y() - shift.y();
            return plain(shape, lowX, ENDLESS, Math.max(lowY, y), Math.min(highY, y));
        }
        if (positions instanceof Positions.Between between) {
            return plain(
                    shape,
                    lowX,
                    ENDLESS,
                    Math.max(lowY, between.fromY() - strip.fromY() - shape.minY()),
                    Math.min(highY, between.toY() - strip.fromY() - shape.maxY()));
        }
        if (positions instanceof Positions.Either either) {
            return union(
                    shape,
                    of(either.one(), orientation, shape, shift, strip),
                    of(either.other(), orientation, shape, shift, strip));
        }
        if (positions instanceof Positions.Window window) {
            return plain(
                    shape, Math.max(lowX, window.fromX() - shape.minX()), window.toX() - shape.maxX(), lowY, highY);
        }
        if (positions instanceof Positions.Laid laid) {
            Point at = laid.offset().minus(shift);
            return new Region(shape.maxX(), at.x(), at.x(), at.y(), at.y(), Point.ORIGIN, 0, 0, 0, NOTHING, true);
        }
        if (positions instanceof Positions.Lattice lattice) {
            Point origin =
                    lattice.origin().minus(orientation.apply(lattice.anchor())).minus(shift);
            long drop = lattice.halfDrop() ? lattice.stepX() / 2 : 0;
            long alongX = lattice.stepX() == 0 ? Positions.Cells.ENDLESS : lattice.tolerance();
            long alongY = lattice.stepY() == 0 ? Positions.Cells.ENDLESS : lattice.tolerance();
            return new Region(
                    shape.maxX(),
                    lowX,
                    ENDLESS,
                    lowY,
                    highY,
                    origin,
                    lattice.stepX(),
                    lattice.stepY(),
                    drop,
                    new long[] {-alongX, alongX, -alongY, alongY},
                    false);
        }
        if (positions instanceof Positions.Cells cells) {
            return new Region(
                    shape.maxX(),
                    lowX,
                    ENDLESS,
                    lowY,
                    highY,
                    cells.origin().minus(shift),
                    cells.stepX(),
                    cells.stepY(),
                    cells.halfDrop() ? cells.stepX() / 2 : 0,
                    cells.at(orientation).stream()
                            .flatMapToLong(box -> LongStream.of(box.minX(), box.maxX(), box.minY(), box.maxY()))
                            .toArray(),
                    false);
        }
        return plain(shape, lowX, ENDLESS, lowY, highY);
    }

    private static Region plain(Box shape, long minX, long maxX, long minY, long maxY) {
        return new Region(shape.maxX(), minX, maxX, minY, maxY, Point.ORIGIN, 0, 0, 0, NOTHING, false);
    }

    private static Region union(Box shape, Region one, Region other) {
        if (one.minY > one.maxY || other.minY > other.maxY) {
            return one.minY > one.maxY ? other : one;
        }
        long[] starts = LongStream.concat(starts(one), starts(other)).sorted().toArray();
        long[] ends = LongStream.concat(ends(one), ends(other)).sorted().toArray();
        // of sorted starts and ends a new row begins where all before have ended
        long[] rows = new long[2 * starts.length];
        int n = 0;
        for (int i = 0; i < starts.length; i++) {
            if (i == 0 || starts[i] > ends[i - 1]) {
                rows[n] = starts[i];
                n += 2;
            }
            rows[n - 1] = ends[i];
        }
        return new Region(
                shape.maxX(),
                one.minX,
                one.maxX,
                rows[0],
                rows[n - 1],
                Point.ORIGIN,
                0,
                0,
                0,
                NOTHING,
                false,
                Arrays.copyOf(rows, n));
    }

    private static LongStream starts(Region region) {
        return IntStream.range(0, region.rows.length / 2).mapToLong(i -> region.rows[2 * i]);
    }

    private static LongStream ends(Region region) {
        return IntStream.range(0, region.rows.length / 2).mapToLong(i -> region.rows[2 * i + 1]);
    }

    /** Returns the same region with its lattice moved. */
    Region moved(Point by) {
        Point origin = new Point(originX, originY).plus(by);
        return new Region(shapeEnd, minX, maxX, minY, maxY, origin, stepX, stepY, drop, about, laid, rows);
    }

    /** Returns the same region without its lattice. */
    Region everywhere() {
        return new Region(shapeEnd, minX, maxX, minY, maxY, Point.ORIGIN, 0, 0, 0, NOTHING, laid, rows);
    }

    /** Returns the part of the region that lies in a box of positions. */
    Region within(long fromX, long toX, long fromY, long toY) {
        long[] cut = new long[rows.length];
        int n = 0;
        for (int r = 0; r < rows.length; r += 2) {
            if (Math.max(rows[r], fromY) <= Math.min(rows[r + 1], toY)) {
                cut[n++] = Math.max(rows[r], fromY);
                cut[n++] = Math.min(rows[r + 1], toY);
            }
        }
        long lowY = n == 0 ? 1 : cut[0];
        long highY = n == 0 ? 0 : cut[n - 1];
        return new Region(
                shapeEnd,
                Math.max(minX, fromX),
                Math.min(maxX, toX),
                lowY,
                highY,
                new Point(originX, originY),
                stepX,
                stepY,
                drop,
                about,
                laid,
                Arrays.copyOf(cut, n));
    }

    /** Returns by how much the lattice has to be moved to have a point at a position. */
    Point wayTo(long x, long y) {
        return new Point(x - originX, y - originY);
    }

    /** Says whether there is no position at all, in a strip as long as need be. */
    boolean isEmpty() {
        return cells(minX + shapeEnd + 2 * stepX).length == 0;
    }

    /** Returns the least length of a strip that has a position. */
    long leastLength() {
        long[] cells = cells(minX + shapeEnd + 2 * stepX);
        long least = Long.MAX_VALUE;
        for (int c = 0; c < cells.length; c += 4) {
            least = Math.min(least, cells[c]);
        }
        return least + shapeEnd;
    }

    /** Says whether a shape with some box can only lie with its side on y = 0. */
    boolean isAtEdge(Box shape) {
        return minY == maxY && minY + shape.minY() == 0 && !isLattice() && !isWindow();
    }

    /** Says whether the shape is laid already. */
    boolean isLaid() {
        return laid;
    }

    boolean isLattice() {
        return stepX > 0 || stepY > 0;
    }

    /** Returns the largest x there may be in a strip of some length. */
    long maxX(long length) {
        return Math.min(maxX, length - shapeEnd);
    }

    /** Returns whether the far end is given by a window and not by the strip's length. */
    boolean isWindow() {
        return maxX < ENDLESS;
    }

    /**
     * Returns the cells within a strip of some length as minX, maxX, minY, maxY, …: those of one rectangle about lattice points
     * by x and then y.
     */
    long[] cells(long length) {
        long endX = maxX(length);
        if (minX > endX || minY > maxY) {
            return new long[0];
        }
        if (!isLattice()) {
            long[] cells = new long[2 * rows.length];
            for (int r = 0; r < rows.length; r += 2) {
                cells[2 * r] = minX;
                cells[2 * r + 1] = endX;
                cells[2 * r + 2] = rows[r];
                cells[2 * r + 3] = rows[r + 1];
            }
            return cells;
        }
        long[] cells = new long[64];
        int n = 0;
        for (int k = 0; k < about.length; k += 4) {
            long firstColumn = stepX == 0 ? 0 : Math.floorDiv(minX - about[k + 1] - originX - drop, stepX);
            long lastColumn = stepX == 0 ? 0 : Math.floorDiv(endX - about[k] - originX, stepX);
            long firstRow = stepY == 0 ? 0 : Math.floorDiv(minY - about[k + 3] - originY, stepY);
            long lastRow = stepY == 0 ? 0 : Math.floorDiv(maxY - about[k + 2] - originY, stepY);
            for (long i = firstColumn; i <= lastColumn; i++) {
                for (int odd = 0; odd < (drop > 0 ? 2 : 1); odd++) {
                    long x = originX + i * stepX + odd * drop;
                    long x0 = Math.max(minX, x + about[k]);
                    long x1 = Math.min(endX, x + about[k + 1]);
                    for (long j = firstRow; j <= lastRow; j++) {
                        long y = originY + j * stepY;
                        long y0 = Math.max(minY, y + about[k + 2]);
                        long y1 = Math.min(maxY, y + about[k + 3]);
                        if ((drop == 0 || stepY == 0 || Math.floorMod(j, 2) == odd) && x0 <= x1 && y0 <= y1) {
                            if (n == cells.length) {
                                cells = Arrays.copyOf(cells, 2 * n);
                            }
                            cells[n] = x0;
                            cells[n + 1] = x1;
                            cells[n + 2] = y0;
                            cells[n + 3] = y1;
                            n += 4;
                        }
                    }
                }
            }
        }
        return Arrays.copyOf(cells, n);
    }

    /** Says whether a position is allowed in a strip of some length. */
    boolean contains(long x, long y, long length) {
        if (x < minX || x > maxX(length) || y < minY || y > maxY) {
            return false;
        }
        if (!isLattice()) {
            boolean inside = false;
            for (int r = 0; r < rows.length; r += 2) {
                inside |= y >= rows[r] && y <= rows[r + 1];
            }
            return inside;
        }
        for (int k = 0; k < about.length; k += 4) {
            long firstRow = stepY == 0 ? 0 : -Math.floorDiv(about[k + 3] - y + originY, stepY);
            long lastRow = stepY == 0 ? 0 : Math.floorDiv(y - about[k + 2] - originY, stepY);
            for (long row = firstRow; row <= lastRow; row++) {
                long into = x - about[k] - originX;
                long wide = about[k + 1] - about[k];
                boolean even = stepX == 0 || Math.floorMod(into, stepX) <= wide;
                boolean odd = stepX > 0 && drop > 0 && Math.floorMod(into - drop, stepX) <= wide;
                boolean dropped = drop > 0 && Math.floorMod(row, 2) == 1;
                if ((even && !dropped) || (odd && (dropped || stepY == 0))) {
                    return true;
                }
            }
        }
        return false;
    }
}
