package lengthwise.model;

/**
 * A piece and how often one garment needs it from this fabric.
 *
 * @param drawnHand the side of the body, as worn, that the piece as drawn belongs to; {@link Hand#NONE} where left and
 *     right mean nothing
 */
public record CutPiece(Piece piece, Cut cut, Hand drawnHand) {}
