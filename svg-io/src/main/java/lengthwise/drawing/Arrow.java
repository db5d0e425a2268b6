package lengthwise.drawing;

import lengthwise.model.Segment;

/**
 * A grain line or stretch arrow as drawn on a piece; what it means is said by the maker.
 *
 * @param line from tail to head; where there is no head, or one at both ends, as drawn
 */
public record Arrow(Segment line, Heads heads) {
    /** At how many ends the line has an arrow head. */
    public enum Heads {
        NONE,
        ONE,
        BOTH
    }

    /** Returns the direction from tail to head, in degrees from +x, counter-clockwise as seen: from 0 below 360. */
    public double degrees() {
        double dx = (double) line.to().x() - line.from().x();
        double dy = (double) line.to().y() - line.from().y();
        double degrees = Math.toDegrees(StrictMath.atan2(-dy, dx));
        return degrees < 0 ? degrees + 360 : degrees + 0.0;
    }
}
