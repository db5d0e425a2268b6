package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;

/**
 * A line that is measured along, in micrometres from its first point. A closed one comes back to that point, which is not
 * repeated.
 */
final class Course {
    private final List<Point> points;
    private final boolean closed;
    private final double[] upTo;

    Course(List<Point> points, boolean closed) {
        this.points = List.copyOf(points);
        this.closed = closed;
        int segments = closed ? points.size() : points.size() - 1;
        upTo = new double[segments + 1];
        for (int i = 0; i < segments; i++) {
            upTo[i + 1] = upTo[i] + segment(i).length();
        }
    }

    static Course of(Ring ring) {
        return new Course(ring.vertices(), true);
    }

    boolean closed() {
        return closed;
    }

    List<Point> points() {
        return points;
    }

    double length() {
        return upTo[upTo.length - 1];
    }

    private Segment segment(int index) {
        return new Segment(points.get(index), points.get((index + 1) % points.size()));
    }

    /** The point of the line nearest to a given one, and how far along the line it lies. */
    record Foot(double along, double distance) {}

    Foot foot(Point point) {
        Foot nearest = new Foot(0, points.get(0).distance(point));
        for (int i = 0; i + 1 < upTo.length; i++) {
            Segment segment = segment(i);
            double length = segment.length();
            if (length == 0) {
                continue;
            }
            double distance = Vectors.distance(segment, point);
            if (distance < nearest.distance) {
                nearest = new Foot(upTo[i] + Math.max(0, Math.min(length, Vectors.along(segment, point))), distance);
            }
        }
        return nearest;
    }

    /** Returns the point so far along the line; a closed one goes on round. */
    Point at(double along) {
        double on = closed ? ((along % length()) + length()) % length() : Math.max(0, Math.min(length(), along));
        int found = Arrays.binarySearch(upTo, on);
        int i = Math.min(found >= 0 ? found : -found - 2, upTo.length - 2);
        Segment segment = segment(i);
        double share = segment.length() == 0 ? 0 : Math.min(1, (on - upTo[i]) / segment.length());
        return new Point(
                segment.from().x()
                        + StrictMath.round(
                                share * (segment.to().x() - segment.from().x())),
                segment.from().y()
                        + StrictMath.round(
                                share * (segment.to().y() - segment.from().y())));
    }

    /** Returns how far along the line each of its points lies. */
    double upTo(int point) {
        return upTo[point];
    }

    /** A part of a line; of a closed one it may run over the first point, and {@code to} is then beyond the length. */
    record Stretch(double from, double to) {
        double length() {
            return to - from;
        }

        double middle() {
            return (from + to) / 2;
        }
    }

    /** Returns the parts between two places: one, or two where the line is closed. */
    List<Stretch> between(double a, double b) {
        double low = Math.min(a, b);
        double high = Math.max(a, b);
        return closed
                ? List.of(new Stretch(low, high), new Stretch(high, low + length()))
                : List.of(new Stretch(low, high));
    }

    /** Says whether a place lies on a part. */
    boolean holds(Stretch stretch, double along) {
        return (stretch.from <= along && along <= stretch.to)
                || (closed && stretch.from <= along + length() && along + length() <= stretch.to);
    }

    /**
     * Returns the line without what lies along a straight edge: an open line from one end of that edge round to the other.
     * What does not run along it stays as it is.
     */
    Course without(Segment edge, double reach) {
        if (!closed) {
            return this;
        }
        int n = points.size();
        List<Boolean> on = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Segment segment = segment(i);
            on.add(Vectors.distance(edge, segment.from()) <= reach && Vectors.distance(edge, segment.to()) <= reach);
        }
        for (int i = 0; i < n; i++) {
            if (on.get(i) && !on.get((i + 1) % n)) {
                List<Point> left = new ArrayList<>(List.of(points.get((i + 1) % n)));
                for (int j = i + 1; j < i + n && !on.get(j % n); j++) {
                    left.add(points.get((j + 1) % n));
                }
                return new Course(left, false);
            }
        }
        return this;
    }
}
