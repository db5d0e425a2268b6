package lengthwise.solver;

import java.util.Arrays;
import java.util.List;

/**
 * The move of the search: looks for the best place of one piece in the whole strip, everything else staying where it is.
 *
 * <p>The weighted fields of all others, added up over a grid of the strip, give the cost of every grid position at once
 * (A. Sato, T. Martins, A. Gomes, M. Tsuzuki, <i>Raster penetration map applied to the irregular packing problem</i>,
 * EJOR 279, 2019). The best few local minima, and where the piece lies now, are refined with exact depths. In a
 * lattice every allowed position is a candidate, and the least along every line of stripes.
 */
final class Relocation {
    private static final int CANDIDATES = 5;
    private static final int BAND = 8;

    private final Arrangement state;
    private final Descent descent;
    private final double step;
    private final Reach reach = new Reach();
    private float[] sum = new float[4096];
    private float[] least = new float[256];

    private final double[] candidateCost = new double[CANDIDATES];
    private final double[] candidateX = new double[CANDIDATES];
    private final double[] candidateY = new double[CANDIDATES];
    private final Variant[] candidateVariant = new Variant[CANDIDATES];
    private final int[] candidateCell = new int[CANDIDATES];
    private int candidates;

    Relocation(Arrangement state) {
        this.state = state;
        this.step = state.pairs.step();
        this.descent = new Descent(state, 1.5 * step);
    }

    /**
     * Moves a piece to the best place found; it may stay. The strip is looked over only where nothing near by is free. What
     * is tilted alike follows its tilt where it lies.
     */
    void move(int piece) {
        candidates = 0;
        Variant before = state.variant[piece];
        int cell = state.cellOf(piece);
        double bestCost = descent.run(piece, before, cell, state.x[piece], state.y[piece], Double.MAX_VALUE);
        double bestX = descent.x;
        double bestY = descent.y;
        Variant best = before;
        List<Variant> variants = state.task.variants(piece);
        for (int v = 0; v < variants.size() && bestCost > 0; v++) {
            Variant variant = variants.get(v);
            if (allowed(piece, variant) && !repeats(variants, v, piece)) {
                look(piece, variant);
            }
        }
        for (int k = 0; k < candidates && bestCost > 0; k++) {
            double cost =
                    descent.run(piece, candidateVariant[k], candidateCell[k], candidateX[k], candidateY[k], bestCost);
            if (cost < bestCost) {
                bestCost = cost;
                bestX = descent.x;
                bestY = descent.y;
                best = candidateVariant[k];
            }
        }
        state.variant[piece] = best;
        state.shape[piece] = best.shape();
        state.x[piece] = bestX;
        state.y[piece] = bestY;
        state.measure(piece);
        if (best.orientation().tilt() != before.orientation().tilt()) {
            for (int mate : state.task.tiltedWith(piece)) {
                state.tilt(mate, best.orientation().tilt());
            }
        }
    }

    private boolean allowed(int piece, Variant variant) {
        return state.task.bondOf(piece) < 0 || PreparedTask.turn(variant) == PreparedTask.turn(state.variant[piece]);
    }

    /** Says whether an earlier variant is the same shape with the same freedom, as for a rectangle given a half turn. */
    private boolean repeats(List<Variant> variants, int v, int piece) {
        for (int earlier = 0; earlier < v; earlier++) {
            Variant other = variants.get(earlier);
            if (other.shape().index() == variants.get(v).shape().index()
                    && allowed(piece, other)
                    && Arrays.equals(state.cells(other), state.cells(variants.get(v)))) {
                return true;
            }
        }
        return false;
    }

