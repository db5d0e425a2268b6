package lengthwise.model;

/** How often a piece is cut from one fabric for one garment. */
public record Cut(int count, Manner manner) {
    /** What a count counts. */
    public enum Manner {
        /** Pieces all alike, as drawn. */
        ALIKE,
        /** Pairs: one as drawn and one mirrored. */
        PAIR,
        /** Whole pieces, drawn as a half with a fold edge. */
        ON_FOLD
    }

    public Cut {
        if (count < 1) {
            throw new IllegalArgumentException("A cut count must be at least 1: " + count);
        }
    }

    /** Returns how many pieces that are: two for a pair. */
    public int pieces() {
        return manner == Manner.PAIR ? 2 * count : count;
    }
}
