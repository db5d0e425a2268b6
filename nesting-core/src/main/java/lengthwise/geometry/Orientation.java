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

    /** Returns the orientation that turns as {@code first} does and then as this one does. */
    public Orientation after(Orientation first) {
        QuarterTurn inner = flipped ? first.turn.inverse() : first.turn;
        return new Orientation(flipped != first.flipped, turn.plus(inner));
    }

    /** Returns the orientation that undoes this one. */
    public Orientation inverse() {
        return new Orientation(flipped, flipped ? turn : turn.inverse());
    }
}