    private void look(int piece, Variant variant) {
        double[] cells = state.cells(variant);
        if (cells.length == 0) {
            return;
        }
        if (variant.region().isLattice()) {
            lookInCells(piece, variant, cells);
        } else {
            for (int c = 0; c < cells.length; c += 4) {
                double left = cells[c];
                double bottom = cells[c + 2];
                double top = cells[c + 3];
                int columns = (int) ((cells[c + 1] - left) / step) + 1;
                int rows = (int) Math.ceil((top - bottom) / step) + 1;
                addFields(piece, variant, left, bottom, top, columns, rows);
                offerMinima(variant, c, left, bottom, top, columns, rows);
            }
        }
    }

    /** Looks at the middle of every cell; of one that is long some way, at the local minima along it. */
    private void lookInCells(int piece, Variant variant, double[] cells) {
        double left = cells[0];
        double right = cells[1];
        double bottom = Double.MAX_VALUE;
        double top = -Double.MAX_VALUE;
        for (int c = 0; c < cells.length; c += 4) {
            left = Math.min(left, cells[c]);
            right = Math.max(right, cells[c + 1]);
            bottom = Math.min(bottom, cells[c + 2]);
            top = Math.max(top, cells[c + 3]);
        }
        int columns = (int) ((right - left) / step) + 1;
        int rows = (int) Math.ceil((top - bottom) / step) + 1;
        addFields(piece, variant, left, bottom, top, columns, rows);
        for (int c = 0; c < cells.length; c += 4) {
            boolean wide = cells[c + 1] - cells[c] > step;
            boolean tall = cells[c + 3] - cells[c + 2] > step;
            double middleX = 0.5 * (cells[c] + cells[c + 1]);
            double middleY = 0.5 * (cells[c + 2] + cells[c + 3]);
            int firstColumn = Math.min(columns - 1, (int) Math.round(((wide ? cells[c] : middleX) - left) / step));
            int lastColumn = wide ? Math.min(columns - 1, (int) ((cells[c + 1] - left) / step)) : firstColumn;
            int firstRow = Math.min(rows - 1, (int) Math.round(((tall ? cells[c + 2] : middleY) - bottom) / step));
            int lastRow = tall ? Math.min(rows - 1, (int) Math.ceil((cells[c + 3] - bottom) / step)) : firstRow;
            for (int r = firstRow; r <= lastRow; r++) {
                for (int column = firstColumn; column <= lastColumn; column++) {
                    float value = sum[r * columns + column];
                    if (isLowEnough(value)
                            && (column == firstColumn || value <= sum[r * columns + column - 1])
                            && (column == lastColumn || value < sum[r * columns + column + 1])
                            && (r == firstRow || value <= sum[(r - 1) * columns + column])
                            && (r == lastRow || value < sum[(r + 1) * columns + column])) {
                        offer(
                                variant,
                                c,
                                value,
                                wide ? left + column * step : middleX,
                                tall ? Math.min(top, bottom + r * step) : middleY);
                    }
                }
            }
        }
    }

    /** Adds the weighted fields of everything else; the last row lies on the top edge of the region. */
    private void addFields(int piece, Variant variant, double left, double bottom, double top, int columns, int rows) {
        int size = columns * rows;
        if (sum.length < size) {
            sum = new float[size + size / 2];
        }
        Arrays.fill(sum, 0, size, 0);
        double[] weights = state.weight[piece];
        for (int j = 0; j < state.all; j++) {
            if (j == piece) {
                continue;
            }
            Pair pair = state.pairs.of(state.shape[j], variant.shape());
            int shift = (int) Math.rint((left - state.x[j] - pair.minX) / step);
            int from = Math.max(0, -shift);
            int to = Math.min(columns, pair.fieldColumns - shift);
            if (from >= to) {
                continue;
            }
            float weight = (float) weights[j];
            // the rows of both grids are equally far apart, but for the last, which lies on the edge
            int rowShift = (int) Math.rint((bottom - state.y[j] - pair.minY) / step);
            int firstRow = Math.max(0, -rowShift);
            int lastRow = Math.min(rows - 1, pair.fieldRows - rowShift);
            for (int r = firstRow; r < lastRow; r++) {
                addRow(r * columns, from, to, pair, r + rowShift, shift, weight);
            }
            int onEdge = (int) Math.rint((top - state.y[j] - pair.minY) / step);
            if (onEdge >= 0 && onEdge < pair.fieldRows) {
                addRow((rows - 1) * columns, from, to, pair, onEdge, shift, weight);
            }
        }
        if (state.nearness.fellowsOf(piece).length > 0) {
            addDistances(piece, variant, left, bottom, top, columns, rows);
        }
    }

