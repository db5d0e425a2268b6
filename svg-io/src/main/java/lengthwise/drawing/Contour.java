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
            long fromAx = point.x() - ring.x(j);
            long fromAy = point.y() - ring.y(j);
            long fromBx = point.x() - ring.x(i);
            long fromBy = point.y() - ring.y(i);
            long side = (fromAx - fromBx) * fromAy - (fromAy - fromBy) * fromAx;
            if (side == 0 && fromAx * fromBx + fromAy * fromBy <= 0) {
                return true;
            }
            if ((fromAy < 0) != (fromBy < 0) && (side > 0) == (fromBy < fromAy)) {
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
        int nearest = 0;
        double shareOfNearest = 0;
        double least = Double.MAX_VALUE;
        for (int i = 0, next = 1; i < ring.size(); i++, next = i + 1 == ring.size() ? 0 : i + 1) {
            double edgeX = (double) (ring.x(next) - ring.x(i));
            double edgeY = (double) (ring.y(next) - ring.y(i));
            double toX = (double) (point.x() - ring.x(i));
            double toY = (double) (point.y() - ring.y(i));
            double along = (toX * edgeX + toY * edgeY) / Math.max(1, edgeX * edgeX + edgeY * edgeY);
            double share = Math.max(0, Math.min(1, along));
            double dx = toX - share * edgeX;
            double dy = toY - share * edgeY;
            double square = dx * dx + dy * dy;
            if (square < least) {
                least = square;
                nearest = i;
                shareOfNearest = share;
            }
        }
        Point edge = ring.edge(nearest);
        Point at = new Point(
                ring.x(nearest) + StrictMath.round(shareOfNearest * edge.x()),
                ring.y(nearest) + StrictMath.round(shareOfNearest * edge.y()));
        return new Foot(at, nearest, Math.sqrt(least));
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
