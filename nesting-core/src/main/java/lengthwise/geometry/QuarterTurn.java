package lengthwise.geometry;

/** A turn by a whole number of right angles, from +x towards +y. Exact on the grid. */
public enum QuarterTurn {
    NONE(0),
    QUARTER(1),
    HALF(2),
    THREE_QUARTERS(3);

    private final int quarters;

    QuarterTurn(int quarters) {
        this.quarters = quarters;
    }

    /** Returns the turn by a number of right angles, which may be negative or above three. */
    public static QuarterTurn of(int quarters) {
        return switch (Math.floorMod(quarters, 4)) {
            case 0 -> NONE;
            case 1 -> QUARTER;
            case 2 -> HALF;
            default -> THREE_QUARTERS;
        };
    }

    /** Returns the number of right angles, 0 to 3. */
    public int quarters() {
        return quarters;
    }

    public Point apply(Point point) {
        return switch (this) {
            case NONE -> point;
            case QUARTER -> new Point(-point.y(), point.x());
            case HALF -> new Point(-point.x(), -point.y());
            case THREE_QUARTERS -> new Point(point.y(), -point.x());
        };
    }

    /** Returns this turn followed by another. */
    public QuarterTurn plus(QuarterTurn other) {
        return of(quarters + other.quarters);
    }

    public QuarterTurn inverse() {
        return of(-quarters);
    }

    public int degrees() {
        return 90 * quarters;
    }
}
