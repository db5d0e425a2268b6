package lengthwise.geometry;

/** A grid point, or the displacement from one grid point to another, in micrometres. */
public record Point(long x, long y) {
    public static final Point ORIGIN = new Point(0, 0);

    public Point plus(Point other) {
        return new Point(x + other.x, y + other.y);
    }

    public Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    public Point negated() {
        return new Point(-x, -y);
    }

    /** Returns the z component of this × other: positive when {@code other} lies counter-clockwise (y up) of this. */
    public long cross(Point other) {
        return x * other.y - y * other.x;
    }

    public long dot(Point other) {
        return x * other.x + y * other.y;
    }

    /** Returns the distance to {@code other} in micrometres. */
    public double distance(Point other) {
        return Math.hypot((double) x - other.x, (double) y - other.y);
    }
}
