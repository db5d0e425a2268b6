package lengthwise.model;

import lengthwise.geometry.Point;

/** How far a piece may be turned off its grain, either way. */
public sealed interface GrainTolerance {
    /** What is beyond that is another grain. */
    int MOST_DEGREES = 10;

    /** By an angle, in degrees, above 0. */
    record Degrees(double degrees) implements GrainTolerance {}

    /** By so much at one end of its grain line against the other, above 0. */
    record Deviation(Length over) implements GrainTolerance {}

    /**
     * Returns the angle for a piece, in degrees: a deviation over the line that is drawn on it, or without one over its length
     * along the grain. 3 mm over 300 mm are 0.573° (plane geometry: atan(d/L)).
     */
    default double degreesOf(Piece piece) {
        if (this instanceof Deviation deviation) {
            double line = piece.marks()
                    .grainLine()
                    .map(drawn -> drawn.to().minus(drawn.from()).distance(Point.ORIGIN))
                    .orElse((double) piece.outline().box().width());
            double angle = StrictMath.atan2((double) deviation.over().micrometres(), line);
            return Math.min(MOST_DEGREES, StrictMath.toDegrees(angle));
        }
        return ((Degrees) this).degrees();
    }
}
