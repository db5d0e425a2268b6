package lengthwise.model;

import lengthwise.geometry.Point;

/** A straight line between two points of a piece, in micrometres. */
public record Segment(Point from, Point to) {
    public double length() {
        return from.distance(to);
    }
}
