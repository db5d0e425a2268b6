package lengthwise.model;

import java.util.Locale;

/** How a way of spreading is said to the maker. */
public final class SpreadWords {
    private SpreadWords() {}

    /** Returns the word of the job file, such as fold-lengthwise. */
    public static String key(Spread spread) {
        return spread.form().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Returns how the cloth is laid, such as "folded lengthwise". */
    public static String laid(Spread spread) {
        return switch (spread.form()) {
            case SINGLE_LAYER -> "in a single layer";
            case FOLD_LENGTHWISE -> "folded lengthwise";
            case FOLD_CROSSWISE -> "folded crosswise";
            case SELVEDGES_TO_MIDDLE -> "with both selvedges folded to the middle";
            case TUBE -> "as a tube";
            case PLIES_FACE_UP -> "in " + spread.layers() + " plies face up";
            case PLIES_FACE_TO_FACE -> "in " + spread.layers() + " plies face to face";
        };
    }

    /** Returns what is said after a width, such as ", folded"; nothing for cloth in its full width. */
    public static String afterWidth(Spread spread) {
        return switch (spread.form()) {
            case SINGLE_LAYER, FOLD_CROSSWISE, PLIES_FACE_UP, PLIES_FACE_TO_FACE -> "";
            case FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE -> ", folded";
            case TUBE -> ", as a flat tube";
        };
    }

    /** Returns a heading in capitals. */
    public static String heading(Spread spread) {
        return switch (spread.form()) {
            case SINGLE_LAYER -> "RIGHT SIDE UP";
            case FOLD_LENGTHWISE -> "FOLDED, RIGHT SIDES TOGETHER";
            case FOLD_CROSSWISE -> "FOLDED CROSSWISE, RIGHT SIDES TOGETHER";
            case SELVEDGES_TO_MIDDLE -> "SELVEDGES FOLDED TO THE MIDDLE";
            case TUBE -> "TUBE, LAID FLAT";
            case PLIES_FACE_UP -> spread.layers() + " PLIES, RIGHT SIDES UP";
            case PLIES_FACE_TO_FACE -> spread.layers() + " PLIES, FACE TO FACE";
        };
    }

    /** Returns how the layers lie and what a cut gives, in a sentence or two. */
    public static String layers(Spread spread) {
        return switch (spread.form()) {
            case SINGLE_LAYER -> "One layer. The right side of the fabric faces you.";
            case FOLD_LENGTHWISE ->
                "The lower layer lies right side up. Each cut goes through both layers; nothing is cut on the"
                        + " fold.";
            case FOLD_CROSSWISE ->
                "The lower layer lies right side up, its start at the fold. Each cut goes through both layers; nothing"
                        + " is cut on the fold.";
            case SELVEDGES_TO_MIDDLE ->
                "A fold on both sides, the selvedges in the middle of the upper layer. The lower layer lies right side"
                        + " up. Each cut goes through both layers; nothing is cut on a fold.";
            case TUBE -> "A fold on both sides. Each cut goes through both layers; nothing is cut on a fold.";
            case PLIES_FACE_UP ->
                "The right side of every ply faces you, and all begin at the same end of the cloth. Each cut gives "
                        + spread.layers()
                        + " alike.";
            case PLIES_FACE_TO_FACE ->
                "The first ply lies right side up, the next right side down on it, and so on%s. Each cut gives %s."
                        .formatted(
                                spread.turnsUpEnd() ? ", to and fro" : "; each begins at the same end of the cloth",
                                spread.layers() == 2 ? "a pair" : spread.layers() / 2 + " pairs");
        };
    }

    /** Returns what stands before an arrow to the end of the marker. */
    public static String pileMark(Pile pile) {
        return pile == Pile.UP ? "up; the pile runs this way" : "up; the pile runs the other way";
    }

    /** Returns how cloth with a pile is laid. */
    public static String pile(Pile pile) {
        return pile == Pile.UP
                ? "Brushed towards the end of the marker the pile lies smooth: it runs up the body, and every ply lies so."
                : "Brushed towards the start of the marker the pile lies smooth: it runs down the body, and every ply lies"
                        + " so.";
    }

    /** Returns what lies along the near side, y = 0. */
    public static String nearEdge(Spread spread) {
        return spread.isFoldedLengthwise() ? "fold" : "selvedge";
    }

    /** Returns what lies along the far side. */
    public static String farEdge(Spread spread) {
        return switch (spread.form()) {
            case SINGLE_LAYER, FOLD_CROSSWISE, PLIES_FACE_UP, PLIES_FACE_TO_FACE -> "selvedge";
            case FOLD_LENGTHWISE -> "both selvedges";
            case SELVEDGES_TO_MIDDLE, TUBE -> "fold";
        };
    }

    /** Returns what lies across the cloth where the marker starts. */
    public static String start(Spread spread) {
        return spread.isFoldedCrosswise() ? "fold" : "start of the fabric";
    }
}
