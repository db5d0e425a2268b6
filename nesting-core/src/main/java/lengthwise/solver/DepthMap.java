package lengthwise.solver;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.LongConsumer;
import lengthwise.geometry.NoFitPolygon;
import org.jspecify.annotations.Nullable;

/**
 * Answers, for a displacement of one shape against another, how far it lies inside their no-fit polygon and which way is
 * out: the penetration depth (D. Dobkin, J. Hershberger, D. Kirkpatrick, S. Suri, <i>Computing the
 * intersection-depth of polyhedra</i>, 1993). Outside it answers the distance, as far as a band.
 *
 * <p>The box of the no-fit polygon, grown by the band, is divided into squares; each knows the few boundary segments that
 * can be nearest to a point in it, so an answer takes a handful of operations. Most of a map is never asked, so
 * only large squares are made at first, and a large one is divided when someone asks for a point in it. Answers do not
 * depend on that.
 */
final class DepthMap {
    /** Depth that stands for “farther apart than the band”. */
    static final double FAR = -1e18;

    /** Squares along a side of the box, and along a side of a large square. */
    private static final int SIDE = 8;

    /** The numbers of a segment. */
    private static final int NUMBERS = 5;

    private static final int FROM_X = 0;
    private static final int FROM_Y = 1;
    private static final int ALONG_X = 2;
    private static final int ALONG_Y = 3;
    private static final int LENGTH = 4;

    private final double perMicrometre;
    private final int[] large;
    private final AtomicReferenceArray<int @Nullable []> small = new AtomicReferenceArray<>(SIDE * SIDE);
    private final double band;

    /** Boundary segments one after the other, each with what is asked of it together: where it begins, its direction, its length. */
    private final double[] segments;

    /** The box of displacements that are not far. */
    final double minX;

    final double minY;
    final double maxX;
    final double maxY;

    private final LongConsumer growth;

    DepthMap(NoFitPolygon polygon, double band) {
        this(polygon, band, bytes -> {});
    }

    /**
     * Makes a map.
     *
     * @param growth is told how many bytes the map takes, and how many more whenever it grows
     */
    DepthMap(NoFitPolygon polygon, double band, LongConsumer growth) {
        this.growth = growth;
        int n = polygon.size();
        this.band = band;
        segments = new double[NUMBERS * n];
        double left = Double.MAX_VALUE;
        double bottom = Double.MAX_VALUE;
        double right = -Double.MAX_VALUE;
        double top = -Double.MAX_VALUE;
        for (int s = 0; s < n; s++) {
            double x0 = polygon.fromX(s);
            double y0 = polygon.fromY(s);
            double x1 = polygon.toX(s);
            double y1 = polygon.toY(s);
            double l = Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
            int at = NUMBERS * s;
            segments[at + FROM_X] = x0;
            segments[at + FROM_Y] = y0;
            segments[at + ALONG_X] = (x1 - x0) / l;
            segments[at + ALONG_Y] = (y1 - y0) / l;
            segments[at + LENGTH] = l;
            left = Math.min(left, Math.min(x0, x1));
            right = Math.max(right, Math.max(x0, x1));
            bottom = Math.min(bottom, Math.min(y0, y1));
            top = Math.max(top, Math.max(y0, y1));
        }
        minX = left - band;
        minY = bottom - band;
        maxX = right + band;
        maxY = top + band;
        perMicrometre = SIDE * SIDE / Math.max(maxX - minX, maxY - minY);
        int[] all = new int[n];
        for (int s = 0; s < n; s++) {
            all[s] = s;
        }
        large = new Division(minX, minY, SIDE / perMicrometre).of(all, n);
        growth.accept(bytes(large) + 40L * n + 1000);
    }

    /**
     * A square divided into squares, by halving: a segment that is too far for a square is too far for its quarters. The
     * table has for each square, row by row, where in the table its list stands: how many segments, and which; 0
     * for a square that is far.
     */
    private final class Division {
        private final double cornerX;
        private final double cornerY;
        private final double square;
        private int[] table = new int[8 * SIDE * SIDE];
        private int end = SIDE * SIDE;
        /** Segments that can be nearest in the square at hand and in those it lies in, the outermost first. */
        private int[] nested = new int[0];

        private double[] distances = new double[0];

        Division(double cornerX, double cornerY, double square) {
            this.cornerX = cornerX;
            this.cornerY = cornerY;
            this.square = square;
        }

