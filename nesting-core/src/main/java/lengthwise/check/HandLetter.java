package lengthwise.check;

import lengthwise.model.Hand;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/**
 * The letter on a piece is the hand that comes out when it is cut from the upper layer, right side up. Only layers
 * that lie the same way up are asked: a cut through layers face to face gives both hands.
 */
final class HandLetter implements PieceRule {
    private final Spread spread;

    HandLetter(Spread spread) {
        this.spread = spread;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return spread.mirrors()
                || wanted.drawnHand() == Hand.NONE
                || placed.hand().isEmpty()
                || placed.hand().equals(wanted.hand(reading.flipped()).letter());
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return new Violation.WrongHand(
                placed,
                "is marked %s, but what lies there is %s"
                        .formatted(placed.hand(), wanted.hand(reading.flipped()).letter()));
    }
}
