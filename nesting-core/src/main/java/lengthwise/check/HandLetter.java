package lengthwise.check;

import lengthwise.model.Hand;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/**
 * The letter on a piece is the hand that comes out when it is cut from the upper layer, right side up. Only a single
 * layer is asked: a cut through two layers gives both hands.
 */
final class HandLetter implements PieceRule {
    private final Spread.Form form;

    HandLetter(Spread.Form form) {
        this.form = form;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return form.layers() > 1
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
