package lengthwise.geometry;

/** Where a piece lies: flipped, then turned, then moved by an offset in micrometres. */
public record Pose(Orientation orientation, Point offset) {
    public Point apply(Point point) {
        return orientation.apply(point).plus(offset);
    }

    public Outline apply(Outline outline) {
        return orientation.apply(outline).moved(offset);
    }
}
