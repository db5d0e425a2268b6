package lengthwise.solver;

import java.util.Arrays;
import java.util.IdentityHashMap;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;

/**
 * The pieces of a task in a strip of some length, where they may overlap: the working state of one worker. Pieces are
 * numbered as the demands are; obstacles follow, and never move.
 */
final class Arrangement {
    final PreparedTask task;
    final Pairs pairs;
    final Nearness nearness;
    final int pieces;
    /** Pieces and obstacles. */
    final int all;

    final Variant[] variant;
    final Shape[] shape;
    final double[] x;
    final double[] y;
    /** Hindrance of every two, by overlap or by lying too far apart, in micrometres; symmetric. */
    final double[][] overlap;
    /** What the overlap of two counts in the search; symmetric. */
    final double[][] weight;

    /** What each counts in the weight of an overlap, 1 on average. */
    private final double[] size;

    private final IdentityHashMap<Region, double[]> cells = new IdentityHashMap<>();
    private long length;

    Arrangement(PreparedTask task, Pairs pairs) {
        this.task = task;
        this.pairs = pairs;
        this.nearness = task.nearness();
        this.pieces = task.size();
        this.all = pieces + task.obstacles().size();
        this.variant = new Variant[pieces];
        this.shape = new Shape[all];
        this.x = new double[all];
        this.y = new double[all];
        this.overlap = new double[all][all];
        this.weight = new double[all][all];
        for (int i = pieces; i < all; i++) {
            shape[i] = task.obstacles().get(i - pieces);
        }
        this.size = sizes();
        resetWeights();
    }

    /**
     * Large pieces are hard to place and small ones find a hole somewhere, so overlaps of large ones count more from the
     * start: by the fourth root of the product of both areas (J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv 2509.13329,
     * 2025).
     */
    private double[] sizes() {
        double[] sizes = new double[all];
        double sum = 0;
        for (int i = 0; i < all; i++) {
            Shape of = i < pieces ? task.variants(i).get(0).shape() : shape[i];
            sizes[i] = Math.sqrt(Math.sqrt((double) of.ring().doubleArea()));
            sum += sizes[i];
        }
        for (int i = 0; i < all; i++) {
            sizes[i] *= all / sum;
        }
        return sizes;
    }

    /** Returns what the overlap of two counts at least. */
    double leastWeight(int i, int j) {
        return size[i] * size[j];
    }

    long length() {
        return length;
    }

    /** Lays the pieces as a layout has them, in a strip of its length. */
    void load(Layout layout) {
        setLength(layout.length());
        for (int i = 0; i < pieces; i++) {
            Pose pose = layout.poses().get(i);
            for (Variant candidate : task.variants(i)) {
                if (candidate.orientation().equals(pose.orientation())) {
                    Point at = pose.offset().minus(candidate.shift());
                    place(i, candidate, (double) at.x(), (double) at.y());
                }
            }
        }
        measureAll();
    }

    /** Changes the length; pieces that reach beyond it are brought back to where they may be. */
    void setLength(long newLength) {
        length = newLength;
        cells.clear();
        for (int i = 0; i < pieces; i++) {
            if (variant[i] != null) {
                place(i, variant[i], x[i], y[i]);
            }
        }
    }

    /** Returns the cells of a variant's region within the length. */
    double[] cells(Variant of) {
        return cells.computeIfAbsent(
                of.region(),
                region -> Arrays.stream(region.cells(length)).asDoubleStream().toArray());
    }

    /** Puts a piece at the allowed position nearest to one, without looking at overlaps. */
    void place(int piece, Variant as, double toX, double toY) {
        variant[piece] = as;
        shape[piece] = as.shape();
        double[] cells = cells(as);
        double least = Double.MAX_VALUE;
        for (int c = 0; c < cells.length; c += 4) {
            double nearX = Math.max(cells[c], Math.min(cells[c + 1], toX));
            double nearY = Math.max(cells[c + 2], Math.min(cells[c + 3], toY));
            double distance = (nearX - toX) * (nearX - toX) + (nearY - toY) * (nearY - toY);
            if (distance < least) {
                least = distance;
                x[piece] = nearX;
                y[piece] = nearY;
            }
        }
    }

