package lengthwise.model;

import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/** Says whether two outlines are the same but for where they lie and which vertex comes first. */
public final class Congruence {
    /** Symmetric pieces are drawn by hand: two vertices this near count as the same (µm). */
    private static final long DRAWING_TOLERANCE = 50;

    private Congruence() {}

    /**
     * Says whether a displacement takes one outline to the other, vertex by vertex within 0.05 mm.
     *
     */
    public static boolean byTranslation(Outline a, Outline b) {
        if (a.holes().size() != b.holes().size() || !byTranslation(a.shell(), b.shell())) {
            return false;
        }
        Point by = corner(b.shell()).minus(corner(a.shell()));
        return a.holes().stream()
                .allMatch(hole -> b.holes().stream().anyMatch(other -> sameRing(hole.moved(by), other)));
    }

    private static boolean byTranslation(Ring a, Ring b) {
        return sameRing(a.moved(corner(b).minus(corner(a))), b);
    }

    private static Point corner(Ring ring) {
        return new Point(ring.box().minX(), ring.box().minY());
    }

    private static boolean sameRing(Ring a, Ring b) {
        return everyVertexNear(a, b) && everyVertexNear(b, a);
    }

    private static boolean everyVertexNear(Ring a, Ring b) {
        for (int i = 0; i < a.size(); i++) {
            if (distanceToBoundary(a.vertex(i), b) > DRAWING_TOLERANCE) {
                return false;
            }
        }
        return true;
    }

    private static double distanceToBoundary(Point point, Ring ring) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < ring.size(); i++) {
            Point from = ring.vertex(i);
            Point edge = ring.edge(i);
            Point to = point.minus(from);
            double along = Math.max(0, Math.min(1, to.dot(edge) / Math.max(1.0, (double) edge.dot(edge))));
            least = Math.min(least, Math.hypot(to.x() - along * edge.x(), to.y() - along * edge.y()));
        }
        return least;
    }
}
