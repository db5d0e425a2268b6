package lengthwise.check;

import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;

/**
 * The grain runs parallel to the selvedge, unless the piece is a strip that may run across; on the bias a quarter turn
 * leads to the other bias, and a piece keyed to a border lies across.
 */
final class GrainLine implements PieceRule {
    private final MarkerOrder order;

    GrainLine(MarkerOrder order) {
        this.order = order;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return BorderLine.turns(order, wanted)
                || wanted.piece().turning() != Piece.Turning.ALONG_GRAIN
                || !reading.isAcrossGrain();
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return new Violation.OffGrain(placed, 90);
    }
}
