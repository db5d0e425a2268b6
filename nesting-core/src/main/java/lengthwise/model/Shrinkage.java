package lengthwise.model;

/**
 * How much the fabric shrinks, as fractions (0.03 for 3 %) of its length before washing, and what is done about it. It
 * is handled once.
 */
public record Shrinkage(double lengthwise, double crosswise, Handling handled) {
    public static final Shrinkage NONE = new Shrinkage(0, 0, Handling.IN_PATTERN);

    /** Where shrinkage is taken care of. */
    public enum Handling {
        /** The cloth is washed before cutting: buy more, the cloth is narrower, the repeat smaller; pieces untouched. */
        PRE_WASH,
        /** The pieces are cut larger by 1/(1 − s), after turning. */
        ADD_TO_PIECES,
        /** The pattern already allows for it. */
        IN_PATTERN
    }

    public Shrinkage {
        if (!(lengthwise >= 0 && lengthwise < 0.5 && crosswise >= 0 && crosswise < 0.5)) {
            throw new IllegalArgumentException(
                    "Shrinkage must be from 0 to below 0.5 (50 %%): %s lengthwise, %s crosswise"
                            .formatted(lengthwise, crosswise));
        }
    }

    /** Returns the share of an axis that is left after washing. */
    public double kept(Axis axis) {
        return 1 - (axis == Axis.LENGTHWISE ? lengthwise : crosswise);
    }
}
