package lengthwise.model;

/** A direction in the fabric. */
public enum Axis {
    /** Parallel to the selvedge. */
    LENGTHWISE,
    /** From selvedge to selvedge. */
    CROSSWISE
}