        int[] of(int[] candidates, int n) {
            if (n > 0) {
                nested = Arrays.copyOf(candidates, 5 * n);
                distances = new double[n];
                divide(0, 0, SIDE, 0, n, false);
            }
            return Arrays.copyOf(table, end);
        }

        /**
         * Divides a square.
         *
         * @param from where the segments to choose from stand
         * @param n how many they are
         * @param inside whether the whole square is known to lie inside
         */
        private void divide(int column, int row, int size, int from, int n, boolean inside) {
            double half = 0.5 * size * square;
            double centreX = cornerX + column * square + half;
            double centreY = cornerY + row * square + half;
            double leastSquare = Double.MAX_VALUE;
            for (int k = 0; k < n; k++) {
                distances[k] = squaredDistance(nested[from + k], centreX, centreY);
                leastSquare = Math.min(leastSquare, distances[k]);
            }
            double least = Math.sqrt(leastSquare);
            double radius = half * 1.4143;
            double most = least + 2 * radius + 1;
            int near = from + n;
            int count = 0;
            for (int k = 0; k < n; k++) {
                if (distances[k] <= most * most) {
                    nested[near + count++] = nested[from + k];
                }
            }
            boolean oneSide = inside || least > radius + 1;
            boolean allInside = inside || (oneSide && isInside(nested, near, count, centreX, centreY));
            if (oneSide && !allInside && least > radius + band) {
                return; // far
            }
            if (size == 1 || count <= 2) {
                int at = add(near, count);
                for (int r = row; r < row + size; r++) {
                    Arrays.fill(table, r * SIDE + column, r * SIDE + column + size, at);
                }
                return;
            }
            int next = size / 2;
            divide(column, row, next, near, count, allInside);
            divide(column + next, row, next, near, count, allInside);
            divide(column, row + next, next, near, count, allInside);
            divide(column + next, row + next, next, near, count, allInside);
        }

        private int add(int near, int count) {
            if (end + count + 1 > table.length) {
                table = Arrays.copyOf(table, 2 * table.length + count);
            }
            int at = end;
            table[at] = count;
            System.arraycopy(nested, near, table, at + 1, count);
            end += count + 1;
            return at;
        }
    }

    private double squaredDistance(int s, double x, double y) {
        int at = NUMBERS * s;
        double rx = x - segments[at + FROM_X];
        double ry = y - segments[at + FROM_Y];
        double t = rx * segments[at + ALONG_X] + ry * segments[at + ALONG_Y];
        double p = segments[at + ALONG_X] * ry - segments[at + ALONG_Y] * rx;
        double length = segments[at + LENGTH];
        double over = t < 0 ? t : t > length ? t - length : 0;
        return p * p + over * over;
    }

    private boolean isInside(int[] candidates, int from, int n, double x, double y) {
        double least = Double.MAX_VALUE;
        double side0 = 0;
        for (int k = from; k < from + n; k++) {
            int s = candidates[k];
            double d = squaredDistance(s, x, y);
            int at = NUMBERS * s;
            double p = segments[at + ALONG_X] * (y - segments[at + FROM_Y])
                    - segments[at + ALONG_Y] * (x - segments[at + FROM_X]);
            double tie = 1e-9 * least + 1e-6;
            if (d < least - tie || (d < least + tie && better(p, side0))) {
                least = Math.min(d, least);
                side0 = p;
            }
        }
        return side0 > 0;
    }

    /** At a corner the segment that the point is farther beside knows the side; back to back, inside wins. */
    private static boolean better(double p, double than) {
        double by = Math.abs(p) - Math.abs(than);
        return by > 1e-6 || (by > -1e-6 && p > than);
    }

