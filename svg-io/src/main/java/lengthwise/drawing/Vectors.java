package lengthwise.drawing;

import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/** Where points and lines lie to each other, in micrometres and double precision: for judging what a mark means. */
final class Vectors {
    private Vectors() {}

    /** Returns how far a point lies along a line, from its start in its direction. */
    static double along(Segment line, Point point) {
        Point direction = line.to().minus(line.from());
        return point.minus(line.from()).dot(direction) / line.length();
    }

    /** Returns how far a point lies off a line that goes on at both ends; positive on its left with y up. */
    static double across(Segment line, Point point) {
        Point direction = line.to().minus(line.from());
        return direction.cross(point.minus(line.from())) / line.length();
    }

    /** Returns the distance of a point from a line with ends. */
    static double distance(Segment line, Point point) {
        double along = along(line, point);
        if (along < 0) {
            return point.distance(line.from());
        }
        return along > line.length() ? point.distance(line.to()) : Math.abs(across(line, point));
    }

    /** Returns the angle between two lines whichever way they run, in degrees from 0 to 90. */
    static double degreesBetween(Segment a, Segment b) {
        Point u = a.to().minus(a.from());
        Point v = b.to().minus(b.from());
        double degrees = Math.toDegrees(StrictMath.atan2(Math.abs((double) u.cross(v)), Math.abs((double) u.dot(v))));
        return Math.min(degrees, 180 - degrees);
    }

    /** Returns how much of a line lies beside another, in micrometres along the other. */
    static double overlap(Segment line, Segment other) {
        double a = along(line, other.from());
        double b = along(line, other.to());
        return Math.max(0, Math.min(line.length(), Math.max(a, b)) - Math.max(0, Math.min(a, b)));
    }

    static Point middle(Segment line) {
        return new Point(
                (line.from().x() + line.to().x()) / 2,
                (line.from().y() + line.to().y()) / 2);
    }
}
