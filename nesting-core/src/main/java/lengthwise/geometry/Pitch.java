package lengthwise.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * How soon after a shape the next one can lie when both stay at their heights.
 *
 * <p>A displacement is forbidden if it lies nearer than the gap to the Minkowski sum {@code A ⊕ (−B)} of some pair of
 * convex parts. Each sum is convex, so along a horizontal line it forbids one interval, which ends at a circle about a
 * vertex or at an edge moved outwards by the gap.
 */
public final class Pitch {
    /** Against rounding, in micrometres. */
    private static final double HAIR = 1e-3;

    private Pitch() {}

    /**
     * Returns the least x, not below {@code from}, at which {@code b} moved by (x, {@code dy}) neither overlaps {@code a}
     * nor lies nearer to it than {@code gap}. Micrometres; holes are left open.
     */
    public static long least(ConvexParts a, ConvexParts b, long from, long dy, long gap) {
        double x = (double) from;
        List<Interval> beyond = new ArrayList<>();
        List<Ring> partsB = largestFirst(b);
        for (Ring partA : largestFirst(a)) {
            Box boxA = partA.box();
            for (Ring partB : partsB) {
                Box boxB = partB.box();
                boolean meets = boxA.minY() - boxB.maxY() - gap < dy && dy < boxA.maxY() - boxB.minY() + gap;
                if (meets && x < boxA.maxX() - boxB.minX() + gap) {
                    Interval interval = Interval.of(ConvexSum.of(partA, partB), dy, gap);
                    if (interval.left >= x) {
                        beyond.add(interval);
                    }
                    x = interval.endFrom(x);
                }
            }
        }
        beyond.sort(Comparator.comparingDouble(Interval::left));
        for (Interval interval : beyond) {
            x = interval.endFrom(x);
        }
        return Math.max(from, (long) Math.ceil(x - HAIR));
    }

    /** Returns the parts in an order in which the first are likely to forbid what the others would. */
    private static List<Ring> largestFirst(ConvexParts parts) {
        return parts.parts().stream()
                .sorted(Comparator.comparingLong(Ring::doubleArea).reversed())
                .toList();
    }

    private record Interval(double left, double right) {
        /** Returns where a run from x on comes out of the interval. */
        double endFrom(double x) {
            return left < x && x < right ? right : x;
        }

        /** Returns where a horizontal line runs nearer than {@code gap} to a convex polygon that it does not pass by. */
        static Interval of(long[] polygon, long lineY, long gap) {
            double left = Double.MAX_VALUE;
            double right = -Double.MAX_VALUE;
            for (int k = 0; k < polygon.length; k += 2) {
                int next = k + 2 == polygon.length ? 0 : k + 2;
                double x = (double) polygon[k];
                double y = (double) (polygon[k + 1] - lineY);
                if (Math.abs(y) <= gap) {
                    double half = Math.sqrt((double) gap * gap - y * y);
                    left = Math.min(left, x - half);
                    right = Math.max(right, x + half);
                }
                double ex = (double) (polygon[next] - polygon[k]);
                double ey = (double) (polygon[next + 1] - polygon[k + 1]);
                double length = Math.hypot(ex, ey);
                double along = -(y - gap * ex / length) / ey;
                if (along >= 0 && along <= 1) {
                    double at = x + gap * ey / length + along * ex;
                    left = Math.min(left, at);
                    right = Math.max(right, at);
                }
            }
            return new Interval(left, right);
        }
    }
}