    /** Answers depth and way out for the displacement (x, y). */
    void look(double x, double y, Contact contact) {
        int[] lists = lists(x, y);
        int list = list(lists, x, y);
        if (list == 0) {
            contact.depth = FAR;
            return;
        }
        double least = Double.MAX_VALUE;
        double beside = 0;
        int nearest = -1;
        for (int k = list + 1, end = list + 1 + lists[list]; k < end; k++) {
            int at = NUMBERS * lists[k];
            double rx = x - segments[at + FROM_X];
            double ry = y - segments[at + FROM_Y];
            double ax = segments[at + ALONG_X];
            double ay = segments[at + ALONG_Y];
            double t = rx * ax + ry * ay;
            double p = ax * ry - ay * rx;
            double length = segments[at + LENGTH];
            double over = t < 0 ? t : t > length ? t - length : 0;
            double d = p * p + over * over;
            double tie = 1e-9 * least + 1e-6;
            if (d < least - tie || (d < least + tie && better(p, beside))) {
                least = Math.min(d, least);
                beside = p;
                nearest = at;
            }
        }
        double distance = Math.sqrt(least);
        contact.depth = beside > 0 ? distance : -distance;
        if (distance > 1) {
            double rx = x - segments[nearest + FROM_X];
            double ry = y - segments[nearest + FROM_Y];
            double ax = segments[nearest + ALONG_X];
            double ay = segments[nearest + ALONG_Y];
            double t = rx * ax + ry * ay;
            double length = segments[nearest + LENGTH];
            double over = t < 0 ? t : t > length ? t - length : 0;
            // from the point to the nearest point of the segment, or back if outside
            double wayX = over * ax - beside * ay;
            double wayY = over * ay + beside * ax;
            double scale = beside > 0 ? -1 / distance : 1 / distance;
            contact.outX = wayX * scale;
            contact.outY = wayY * scale;
        } else {
            contact.outX = segments[nearest + ALONG_Y];
            contact.outY = -segments[nearest + ALONG_X];
        }
    }

    /** Returns depth alone. */
    double depth(double x, double y) {
        int[] lists = lists(x, y);
        return depth(lists, list(lists, x, y), x, y);
    }

    /** Returns the same without dividing a square for it. */
    double rareDepth(double x, double y) {
        return depth(large, list(large, x, y), x, y);
    }

    private double depth(int[] lists, int list, double x, double y) {
        if (list == 0) {
            return FAR;
        }
        double least = Double.MAX_VALUE;
        double beside = 0;
        for (int k = list + 1, end = list + 1 + lists[list]; k < end; k++) {
            int at = NUMBERS * lists[k];
            double rx = x - segments[at + FROM_X];
            double ry = y - segments[at + FROM_Y];
            double ax = segments[at + ALONG_X];
            double ay = segments[at + ALONG_Y];
            double t = rx * ax + ry * ay;
            double p = ax * ry - ay * rx;
            double length = segments[at + LENGTH];
            double over = t < 0 ? t : t > length ? t - length : 0;
            double d = p * p + over * over;
            double tie = 1e-9 * least + 1e-6;
            if (d < least - tie || (d < least + tie && better(p, beside))) {
                least = Math.min(d, least);
                beside = p;
            }
        }
        double distance = Math.sqrt(least);
        return beside > 0 ? distance : -distance;
    }

    private boolean isNear(double x, double y) {
        return x > minX && x < maxX && y > minY && y < maxY;
    }

    private int column(double x) {
        return Math.min(SIDE * SIDE - 1, (int) ((x - minX) * perMicrometre));
    }

    private int row(double y) {
        return Math.min(SIDE * SIDE - 1, (int) ((y - minY) * perMicrometre));
    }

    /** Returns the table to ask for a point. */
    private int[] lists(double x, double y) {
        if (!isNear(x, y)) {
            return large;
        }
        int square = row(y) / SIDE * SIDE + column(x) / SIDE;
        int[] known = small.getAcquire(square);
        return known != null ? known : divided(square);
    }

    private int[] divided(int square) {
        int list = large[square];
        int count = list == 0 ? 0 : large[list];
        int[] candidates = Arrays.copyOfRange(large, list + 1, list + 1 + count);
        int column = square % SIDE * SIDE;
        int row = square / SIDE * SIDE;
        int[] table = new Division(minX + column / perMicrometre, minY + row / perMicrometre, 1 / perMicrometre)
                .of(candidates, count);
        small.setRelease(square, table);
        growth.accept(bytes(table));
        return table;
    }

    private int list(int[] lists, double x, double y) {
        if (!isNear(x, y)) {
            return 0;
        }
        return lists == large
                ? large[row(y) / SIDE * SIDE + column(x) / SIDE]
                : lists[row(y) % SIDE * SIDE + column(x) % SIDE];
    }

    /** Lets go of what was divided on demand; returns how many bytes that were. */
    long shrink() {
        long bytes = 0;
        for (int square = 0; square < small.length(); square++) {
            int[] table = small.getAndSet(square, null);
            bytes += table == null ? 0 : bytes(table);
        }
        return bytes;
    }

    private static long bytes(int[] table) {
        return 16 + 4L * table.length;
    }
}
