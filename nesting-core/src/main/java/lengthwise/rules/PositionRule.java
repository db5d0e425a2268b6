package lengthwise.rules;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Piece;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * Where a piece may lie: with its fold edge on the fold, with its match point on the print's lattice, or anywhere. A
 * repeat alone constrains nothing.
 */
final class PositionRule {
    private PositionRule() {}

    /**
     * Returns where an item may lie.
     *
     * @param inPrint where its match point or that of another piece lets it lie
     */
    static PlacementDomain domain(
            Item item, Fabric fabric, List<Orientation> orientations, Optional<Positions.Lattice> inPrint)
            throws RefusedException {
        Piece piece = item.piece();
        if (piece.foldEdge().isPresent()) {
            if (inPrint.isPresent()) {
                throw new RefusedException(("%s is matched and lies on the fold of %s: the two are not laid out"
                                + " together yet. Lay this fabric in a single layer.")
                        .formatted(SpreadRule.named(piece), fabric.name()));
            }
            return FoldRule.domain(piece, fabric, orientations);
        }
        if (inPrint.isPresent()) {
            refuseHiddenPrint(piece, fabric);
            return new PlacementDomain(orientations, inPrint.get());
        }
        return JoinRule.beside(new PlacementDomain(orientations, new Positions.Free()), fabric);
    }

    /** What the print does in a layer that is turned round or over cannot be said by one lattice. */
    static void refuseHiddenPrint(Piece piece, Fabric fabric) throws RefusedException {
        switch (fabric.spread().form()) {
            case SINGLE_LAYER, FOLD_LENGTHWISE, PLIES_FACE_UP -> {}
            case FOLD_CROSSWISE, SELVEDGES_TO_MIDDLE, TUBE, PLIES_FACE_TO_FACE ->
                throw new RefusedException(("%s is matched, and the print of the lower layers of %s does not lie"
                                + " under it. Lay this fabric in a single layer, or in plies face up with their prints"
                                + " pinned on each other.")
                        .formatted(SpreadRule.named(piece), fabric.name()));
        }
    }
}
