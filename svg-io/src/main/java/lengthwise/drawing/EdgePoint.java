package lengthwise.drawing;

import java.util.Locale;

/**
 * A point on the outline of a drawn piece, by its kind and number.
 *
 * @param number counts from 1: notches in the order of the drawing, corners as {@link PieceEdges} numbers them
 */
public record EdgePoint(Kind kind, int number) {
    /** What points have a number. */
    public enum Kind {
        CORNER,
        NOTCH
    }

    /** Returns what a maker calls it: "corner 2". */
    public String called() {
        return kind.name().toLowerCase(Locale.ROOT) + " " + number;
    }
}
