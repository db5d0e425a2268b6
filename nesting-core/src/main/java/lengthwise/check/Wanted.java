package lengthwise.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;
import lengthwise.model.Unfolding;

/**
 * What one garment needs of one piece from this fabric.
 *
 * @param piece with the outline that has to lie in the marker: on a single layer a half piece is opened
 * @param onFold whether it is a half that has to lie with its fold edge on the fold
 * @param asDrawn how many cut pieces have to come out as drawn; a whole piece cut on the fold is as drawn
 * @param mirrored how many have to come out mirrored
 * @param drawnHand the hand of those that come out as drawn
 */
record Wanted(Garment garment, Piece piece, boolean onFold, int asDrawn, int mirrored, Hand drawnHand) {
    /** Returns the needs of the whole order, in its order. A piece that a bundle names twice is wanted that often. */
    static List<Wanted> of(MarkerOrder order) {
        Spread.Form form = order.fabric().spread().form();
        List<Wanted> all = new ArrayList<>();
        for (Bundle bundle : order.bundles()) {
            Map<Piece, Wanted> ofGarment = new LinkedHashMap<>();
            for (CutPiece cut : bundle.pieces()) {
                Wanted wanted = of(bundle.garment(), cut, form);
                ofGarment.merge(wanted.piece, wanted, Wanted::and);
            }
            all.addAll(ofGarment.values());
        }
        return all;
    }

    private static Wanted of(Garment garment, CutPiece cutPiece, Spread.Form form) {
        Cut cut = cutPiece.cut();
        int mirrored = cut.manner() == Cut.Manner.PAIR ? cut.count() : 0;
        boolean half = cut.manner() == Cut.Manner.ON_FOLD;
        boolean onFold = half && form == Spread.Form.FOLD_LENGTHWISE;
        Piece laid = half && !onFold ? Unfolding.whole(cutPiece.piece()) : cutPiece.piece();
        return new Wanted(garment, laid, onFold, cut.count(), mirrored, cutPiece.drawnHand());
    }

    private Wanted and(Wanted other) {
        return new Wanted(garment, piece, onFold, asDrawn + other.asDrawn, mirrored + other.mirrored, drawnHand);
    }

    /** Says whether this is what the label on a placed piece means, for one of its garments. */
    boolean isNamed(PlacedPiece placed, int garmentNumber) {
        return garment.number() == garmentNumber
                && piece.name().equals(placed.piece())
                && (piece.size().name().equals(placed.size())
                        || garment.size().name().equals(placed.size()));
    }

    /** Returns the hand of a cut piece of this kind. */
    Hand hand(boolean flipped) {
        return flipped ? drawnHand.other() : drawnHand;
    }

    String name() {
        return piece.name();
    }

    String size() {
        return piece.size().name();
    }
}
