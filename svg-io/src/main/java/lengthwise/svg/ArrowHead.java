package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import java.util.OptionalDouble;
import lengthwise.geometry.Point;

/**
 * Whether what a {@code marker} draws is an arrow head, and which way it points in its own frame.
 *
 * @param tip +1 if it points along its x axis, −1 if against it, 0 if it is no arrow head (a dot, a bar)
 */
record ArrowHead(int tip, String orient) {
    /** An arrow head is narrow where it points and wide behind: this share of its length counts as an end. */
    private static final double END = 0.15;

    static ArrowHead of(List<Point> points, String orient) {
        long min = points.stream().mapToLong(Point::x).min().orElse(0);
        long max = points.stream().mapToLong(Point::x).max().orElse(0);
        double end = (max - min) * END;
        double front = spread(points.stream().filter(p -> p.x() >= max - end).toList());
        double back = spread(points.stream().filter(p -> p.x() <= min + end).toList());
        int tip = front < back / 2 ? 1 : back < front / 2 ? -1 : 0;
        return new ArrowHead(max > min ? tip : 0, orient.strip());
    }

    private static double spread(List<Point> points) {
        return points.stream().mapToDouble(Point::y).max().orElse(0)
                - points.stream().mapToDouble(Point::y).min().orElse(0);
    }

    /** Says whether the head, set at an end of a line, points out of it. */
    boolean pointsOut(List<Point> line, boolean atEnd, AffineTransform toPage) {
        boolean reversedAtStart = orient.equals("auto-start-reverse");
        if (orient.equals("auto") || reversedAtStart) {
            return (atEnd || reversedAtStart) ? tip > 0 : tip < 0;
        }
        double radians = Math.toRadians(SvgAngle.degrees(orient).orElse(0));
        Point2D pointing = toPage.deltaTransform(
                new Point2D.Double(tip * StrictMath.cos(radians), tip * StrictMath.sin(radians)), null);
        Point outward = atEnd
                ? line.get(line.size() - 1).minus(line.get(line.size() - 2))
                : line.get(0).minus(line.get(1));
        double dot = pointing.getX() * outward.x() + pointing.getY() * outward.y();
        double lengths = pointing.distance(0, 0) * Math.hypot((double) outward.x(), (double) outward.y());
        return lengths > 0 && dot > 0.7 * lengths;
    }

    /** An angle of an attribute, in degrees unless it says otherwise. */
    private static final class SvgAngle {
        static OptionalDouble degrees(String text) {
            OptionalDouble number = new Scanner(text).number();
            if (number.isEmpty()) {
                return number;
            }
            double factor = text.endsWith("rad") && !text.endsWith("grad")
                    ? 180 / Math.PI
                    : text.endsWith("grad") ? 0.9 : text.endsWith("turn") ? 360 : 1;
            return OptionalDouble.of(number.getAsDouble() * factor);
        }
    }
}
