package lengthwise.rules;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;

/**
 * Where a piece may lie: with its fold edge on the fold, with its match point on the print's lattice, or anywhere. A
 * repeat alone constrains nothing.
 */
final class PositionRule {
    private PositionRule() {}

    static PlacementDomain domain(Item item, Fabric fabric, List<Orientation> orientations) throws RefusedException {
        Piece piece = item.piece();
        Optional<Repeat> repeat = fabric.repeatOnTable();
        boolean matched = piece.matchPoint().isPresent() && repeat.isPresent();
        if (piece.foldEdge().isPresent()) {
            if (matched) {
                throw new RefusedException(("%s has a match point and lies on the fold of %s: the two are not laid out"
                                + " together yet. Lay this fabric in a single layer.")
                        .formatted(SpreadRule.named(piece), fabric.name()));
            }
            return FoldRule.domain(piece, fabric, orientations);
        }
        if (matched) {
            refuseHiddenPrint(piece, fabric);
            return new PlacementDomain(orientations, lattice(piece.matchPoint().orElseThrow(), repeat.orElseThrow()));
        }
        return JoinRule.beside(new PlacementDomain(orientations, new PlacementDomain.Positions.Free()), fabric);
    }

    /** What the print does in a layer that is turned round or over cannot be said by one lattice. */
    private static void refuseHiddenPrint(Piece piece, Fabric fabric) throws RefusedException {
        switch (fabric.spread().form()) {
            case SINGLE_LAYER, FOLD_LENGTHWISE, PLIES_FACE_UP -> {}
            case FOLD_CROSSWISE, SELVEDGES_TO_MIDDLE, TUBE, PLIES_FACE_TO_FACE ->
                throw new RefusedException(("%s has a match point, and the print of the lower layers of %s does not lie"
                                + " under it. Lay this fabric in a single layer, or in plies face up with their prints"
                                + " pinned on each other.")
                        .formatted(SpreadRule.named(piece), fabric.name()));
        }
    }

    private static PlacementDomain.Positions lattice(Piece.MatchPoint match, Repeat repeat) {
        return new PlacementDomain.Positions.Lattice(
                match.at(),
                new Point(repeat.originX().micrometres(), repeat.originY().micrometres()),
                repeat.lengthwise().micrometres(),
                repeat.crosswise().micrometres(),
                repeat.halfDrop(),
                match.tolerance().micrometres());
    }
}
