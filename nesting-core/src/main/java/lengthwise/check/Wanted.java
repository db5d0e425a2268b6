package lengthwise.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Unfolding;

/**
 * What one garment needs of one piece from this fabric.
 *
 * @param piece with the outline that has to lie in the marker: a half piece is opened, unless a fold runs its way
 * @param onFold whether it is a half that has to lie with its fold edge on the fold
 * @param asDrawn how many cut pieces have to come out as drawn; a whole piece cut on the fold is as drawn
 * @param mirrored how many have to come out mirrored
 * @param drawnHand the hand of those that come out as drawn
 * @param upMatters whether the piece has an up end and so has the fabric
 */
record Wanted(
        Garment garment, Piece piece, boolean onFold, int asDrawn, int mirrored, Hand drawnHand, boolean upMatters) {
    /** Returns the needs of some bundles, in their order. A piece that a bundle names twice is wanted that often. */
    static List<Wanted> of(List<Bundle> bundles, Fabric fabric) {
        List<Wanted> all = new ArrayList<>();
        for (Bundle bundle : bundles) {
            Map<Piece, Wanted> ofGarment = new LinkedHashMap<>();
            for (CutPiece cut : bundle.pieces()) {
                Wanted wanted = of(bundle.garment(), cut, fabric);
                ofGarment.merge(wanted.piece, wanted, Wanted::and);
            }
            all.addAll(ofGarment.values());
        }
        return all;
    }

    private static Wanted of(Garment garment, CutPiece cutPiece, Fabric fabric) {
        Cut cut = cutPiece.cut();
        Piece piece = cutPiece.piece();
        int mirrored = cut.manner() == Cut.Manner.PAIR ? cut.count() : 0;
        boolean half = cut.manner() == Cut.Manner.ON_FOLD;
        boolean across = half && foldRunsAcross(piece);
        boolean onFold = half
                && switch (fabric.spread().form()) {
                    case SINGLE_LAYER, PLIES_FACE_UP, PLIES_FACE_TO_FACE -> false;
                    case FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE, TUBE -> true;
                    case FOLD_CROSSWISE -> across;
                };
        Piece laid = !half ? piece : !onFold ? Unfolding.whole(piece) : across ? upperHalf(piece) : piece;
        boolean upMatters =
                fabric.direction() != Direction.EITHER_WAY && piece.up().isPresent();
        return new Wanted(garment, laid, onFold, cut.count(), mirrored, cutPiece.drawnHand(), upMatters);
    }

    private static boolean foldRunsAcross(Piece half) {
        return half.foldEdge().filter(edge -> edge.from().x() == edge.to().x()).isPresent();
    }

    /** Returns that half of the opened piece which holds its up end: the one ahead of a fold across the cloth. */
    private static Piece upperHalf(Piece half) {
        long fold = half.foldEdge().orElseThrow().from().x();
        boolean upIsLow = half.up().equals(Optional.of(QuarterTurn.HALF));
        boolean bodyIsLow = half.outline().box().minX() < fold;
        return upIsLow == bodyIsLow ? half : half.mapped(point -> new Point(2 * fold - point.x(), point.y()));
    }

    private Wanted and(Wanted other) {
        return new Wanted(
                garment, piece, onFold, asDrawn + other.asDrawn, mirrored + other.mirrored, drawnHand, upMatters);
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
