package lengthwise.geometry;

/** How a piece is turned: first perhaps mirrored about the x axis (y becomes −y), then turned. Exact on the grid. */
public record Orientation(boolean flipped, QuarterTurn turn) {
    public static final Orientation AS_DRAWN = new Orientation(false, QuarterTurn.NONE);

    public Point apply(Point point) {
        return turn.apply(flipped ? new Point(point.x(), -point.y()) : point);
    }

    public Outline apply(Outline outline) {
        return outline.mapped(this::apply);
    }
}
