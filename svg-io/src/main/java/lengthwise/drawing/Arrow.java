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
}
