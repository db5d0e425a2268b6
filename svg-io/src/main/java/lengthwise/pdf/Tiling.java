package lengthwise.pdf;

import lengthwise.model.Length;

/**
 * How a drawing is cut into equal cells of overlapping pages: column {@code i} shows what begins {@code i · step} along
 * it, and the step is the cell less the overlap. A drawing of length D needs {@code ⌈(D − overlap) / step⌉} columns, and
 * one if it fits a cell.
 */
record Tiling(Length cellAlong, Length cellAcross, Length overlap, int columns, int rows) {
    /** @throws IllegalArgumentException if a cell is no longer than the overlap */
    static Tiling of(Length along, Length across, Length cellAlong, Length cellAcross, Length overlap) {
        return new Tiling(
                cellAlong,
                cellAcross,
                overlap,
                count(along.micrometres(), cellAlong.micrometres(), overlap.micrometres()),
                count(across.micrometres(), cellAcross.micrometres(), overlap.micrometres()));
    }

    private static int count(long drawing, long cell, long overlap) {
        if (overlap < 0 || cell <= overlap) {
            throw new IllegalArgumentException(
                    "A cell of %s µm must be longer than the overlap of %s µm.".formatted(cell, overlap));
        }
        return drawing <= cell ? 1 : Math.toIntExact(-Math.floorDiv(overlap - drawing, cell - overlap));
    }

    int pages() {
        return columns * rows;
    }

    /** Returns where what a column shows begins, from the start of the drawing (mm). */
    double x(int column) {
        return column * (cellAlong.micrometres() - overlap.micrometres()) / 1000.0;
    }

    double y(int row) {
        return row * (cellAcross.micrometres() - overlap.micrometres()) / 1000.0;
    }

    /** Returns the name of a page: rows are letters, columns numbers, so A1 is the upper left one. */
    static String name(int column, int row) {
        return rowName(row) + (column + 1);
    }

    /** A to Z, then AA, AB and so on. */
    static String rowName(int row) {
        String last = Character.toString('A' + row % 26);
        return row < 26 ? last : rowName(row / 26 - 1) + last;
    }
}
