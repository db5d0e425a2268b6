package lengthwise.solver;

import lengthwise.geometry.Box;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.Ring;

/**
 * The squares of a raster that a shape may touch, as one row of bits a column. It never misses a square whose inside
 * the shape meets, so shapes whose masks do not meet do not overlap.
 */
final class Mask {
    final int firstColumn;
    final int columns;
    final int firstRow;
    final int rows;
    /** How many longs a column has. */
    final int words;

    final long[] bits;
    /** The column with the longest run of rows, and the length of that run. */
    final int tallestColumn;

    final int tallest;

    private Mask(int firstColumn, int columns, int firstRow, int rows, int words, long[] bits) {
        this.firstColumn = firstColumn;
        this.columns = columns;
        this.firstRow = firstRow;
        this.rows = rows;
        this.words = words;
        this.bits = bits;
        int most = 0;
        int at = 0;
        for (int column = 0; column < columns; column++) {
            int run = 0;
            for (int row = 0; row < rows; row++) {
                run = (bits[column * words + (row >> 6)] >>> row & 1) != 0 ? run + 1 : 0;
                if (run > most) {
                    most = run;
                    at = column;
                }
            }
        }
        tallestColumn = firstColumn + at;
        tallest = most;
    }

    /**
     * Draws a shape at a position.
     *
     * @param square side of a raster square, in micrometres
     * @param margin how far the shape is grown on all sides
     */
    static Mask of(ConvexParts shape, long x, long y, long square, long margin) {
        Box box = shape.ring().box();
        int firstColumn = (int) Math.floorDiv(box.minX() + x - margin, square);
        int lastColumn = (int) Math.floorDiv(box.maxX() + x + margin - 1, square);
        int firstRow = (int) Math.floorDiv(box.minY() + y - margin, square);
        int lastRow = (int) Math.floorDiv(box.maxY() + y + margin - 1, square);
        int rows = lastRow - firstRow + 1;
        int words = (rows + 63) / 64;
        long[] bits = new long[(lastColumn - firstColumn + 1) * words];
        for (Ring part : shape.parts()) {
            Box partBox = part.box();
            int from = (int) Math.floorDiv(partBox.minX() + x - margin, square);
            int to = (int) Math.floorDiv(partBox.maxX() + x + margin - 1, square);
            for (int column = from; column <= to; column++) {
                double left = (double) column * square - margin - x;
                double right = (double) (column + 1) * square + margin - x;
                fill(part, left, right, y, square, margin, firstRow, rows, bits, (column - firstColumn) * words);
            }
        }
        return new Mask(firstColumn, lastColumn - firstColumn + 1, firstRow, rows, words, bits);
    }

    /** Sets the bits of a column from the lowest to the highest point of a convex part between two upright lines. */
    private static void fill(
            Ring part,
            double left,
            double right,
            long y,
            long square,
            long margin,
            int firstRow,
            int rows,
            long[] bits,
            int at) {
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        for (int i = 0; i < part.size(); i++) {
            int next = i + 1 == part.size() ? 0 : i + 1;
            double x0 = part.x(i);
            double y0 = part.y(i);
            double x1 = part.x(next);
            double y1 = part.y(next);
            if (Math.max(x0, x1) < left || Math.min(x0, x1) > right) {
                continue;
            }
            double slope = x0 == x1 ? 0 : (y1 - y0) / (x1 - x0);
            double yFrom = x0 < left ? y0 + (left - x0) * slope : x0 > right ? y0 + (right - x0) * slope : y0;
            double yTo = x1 < left ? y1 + (left - x1) * slope : x1 > right ? y1 + (right - x1) * slope : y1;
            low = Math.min(low, Math.min(yFrom, yTo));
            high = Math.max(high, Math.max(yFrom, yTo));
        }
        if (low < high) {
            // against rounding; no line through grid points comes nearer to a raster line without touching it
            int from = Math.max(0, (int) Math.floor((low + y - margin + 1e-7) / square) - firstRow);
            int to = Math.min(rows - 1, (int) Math.ceil((high + y + margin - 1e-7) / square) - 1 - firstRow);
            for (int row = from; row <= to; row++) {
                bits[at + (row >> 6)] |= 1L << row;
            }
        }
    }
}
