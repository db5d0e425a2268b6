package lengthwise.solver.compaction;

import java.util.Arrays;
import lengthwise.geometry.Box;
import lengthwise.geometry.ConvexSum;
import lengthwise.geometry.Ring;

/**
 * Half-planes that keep the displacement of two bodies out of their no-fit polygon, a convex region of its complement
 * about where the displacement is now.
 *
 * <p>The no-fit polygon is the union of convex sums; for each sum near enough to matter, the displacement must stay
 * beyond one of its edges, that one which it is farthest beyond. A half-plane that also clears other sums serves for
 * them too, so that two bodies facing each other along straight edges make a single row.
 *
 * <p>After Z. Li, V. Milenkovic, <i>Compaction and separation algorithms for non-convex polygons and their
 * applications</i>, EJOR 84, 1995 (their locality heuristic chooses a larger region).
 */
final class HalfPlanes {
    /** How many there are; each is {@code nx·dx + ny·dy ≥ least} for displacements of the second body. */
    int size;

    double[] nx = new double[16];
    double[] ny = new double[16];
    double[] least = new double[16];

    private long[][] sums = new long[64][];
    private double[] slack = new double[64];
    private double[] sumNx = new double[64];
    private double[] sumNy = new double[64];
    private int count;

    /** Finds the half-planes for two bodies that may each be moved by {@code step} along x and y. */
    void find(Body a, Body b, double step) {
        size = 0;
        count = 0;
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double gap = a.gapTo(b);
        double reach = 2 * step + gap;
        if (!near(a.parts().ring().box(), b.parts().ring().box(), dx, dy, reach)) {
            return;
        }
        for (Ring partA : a.parts().parts()) {
            Box boxA = partA.box();
            if (!near(boxA, b.parts().ring().box(), dx, dy, reach)) {
                continue;
            }
            for (Ring partB : b.parts().parts()) {
                if (near(boxA, partB.box(), dx, dy, reach)) {
                    addSum(ConvexSum.of(partA, partB), dx, dy);
                }
            }
        }
        cover(gap, reach);
    }

    private static boolean near(Box a, Box b, double dx, double dy, double reach) {
        return b.minX() + dx < a.maxX() + reach
                && a.minX() < b.maxX() + dx + reach
                && b.minY() + dy < a.maxY() + reach
                && a.minY() < b.maxY() + dy + reach;
    }

    /** Notes a sum with the direction in which the displacement is farthest from it. */
    private void addSum(long[] sum, double dx, double dy) {
        if (count == sums.length) {
            sums = Arrays.copyOf(sums, 2 * count);
            slack = Arrays.copyOf(slack, 2 * count);
            sumNx = Arrays.copyOf(sumNx, 2 * count);
            sumNy = Arrays.copyOf(sumNy, 2 * count);
        }
        double best = -Double.MAX_VALUE;
        int n = sum.length;
        double bestNx = 1;
        double bestNy = 0;
        double nearest = Double.MAX_VALUE;
        double towardsX = 0;
        double towardsY = 0;
        for (int k = 0; k < n; k += 2) {
            int next = k + 2 == n ? 0 : k + 2;
            double ex = sum[next] - sum[k];
            double ey = sum[next + 1] - sum[k + 1];
            double length = Math.sqrt(ex * ex + ey * ey);
            double rx = dx - sum[k];
            double ry = dy - sum[k + 1];
            double beyond = (ey * rx - ex * ry) / length;
            if (beyond > best) {
                best = beyond;
                bestNx = ey / length;
                bestNy = -ex / length;
            }
            double corner = rx * rx + ry * ry;
            if (corner < nearest) {
                nearest = corner;
                towardsX = rx;
                towardsY = ry;
            }
        }
        double toCorner = Math.sqrt(nearest);
        // Beside a corner the straight way from it is farther than any edge: it matters where a gap has to be kept.
        if (best > 0
                && toCorner > best * 1.000001
                && clears(sum, towardsX / toCorner, towardsY / toCorner, dx, dy, toCorner)) {
            best = toCorner;
            bestNx = towardsX / toCorner;
            bestNy = towardsY / toCorner;
        }
        sums[count] = sum;
        slack[count] = best;
        sumNx[count] = bestNx;
        sumNy[count] = bestNy;
        count++;
    }

    /** Says whether the whole sum is at least {@code by} behind the displacement in a direction. */
    private static boolean clears(long[] sum, double nx, double ny, double dx, double dy, double by) {
        return nx * dx + ny * dy - support(sum, nx, ny) > by - 1e-6;
    }

    private static double support(long[] sum, double nx, double ny) {
        double support = -Double.MAX_VALUE;
        for (int k = 0; k < sum.length; k += 2) {
            support = Math.max(support, nx * sum[k] + ny * sum[k + 1]);
        }
        return support;
    }

    /** Chooses half-planes, the tightest first, until every sum that can be reached is behind one. */
    private void cover(double gap, double reach) {
        boolean[] covered = new boolean[count];
        while (true) {
            int tightest = -1;
            for (int s = 0; s < count; s++) {
                if (!covered[s] && slack[s] < 1.4143 * reach && (tightest < 0 || slack[s] < slack[tightest])) {
                    tightest = s;
                }
            }
            if (tightest < 0) {
                return;
            }
            double atX = sumNx[tightest];
            double atY = sumNy[tightest];
            double support = support(sums[tightest], atX, atY);
            for (int s = 0; s < count; s++) {
                covered[s] = covered[s] || s == tightest || support(sums[s], atX, atY) <= support;
            }
            add(atX, atY, support + gap);
        }
    }

    private void add(double x, double y, double bound) {
        if (size == nx.length) {
            nx = Arrays.copyOf(nx, 2 * size);
            ny = Arrays.copyOf(ny, 2 * size);
            least = Arrays.copyOf(least, 2 * size);
        }
        nx[size] = x;
        ny[size] = y;
        least[size] = bound;
        size++;
    }
}
