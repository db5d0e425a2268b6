package lengthwise.drawing;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/**
 * Finds a place where a ring crosses or touches itself, if there is one. Exact.
 *
 * <p>Method: edges sorted by their left end are swept; each is tested with those before it whose right end is not yet
 * passed. O(n log n) for outlines as drawn, O(n²) at worst, which {@link Effort} bounds.
 */
final class SelfCrossing {
    private SelfCrossing() {}

    static Optional<Point> of(Ring ring, Effort effort) throws DrawingException {
        int n = ring.size();
        int[] order = IntStream.range(0, n)
                .boxed()
                .sorted(Comparator.comparingLong(i -> left(ring, i)))
                .mapToInt(Integer::intValue)
                .toArray();
        long[] right = IntStream.range(0, n).mapToLong(i -> right(ring, i)).toArray();
        long[] low = IntStream.range(0, n)
                .mapToLong(i -> Math.min(ring.y(i), ring.y((i + 1) % n)))
                .toArray();
        long[] high = IntStream.range(0, n)
                .mapToLong(i -> Math.max(ring.y(i), ring.y((i + 1) % n)))
                .toArray();
        int[] active = new int[n];
        int count = 0;
        for (int i : order) {
            long from = left(ring, i);
            effort.spend(count);
            int kept = 0;
            for (int k = 0; k < count; k++) {
                int j = active[k];
                if (right[j] < from) {
                    continue;
                }
                active[kept++] = j;
                if (high[j] >= low[i] && high[i] >= low[j]) {
                    Optional<Point> place = meeting(ring, i, j);
                    if (place.isPresent()) {
                        return place;
                    }
                }
            }
            count = kept;
            active[count++] = i;
        }
        return Optional.empty();
    }

    private static long left(Ring ring, int edge) {
        return Math.min(ring.x(edge), ring.x((edge + 1) % ring.size()));
    }

    private static long right(Ring ring, int edge) {
        return Math.max(ring.x(edge), ring.x((edge + 1) % ring.size()));
    }

    /** Returns a point, to the micrometre, that two edges share, if it is not the vertex that joins neighbours. */
    private static Optional<Point> meeting(Ring ring, int i, int j) {
        int n = ring.size();
        Point a = ring.vertex(i);
        Point b = ring.vertex((i + 1) % n);
        Point c = ring.vertex(j);
        Point d = ring.vertex((j + 1) % n);
        if ((i + 1) % n == j) {
            return folds(a, b, d) ? Optional.of(b) : Optional.empty();
        }
        if ((j + 1) % n == i) {
            return folds(c, a, b) ? Optional.of(a) : Optional.empty();
        }
        int abc = side(a, b, c);
        int abd = side(a, b, d);
        int cda = side(c, d, a);
        int cdb = side(c, d, b);
        if (abc == 0 && within(a, b, c)) {
            return Optional.of(c);
        }
        if (abd == 0 && within(a, b, d)) {
            return Optional.of(d);
        }
        if (cda == 0 && within(c, d, a)) {
            return Optional.of(a);
        }
        if (cdb == 0 && within(c, d, b)) {
            return Optional.of(b);
        }
        if (abc * abd >= 0 || cda * cdb >= 0) {
            return Optional.empty();
        }
        Point along = b.minus(a);
        Point across = d.minus(c);
        double share = (double) c.minus(a).cross(across) / along.cross(across);
        return Optional.of(a.plus(new Point(StrictMath.round(share * along.x()), StrictMath.round(share * along.y()))));
    }

    /** Says whether the edge after {@code corner} runs back over the edge before it. */
    private static boolean folds(Point before, Point corner, Point after) {
        Point there = corner.minus(before);
        Point on = after.minus(corner);
        return there.cross(on) == 0 && there.dot(on) < 0;
    }

    private static int side(Point a, Point b, Point c) {
        return Long.signum(b.minus(a).cross(c.minus(a)));
    }

    private static boolean within(Point a, Point b, Point c) {
        return Math.min(a.x(), b.x()) <= c.x()
                && c.x() <= Math.max(a.x(), b.x())
                && Math.min(a.y(), b.y()) <= c.y()
                && c.y() <= Math.max(a.y(), b.y());
    }
}
