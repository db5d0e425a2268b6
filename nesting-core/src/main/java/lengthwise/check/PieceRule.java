package lengthwise.check;

import lengthwise.model.PlacedPiece;

/** A rule that each piece keeps or breaks by itself, by the way it lies. */
interface PieceRule {
    /** Says whether the piece keeps the rule when its outline is read so. */
    boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading);

    /** Returns what is wrong with a piece of which no reading keeps the rule, told by the nearest reading. */
    Violation violation(PlacedPiece placed, Wanted wanted, Reading reading);
}
