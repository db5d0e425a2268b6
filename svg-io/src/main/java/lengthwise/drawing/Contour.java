package lengthwise.drawing;

import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/** A closed line of a shape, as a ring with its direction as drawn. */
final class Contour {
    private final DrawnShape shape;
    private final Ring ring;
    private final Box box;
    private final Optional<String> size;

    Contour(DrawnShape shape, Ring ring, Optional<String> size) {
        this.shape = shape;
        this.ring = ring;
        this.box = ring.box();
        this.size = size;
    }

    DrawnShape shape() {
        return shape;
    }

    Ring ring() {
        return ring;
    }

    Box box() {
        return box;
    }

    /** Returns the size whose layer holds it. */
    Optional<String> size() {
        return size;
    }

    /** Returns the area it encloses, in mm². */
    double area() {
        return Math.abs(ring.doubleArea()) / 2e6;
    }

    boolean runsClockwise() {
        return ring.doubleArea() > 0;
    }

    /** Says whether a point lies inside or on the line. */
    boolean covers(Point point) {
        if (!box.contains(point)) {
            return false;
        }
        boolean inside = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            Point a = ring.vertex(j);
            Point b = ring.vertex(i);
            long side = b.minus(a).cross(point.minus(a));
            if (side == 0 && point.minus(a).dot(point.minus(b)) <= 0) {
                return true;
            }
            if ((a.y() > point.y()) != (b.y() > point.y()) && (side > 0) == (b.y() > a.y())) {
                inside = !inside;
            }
        }
        return inside;
    }

    /** Says whether another contour lies inside this one; it may touch it. */
    boolean covers(Contour other, Effort effort) throws DrawingException {
        if (!box.contains(other.box) || other.area() > area()) {
            return false;
        }
        for (int i = 0; i < other.ring.size(); i++) {
            effort.spend(ring.size());
            if (!covers(other.ring.vertex(i))) {
                return false;
            }
        }
        return true;
    }

    /** The point of the line nearest to a given one. */
    record Foot(Point at, int edge, double distance) {}

    Foot nearest(Point point) {
        Foot best = new Foot(ring.vertex(0), 0, Double.MAX_VALUE);
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.vertex(i);
            Point edge = ring.edge(i);
            Point to = point.minus(a);
            double share = Math.max(0, Math.min(1, (double) to.dot(edge) / Math.max(1, edge.dot(edge))));
            double dx = to.x() - share * edge.x();
            double dy = to.y() - share * edge.y();
            double distance = Math.hypot(dx, dy);
            if (distance < best.distance) {
                Point at = new Point(
                        a.x() + StrictMath.round(share * edge.x()), a.y() + StrictMath.round(share * edge.y()));
                best = new Foot(at, i, distance);
            }
        }
        return best;
    }

    double perimeter() {
        double sum = 0;
        for (int i = 0; i < ring.size(); i++) {
            sum += Math.hypot((double) ring.edge(i).x(), (double) ring.edge(i).y());
        }
        return sum;
    }

    /** Says whether it is an upright rectangle. */
    boolean isUprightRectangle() {
        double boxArea = (double) box.width() * box.height() / 1e6;
        return ring.size() <= 8 && Math.abs(area() - boxArea) <= 1e-4 * boxArea;
    }

    /** Says whether both are the same line, wherever it begins and whichever way it runs. */
    boolean coincides(Contour other) {
        return near(box.minX(), other.box.minX())
                && near(box.minY(), other.box.minY())
                && near(box.maxX(), other.box.maxX())
                && near(box.maxY(), other.box.maxY())
                && Math.abs(area() - other.area()) <= 1e-4 * area()
                && samplesNear(other)
                && other.samplesNear(this);
    }

    private static boolean near(long a, long b) {
        return Math.abs(a - b) <= 50;
    }

    private boolean samplesNear(Contour other) {
        int step = Math.max(1, ring.size() / 100);
        for (int i = 0; i < ring.size(); i += step) {
            if (other.nearest(ring.vertex(i)).distance > 50) {
                return false;
            }
        }
        return true;
    }
}
