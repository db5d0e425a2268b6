package lengthwise.geometry;

import java.util.Arrays;

/**
 * The reduced convolution of two rings: few segments that hold all of the boundary of their no-fit polygon. Each is an
 * edge of one ring displaced by a convex vertex of the other whose edges turn past the direction of that edge; what lies
 * inside the Minkowski sum has still to be taken out.
 *
 * <p>Reference: E. Behar, J.-M. Lien, <i>Fast and robust 2D Minkowski sum using reduced convolution</i>, IROS 2011. Two
 * curves of some seventy vertices give a few hundred segments, where the sums of their convex parts have tens of
 * thousands of edges.
 */
final class Convolution {
    private double[] segments = new double[1024];
    private int size;

    private Convolution() {}

    /** Returns the segments of {@code fixed ⊕ (−moving)}, four coordinates each. Both rings are positive. */
    static double[] segments(Ring fixed, Ring moving) {
        Chain a = new Chain(fixed, 1);
        Chain b = new Chain(moving, -1);
        Convolution convolution = new Convolution();
        convolution.addEdges(a, b);
        convolution.addEdges(b, a);
        convolution.addParallels(a, b);
        return Arrays.copyOf(convolution.segments, convolution.size);
    }

    /** The vertices of a ring times a sign, the edge that leaves each, and whether the ring is convex there. */
    private static final class Chain {
        final int size;
        final long[] x;
        final long[] y;
        final long[] edgeX;
        final long[] edgeY;
        final boolean[] convex;

        Chain(Ring ring, long sign) {
            size = ring.size();
            x = new long[size];
            y = new long[size];
            edgeX = new long[size];
            edgeY = new long[size];
            convex = new boolean[size];
            for (int i = 0; i < size; i++) {
                int next = i + 1 == size ? 0 : i + 1;
                x[i] = sign * ring.x(i);
                y[i] = sign * ring.y(i);
                edgeX[i] = sign * ring.x(next) - x[i];
                edgeY[i] = sign * ring.y(next) - y[i];
            }
            for (int i = 0; i < size; i++) {
                int before = previous(i);
                convex[i] = edgeX[before] * edgeY[i] - edgeY[before] * edgeX[i] > 0;
            }
        }

        int previous(int i) {
            return i == 0 ? size - 1 : i - 1;
        }

        int next(int i) {
            return i + 1 == size ? 0 : i + 1;
        }
    }

    /** Adds the edges of one ring at the convex vertices of the other that turn past them. */
    private void addEdges(Chain edges, Chain vertices) {
        for (int j = 0; j < vertices.size; j++) {
            if (vertices.convex[j]) {
                int before = vertices.previous(j);
                long beforeX = vertices.edgeX[before];
                long beforeY = vertices.edgeY[before];
                long afterX = vertices.edgeX[j];
                long afterY = vertices.edgeY[j];
                for (int i = 0; i < edges.size; i++) {
                    long edgeX = edges.edgeX[i];
                    long edgeY = edges.edgeY[i];
                    if (beforeX * edgeY - beforeY * edgeX > 0 && edgeX * afterY - edgeY * afterX > 0) {
                        add(edges.x[i] + vertices.x[j], edges.y[i] + vertices.y[j], edgeX, edgeY);
                    }
                }
            }
        }
    }

    /** Adds edges of the two rings that run the same way as one segment, one behind the other. */
    private void addParallels(Chain a, Chain b) {
        for (int i = 0; i < a.size; i++) {
            boolean convex = a.convex[i] || a.convex[a.next(i)];
            for (int j = 0; j < b.size; j++) {
                if (a.edgeX[i] * b.edgeY[j] == a.edgeY[i] * b.edgeX[j]
                        && a.edgeX[i] * b.edgeX[j] + a.edgeY[i] * b.edgeY[j] > 0
                        && (convex || b.convex[j] || b.convex[b.next(j)])) {
                    add(a.x[i] + b.x[j], a.y[i] + b.y[j], a.edgeX[i] + b.edgeX[j], a.edgeY[i] + b.edgeY[j]);
                }
            }
        }
    }

    private void add(long x, long y, long edgeX, long edgeY) {
        if (size == segments.length) {
            segments = Arrays.copyOf(segments, 2 * size);
        }
        segments[size++] = (double) x;
        segments[size++] = (double) y;
        segments[size++] = (double) (x + edgeX);
        segments[size++] = (double) (y + edgeY);
    }
}
