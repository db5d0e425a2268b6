package lengthwise.model;

/**
 * How the fabric lies on the table, and what is lost at each end of a ply.
 *
 * @param layers how many one cut goes through; the form gives it, but for plies
 * @param plyRun which end of the cloth each ply begins with; plies that lie face up all run the same way
 */
public record Spread(Form form, Length endAllowance, int layers, PlyRun plyRun) {
    /** The ways of spreading. */
    public enum Form {
        SINGLE_LAYER,
        /** Folded parallel to the selvedges: two layers face to face, half as wide, the fold at y = 0. */
        FOLD_LENGTHWISE,
        /** Folded across: two layers face to face, as wide as the cloth, the fold at x = 0. */
        FOLD_CROSSWISE,
        /** Both selvedges folded to the middle: two layers, half as wide, folds at y = 0 and at the far side. */
        SELVEDGES_TO_MIDDLE,
        /** Knitted round: two layers, a fold at y = 0 and one at the far side; its width is measured as it lies flat. */
        TUBE,
        /** Plies of the same length, all right side up. */
        PLIES_FACE_UP,
        /** Plies of the same length, by turns right side down and up: an even number, so that they make pairs. */
        PLIES_FACE_TO_FACE
    }

    /** Which end of the cloth lies at the start of each ply. */
    public enum PlyRun {
        /** Each ply is cut off and begins where the one below it began. */
        SAME_WAY,
        /** The cloth runs to and fro: every second ply begins at the other end of the cloth. */
        TO_AND_FRO
    }

    public Spread {
        boolean layersFit = switch (form) {
            case SINGLE_LAYER -> layers == 1;
            case FOLD_LENGTHWISE, FOLD_CROSSWISE, SELVEDGES_TO_MIDDLE, TUBE -> layers == 2;
            case PLIES_FACE_UP -> layers >= 1;
            case PLIES_FACE_TO_FACE -> layers >= 2 && layers % 2 == 0;
        };
        if (!layersFit) {
            throw new IllegalArgumentException("%d layers do not go with %s.".formatted(layers, form));
        }
        if (plyRun == PlyRun.TO_AND_FRO && form != Form.PLIES_FACE_TO_FACE) {
            throw new IllegalArgumentException("Only plies face to face run to and fro.");
        }
    }

    /** A spread of one or two layers, as its form says. */
    public Spread(Form form, Length endAllowance) {
        this(form, endAllowance, form == Form.SINGLE_LAYER ? 1 : 2, PlyRun.SAME_WAY);
    }

    /** Says whether every second layer lies right side down, so that a cut there gives the mirror image. */
    public boolean mirrors() {
        return form != Form.SINGLE_LAYER && form != Form.PLIES_FACE_UP;
    }

    /** Says whether the up end of the cloth points to the other end in every second layer. */
    public boolean turnsUpEnd() {
        return form == Form.FOLD_CROSSWISE || plyRun == PlyRun.TO_AND_FRO;
    }

    /** Returns how often the length of the marker is needed of the cloth. */
    public int lengths() {
        return switch (form) {
            case SINGLE_LAYER, FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE, TUBE -> 1;
            case FOLD_CROSSWISE -> 2;
            case PLIES_FACE_UP, PLIES_FACE_TO_FACE -> layers;
        };
    }

    /** Says whether a half piece may lie on a fold that runs along the cloth. */
    public boolean isFoldedLengthwise() {
        return form == Form.FOLD_LENGTHWISE || isFoldedTwice();
    }

    /** Says whether a fold runs along the far side too. */
    public boolean isFoldedTwice() {
        return form == Form.SELVEDGES_TO_MIDDLE || form == Form.TUBE;
    }

    /** Says whether the laid cloth ends in a fold at its start, where nothing is lost. */
    public boolean isFoldedCrosswise() {
        return form == Form.FOLD_CROSSWISE;
    }

    /** Returns the allowance at the start of the marker: none on a fold. */
    public Length startAllowance() {
        return isFoldedCrosswise() ? Length.ZERO : endAllowance;
    }

    /** Returns the length of table that a marker of some length takes. */
    public Length onTable(Length marker) {
        return startAllowance().plus(marker).plus(endAllowance);
    }
}
