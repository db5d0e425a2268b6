package lengthwise.geometry;

/**
 * How a piece is turned: first perhaps tilted by a small angle, then perhaps mirrored about the x axis (y becomes −y), then
 * turned by right angles. Exact on the grid without a tilt; with one every point is rounded to it once.
 *
 * @param tilt about the origin, from +x towards +y, in millionths of a degree; a mirrored piece lies tilted the other way
 */
public record Orientation(boolean flipped, QuarterTurn turn, int tilt) {
    public static final Orientation AS_DRAWN = new Orientation(false, QuarterTurn.NONE);

    /** An orientation without a tilt. */
    public Orientation(boolean flipped, QuarterTurn turn) {
        this(flipped, turn, 0);
    }

    /** Returns the same orientation of a piece that is tilted first. */
    public Orientation tilted(int millionthsOfADegree) {
        return new Orientation(flipped, turn, millionthsOfADegree);
    }

    public boolean isTilted() {
        return tilt != 0;
    }

    public Point apply(Point point) {
        Point first = tilt == 0 ? point : tilted(point);
        return turn.apply(flipped ? new Point(first.x(), -first.y()) : first);
    }

    private Point tilted(Point point) {
        double angle = StrictMath.toRadians(tilt / 1e6);
        double cosine = StrictMath.cos(angle);
        double sine = StrictMath.sin(angle);
        return new Point(
                Math.round(cosine * point.x() - sine * point.y()), Math.round(sine * point.x() + cosine * point.y()));
    }

    public Outline apply(Outline outline) {
        return outline.mapped(this::apply);
    }

    /** Returns the orientation that turns as {@code first} does and then as this one does; neither is tilted. */
    public Orientation after(Orientation first) {
        QuarterTurn inner = flipped ? first.turn.inverse() : first.turn;
        return new Orientation(flipped != first.flipped, turn.plus(inner));
    }

    /** Returns the orientation that undoes this one, which is not tilted. */
    public Orientation inverse() {
        return new Orientation(flipped, flipped ? turn : turn.inverse());
    }
}
