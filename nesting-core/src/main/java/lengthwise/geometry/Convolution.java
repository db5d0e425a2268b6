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
        Ring reflected = moving.mapped(Point::negated);
        Convolution convolution = new Convolution();
        convolution.addEdges(fixed, reflected);
        convolution.addEdges(reflected, fixed);
        convolution.addParallels(fixed, reflected);
        return Arrays.copyOf(convolution.segments, convolution.size);
    }

    /** Adds the edges of one ring at the convex vertices of the other that turn past them. */
    private void addEdges(Ring edges, Ring vertices) {
        for (int j = 0; j < vertices.size(); j++) {
            if (isConvex(vertices, j)) {
                Point before = vertices.edge(previous(vertices, j));
                Point after = vertices.edge(j);
                for (int i = 0; i < edges.size(); i++) {
                    Point edge = edges.edge(i);
                    if (before.cross(edge) > 0 && edge.cross(after) > 0) {
                        add(edges.x(i) + vertices.x(j), edges.y(i) + vertices.y(j), edge);
                    }
                }
            }
        }
    }

    /** Adds edges of the two rings that run the same way as one segment, one behind the other. */
    private void addParallels(Ring a, Ring b) {
        for (int i = 0; i < a.size(); i++) {
            Point edge = a.edge(i);
            boolean convex = isConvex(a, i) || isConvex(a, (i + 1) % a.size());
            for (int j = 0; j < b.size(); j++) {
                Point other = b.edge(j);
                if (edge.cross(other) == 0
                        && edge.dot(other) > 0
                        && (convex || isConvex(b, j) || isConvex(b, (j + 1) % b.size()))) {
                    add(a.x(i) + b.x(j), a.y(i) + b.y(j), edge.plus(other));
                }
            }
        }
    }

    private static boolean isConvex(Ring ring, int vertex) {
        return ring.edge(previous(ring, vertex)).cross(ring.edge(vertex)) > 0;
    }

    private static int previous(Ring ring, int vertex) {
        return vertex == 0 ? ring.size() - 1 : vertex - 1;
    }

    private void add(long x, long y, Point edge) {
        if (size == segments.length) {
            segments = Arrays.copyOf(segments, 2 * size);
        }
        segments[size++] = (double) x;
        segments[size++] = (double) y;
        segments[size++] = (double) (x + edge.x());
        segments[size++] = (double) (y + edge.y());
    }
}
