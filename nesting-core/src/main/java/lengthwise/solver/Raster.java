package lengthwise.solver;

import java.util.Arrays;

/** The squares of the strip that are taken, as one row of bits a column; it grows to the right as needed. */
final class Raster {
    private final int rows;
    private final int words;
    private long[] bits;
    /** The longest run of free rows of each column, or −1 where it has to be found anew. */
    private int[] longestFree = new int[0];

    Raster(int rows) {
        this.rows = rows;
        this.words = (rows + 63) / 64 + 1;
        this.bits = new long[256 * words];
    }

    /** Returns a raster where the same squares are taken. */
    Raster copy() {
        Raster copy = new Raster(rows);
        copy.bits = bits.clone();
        return copy;
    }

    /** Says whether a mask, moved by whole squares, meets no taken square. */
    boolean isFree(Mask mask, int byColumns, int byRows) {
        return rowsToClear(mask, byColumns, byRows) == 0;
    }

    /**
     * Returns 0 if a mask, moved by whole squares, meets no taken square, and else by how many rows it has to go on at
     * least: so many as the mask covers in one run up to a square that is taken.
     */
    int rowsToClear(Mask mask, int byColumns, int byRows) {
        int bottom = mask.firstRow + byRows;
        for (int column = 0; column < mask.columns; column++) {
            int at = (mask.firstColumn + byColumns + column) * words;
            if (at < 0 || at >= bits.length) {
                continue;
            }
            for (int word = 0; word < mask.words; word++) {
                long value = mask.bits[column * mask.words + word];
                long both = value == 0 ? 0 : taken(at, bottom + 64 * word) & value;
                if (both != 0) {
                    int above = Long.numberOfLeadingZeros(both);
                    return Long.numberOfLeadingZeros(~(value << above));
                }
            }
        }
        return 0;
    }

    /** Returns the length of the longest run of free rows in a column. */
    int longestFree(int column) {
        if (column < 0 || column * words >= bits.length) {
            return rows;
        }
        if (column >= longestFree.length) {
            int known = longestFree.length;
            longestFree = Arrays.copyOf(longestFree, bits.length / words);
            Arrays.fill(longestFree, known, longestFree.length, -1);
        }
        if (longestFree[column] < 0) {
            int longest = 0;
            int run = 0;
            for (int row = 0; row < rows; row++) {
                run = (bits[column * words + (row >> 6)] >>> row & 1) == 0 ? run + 1 : 0;
                longest = Math.max(longest, run);
            }
            longestFree[column] = longest;
        }
        return longestFree[column];
    }

    /** Returns 64 bits of a column from some row on; rows outside the strip are free. */
    private long taken(int at, int row) {
        int word = row >> 6;
        int shift = row & 63;
        long low = word >= 0 && word < words ? bits[at + word] >>> shift : 0;
        long high = shift != 0 && word + 1 >= 0 && word + 1 < words ? bits[at + word + 1] << (64 - shift) : 0;
        return low | high;
    }

    /** Takes the squares of a mask. */
    void take(Mask mask, int byColumns, int byRows) {
        int last = (mask.firstColumn + byColumns + mask.columns) * words;
        if (last > bits.length) {
            bits = Arrays.copyOf(bits, Math.max(last, 2 * bits.length));
        }
        for (int column = 0; column < mask.columns; column++) {
            int at = (mask.firstColumn + byColumns + column) * words;
            if (at >= 0 && at / words < longestFree.length) {
                longestFree[at / words] = -1;
            }
            for (int row = 0; row < mask.rows && at >= 0; row++) {
                int to = mask.firstRow + byRows + row;
                if (to >= 0 && to < rows && (mask.bits[column * mask.words + (row >> 6)] >>> row & 1) != 0) {
                    bits[at + (to >> 6)] |= 1L << to;
                }
            }
        }
    }
}
