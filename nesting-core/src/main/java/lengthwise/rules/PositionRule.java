package lengthwise.rules;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.rules.PlacementDomain.Positions;

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
            return new PlacementDomain(orientations, lattice(piece, fabric, repeat.orElseThrow()));
        }
        return JoinRule.beside(new PlacementDomain(orientations, new Positions.Free()), fabric);
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

    private static Positions lattice(Piece piece, Fabric fabric, Repeat repeat) throws RefusedException {
        Piece.MatchPoint match = piece.matchPoint().orElseThrow();
        long off = offInLowerLayer(fabric, repeat);
        long tolerance = match.tolerance().micrometres() - (Math.abs(off) + 1) / 2;
        if (tolerance < 0) {
            throw new RefusedException(("%s has a match point, and folded lengthwise the print of one layer of %s lies"
                            + " %s mm off that of the other, crosswise. Lay this fabric in a single layer, or fold it"
                            + " where a point of the print lies on the fold and say that with origin.")
                    .formatted(SpreadRule.named(piece), fabric.name(), new Length(Math.abs(off)).millimetres()));
        }
        return new Positions.Lattice(
                match.at(),
                new Point(repeat.originX().micrometres(), repeat.originY().micrometres() - off / 2),
                repeat.lengthwise().micrometres(),
                repeat.crosswise().micrometres(),
                repeat.halfDrop(),
                tolerance);
    }

    /**
     * Returns how far, across the cloth, the print of one layer is off that of the other where the cloth is folded
     * lengthwise: y counts from the fold, so that a point of the print at y lies at −y in the other layer.
     */
    private static long offInLowerLayer(Fabric fabric, Repeat repeat) {
        long period = repeat.crosswise().micrometres() * (repeat.halfDrop() ? 2 : 1);
        if (!fabric.spread().isFoldedLengthwise() || period == 0) {
            return 0;
        }
        long apart = 2 * repeat.originY().micrometres();
        return apart - period * Math.floorDiv(2 * apart + period, 2 * period);
    }
}
