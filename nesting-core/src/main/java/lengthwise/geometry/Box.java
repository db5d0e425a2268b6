package lengthwise.geometry;

import java.util.Optional;
import java.util.stream.Stream;

/** An upright rectangle, closed on all sides, in micrometres. */
public record Box(long minX, long minY, long maxX, long maxY) {
    public Box {
        if (minX > maxX || minY > maxY) {
            throw new IllegalArgumentException(
                    "A box must not end before it begins: x %d to %d, y %d to %d".formatted(minX, maxX, minY, maxY));
        }
    }

    /** Returns the smallest box that holds all of some points; empty without any. */
    public static Optional<Box> around(Stream<Point> points) {
        return points.map(point -> new Box(point.x(), point.y(), point.x(), point.y()))
                .reduce(Box::union);
    }

    public long width() {
        return maxX - minX;
    }

    public long height() {
        return maxY - minY;
    }

    public boolean contains(Box other) {
        return minX <= other.minX && minY <= other.minY && maxX >= other.maxX && maxY >= other.maxY;
    }

    public boolean contains(Point point) {
        return minX <= point.x() && point.x() <= maxX && minY <= point.y() && point.y() <= maxY;
    }

    /** Says whether the two open rectangles share a point. Touching boxes do not. */
    public boolean overlaps(Box other) {
        return minX < other.maxX && other.minX < maxX && minY < other.maxY && other.minY < maxY;
    }

    public Box moved(Point by) {
        return new Box(minX + by.x(), minY + by.y(), maxX + by.x(), maxY + by.y());
    }

    /** Returns what the two rectangles share; empty unless their insides meet. */
    public Optional<Box> common(Box other) {
        return overlaps(other)
                ? Optional.of(new Box(
                        Math.max(minX, other.minX),
                        Math.max(minY, other.minY),
                        Math.min(maxX, other.maxX),
                        Math.min(maxY, other.maxY)))
                : Optional.empty();
    }

    public Box union(Box other) {
        return new Box(
                Math.min(minX, other.minX),
                Math.min(minY, other.minY),
                Math.max(maxX, other.maxX),
                Math.max(maxY, other.maxY));
    }

    public Ring ring() {
        return Ring.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
    }
}