    /** Returns where the cell that a piece lies in begins, among the cells of its variant. */
    int cellOf(int piece) {
        double[] of = cells(variant[piece]);
        for (int c = 0; c < of.length; c += 4) {
            if (x[piece] >= of[c] && x[piece] <= of[c + 1] && y[piece] >= of[c + 2] && y[piece] <= of[c + 3]) {
                return c;
            }
        }
        return 0;
    }

    /** Tilts a piece otherwise where it lies, about the middle of its box. */
    void tilt(int piece, int to) {
        Orientation way = variant[piece].orientation().tilted(to);
        for (Variant tilted : task.variants(piece)) {
            if (tilted.orientation().equals(way)) {
                Box now = shape[piece].box();
                Box then = tilted.shape().box();
                place(
                        piece,
                        tilted,
                        x[piece] + 0.5 * (now.minX() + now.maxX() - then.minX() - then.maxX()),
                        y[piece] + 0.5 * (now.minY() + now.maxY() - then.minY() - then.maxY()));
                measure(piece);
                return;
            }
        }
    }

    void resetWeights() {
        for (int i = 0; i < all; i++) {
            for (int j = 0; j < all; j++) {
                weight[i][j] = leastWeight(i, j);
            }
        }
    }

    /** Computes the overlaps of a piece that was moved anew. */
    void measure(int piece) {
        pairs.moved();
        for (int j = 0; j < all; j++) {
            if (j != piece) {
                double depth = hindrance(piece, j);
                overlap[piece][j] = depth;
                overlap[j][piece] = depth;
            }
        }
    }

    void measureAll() {
        for (int i = 0; i < pieces; i++) {
            for (int j = i + 1; j < all; j++) {
                double depth = hindrance(i, j);
                overlap[i][j] = depth;
                overlap[j][i] = depth;
            }
        }
    }

    private double hindrance(int piece, int other) {
        if (isStill(piece) && isStill(other)) {
            return 0;
        }
        double depth = pairs.hindrance(shape[other], shape[piece], x[piece] - x[other], y[piece] - y[other]);
        return nearness.isEmpty() ? depth : depth + nearness.excess(this, piece, other);
    }

    /** Says whether something never moves: it was put there rightly, though outlines that were grown may overlap. */
    private boolean isStill(int number) {
        return number >= pieces || variant[number].region().isLaid();
    }

    double total() {
        double sum = 0;
        for (int i = 0; i < pieces; i++) {
            for (int j = i + 1; j < all; j++) {
                sum += overlap[i][j];
            }
        }
        return sum;
    }

    double largest() {
        double largest = 0;
        for (int i = 0; i < pieces; i++) {
            for (int j = i + 1; j < all; j++) {
                largest = Math.max(largest, overlap[i][j]);
            }
        }
        return largest;
    }

    /** Returns the largest overlap of a piece. */
    double largestOf(int piece) {
        double largest = 0;
        for (double depth : overlap[piece]) {
            largest = Math.max(largest, depth);
        }
        return largest;
    }

    /** A copy of where the pieces are. */
    static final class Snapshot {
        final Variant[] variant;
        final double[] x;
        final double[] y;
        final double total;

        private Snapshot(Arrangement state) {
            variant = state.variant.clone();
            x = Arrays.copyOf(state.x, state.pieces);
            y = Arrays.copyOf(state.y, state.pieces);
            total = state.total();
        }
    }

    Snapshot snapshot() {
        return new Snapshot(this);
    }

    void restore(Snapshot snapshot) {
        for (int i = 0; i < pieces; i++) {
            place(i, snapshot.variant[i], snapshot.x[i], snapshot.y[i]);
        }
        measureAll();
    }
}
