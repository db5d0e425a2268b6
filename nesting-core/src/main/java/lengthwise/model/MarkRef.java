package lengthwise.model;

import java.util.Locale;

/**
 * A mark that is drawn on a piece, by its kind and number.
 *
 * @param number counts the marks of its kind from 1, in the order of the drawing
 */
public record MarkRef(Kind kind, int number) {
    /** The marks that have a number. */
    public enum Kind {
        DRILL_HOLE,
        NOTCH
    }

    /** Returns what a maker calls it: "notch 2". */
    public String called() {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ') + " " + number;
    }
}
