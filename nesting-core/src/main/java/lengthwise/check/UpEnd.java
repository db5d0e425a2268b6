package lengthwise.check;

import lengthwise.model.Direction;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;

/**
 * On one-way fabric the up end of a piece points to the up end of the fabric, +x. Where the fabric is one-way for each
 * garment it may point to the other end as well, but not to a selvedge. A piece that has no up end ignores the print.
 */
final class UpEnd implements PieceRule {
    private final Direction direction;

    UpEnd(Direction direction) {
        this.direction = direction;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        if (direction == Direction.EITHER_WAY || wanted.piece().up().isEmpty()) {
            return true;
        }
        int degrees = reading.degreesFromUp(wanted.piece());
        return degrees == 0 || (degrees == 180 && direction == Direction.ONE_WAY_PER_GARMENT);
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        boolean bias = wanted.piece().turning() == Piece.Turning.ON_BIAS;
        return new Violation.WrongWayUp(placed, bias ? 135 : reading.degreesFromUp(wanted.piece()));
    }
}