    /** Adds what it costs to lie too far from what the piece has to be near to: the same all along a row or a column. */
    private void addDistances(
            int piece, Variant variant, double left, double bottom, double top, int columns, int rows) {
        reach.find(state, piece, variant.shape().box());
        float[] ofColumn = new float[columns];
        for (int c = 0; c < columns; c++) {
            ofColumn[c] = (float) reach.costAtX(left + c * step);
        }
        for (int r = 0; r < rows; r++) {
            float ofRow = (float) reach.costAtY(Math.min(top, bottom + r * step));
            for (int c = 0; c < columns; c++) {
                sum[r * columns + c] += ofColumn[c] + ofRow;
            }
        }
    }

    private void addRow(int at, int from, int to, Pair pair, int row, int shift, float weight) {
        float[] target = sum;
        float[] field = pair.field;
        int fieldAt = row * pair.fieldColumns + shift;
        for (int c = from; c < to; c++) {
            target[at + c] += weight * field[fieldAt + c];
        }
    }

    /**
     * Offers the local minima of the sum. Few of its nodes are low enough, so rows go by in bands: the least of each column
     * of a band is found first, in a loop that the compiler turns into vector instructions.
     */
    private void offerMinima(Variant variant, int cell, double left, double bottom, double top, int columns, int rows) {
        if (least.length < columns) {
            least = new float[2 * columns];
        }
        for (int band = 0; band < rows; band += BAND) {
            int end = Math.min(rows, band + BAND);
            System.arraycopy(sum, band * columns, least, 0, columns);
            for (int r = band + 1; r < end; r++) {
                lower(r * columns, columns);
            }
            for (int c = 0; c < columns; c++) {
                if (isLowEnough(least[c])) {
                    for (int r = band; r < end; r++) {
                        float value = sum[r * columns + c];
                        if (isLowEnough(value) && isMinimum(value, r, c, rows, columns)) {
                            offer(variant, cell, value, left + c * step, Math.min(top, bottom + r * step));
                        }
                    }
                }
            }
        }
    }

    private void lower(int at, int columns) {
        float[] lowest = least;
        float[] row = sum;
        for (int c = 0; c < columns; c++) {
            lowest[c] = Math.min(lowest[c], row[at + c]);
        }
    }

    private boolean isLowEnough(float value) {
        return candidates < CANDIDATES || value < candidateCost[candidates - 1];
    }

    private boolean isMinimum(float value, int row, int column, int rows, int columns) {
        int at = row * columns + column;
        return (column == 0 || value <= sum[at - 1])
                && (column == columns - 1 || value < sum[at + 1])
                && (row == 0 || value <= sum[at - columns])
                && (row == rows - 1 || value < sum[at + columns]);
    }

    private void offer(Variant variant, int cell, double cost, double x, double y) {
        int at = candidates;
        if (at == CANDIDATES) {
            if (cost >= candidateCost[at - 1]) {
                return;
            }
            at--;
        } else {
            candidates++;
        }
        while (at > 0 && candidateCost[at - 1] > cost) {
            candidateCost[at] = candidateCost[at - 1];
            candidateX[at] = candidateX[at - 1];
            candidateY[at] = candidateY[at - 1];
            candidateVariant[at] = candidateVariant[at - 1];
            candidateCell[at] = candidateCell[at - 1];
            at--;
        }
        candidateCost[at] = cost;
        candidateX[at] = x;
        candidateY[at] = y;
        candidateVariant[at] = variant;
        candidateCell[at] = cell;
    }
}
