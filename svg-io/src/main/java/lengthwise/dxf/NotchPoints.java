package lengthwise.dxf;

import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/** Makes strokes of notches that a file gives as points on the boundary: straight inwards, of a usual length. */
final class NotchPoints {
    /** Common practice, no source (µm). */
    private static final double STROKE = 5_000;

    /** A point farther from the boundary (µm) is no notch. */
    private static final double REACH = 2_000;

    private NotchPoints() {}

    /** Returns the stroke from a point; empty if it lies on no closed boundary. */
    static Optional<Segment> stroke(Point at, List<Chain> boundaries) {
        double least = REACH;
        Optional<Segment> best = Optional.empty();
        for (Chain boundary : boundaries) {
            List<Point> points = boundary.points();
            for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
                Point from = points.get(j);
                Point edge = points.get(i).minus(from);
                double length = Math.hypot((double) edge.x(), (double) edge.y());
                if (length == 0) {
                    continue;
                }
                double share = Math.max(0, Math.min(1, at.minus(from).dot(edge) / (length * length)));
                Point foot = plus(from, edge.x() * share, edge.y() * share);
                double distance = foot.distance(at);
                if (distance < least) {
                    least = distance;
                    double nx = -edge.y() / length;
                    double ny = edge.x() / length;
                    boolean inwards = covers(points, plus(foot, nx * 200, ny * 200));
                    double sign = inwards ? STROKE : -STROKE;
                    best = Optional.of(new Segment(foot, plus(foot, nx * sign, ny * sign)));
                }
            }
        }
        return best;
    }

    private static Point plus(Point point, double dx, double dy) {
        return new Point(point.x() + StrictMath.round(dx), point.y() + StrictMath.round(dy));
    }

    /** Says whether a point lies inside a closed line, by counting the edges that a ray crosses. */
    static boolean covers(List<Point> ring, Point point) {
        boolean inside = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            Point a = ring.get(i).minus(point);
            Point b = ring.get(j).minus(point);
            if ((a.y() > 0) != (b.y() > 0) && (a.cross(b) > 0) == (b.y() > a.y())) {
                inside = !inside;
            }
        }
        return inside;
    }
}
