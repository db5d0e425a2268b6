package lengthwise.rules;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Segment;
import lengthwise.model.Spread;

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
        if (fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE
                && piece.foldEdge().isPresent()) {
            if (matched) {
                throw new RefusedException(("%s has a match point and lies on the fold of %s: the two are not laid out"
                                + " together yet. Lay this fabric in a single layer.")
                        .formatted(SpreadRule.named(piece), fabric.name()));
            }
            return onFold(piece, fabric, orientations);
        }
        if (matched) {
            return new PlacementDomain(orientations, lattice(piece.matchPoint().orElseThrow(), repeat.orElseThrow()));
        }
        return new PlacementDomain(orientations, new PlacementDomain.Positions.Free());
    }

    private static PlacementDomain onFold(Piece piece, Fabric fabric, List<Orientation> orientations)
            throws RefusedException {
        Segment fold = piece.foldEdge().orElseThrow();
        if (fold.from().y() != fold.to().y()) {
            throw new RefusedException(
                    ("The fold edge of %s runs across its grain; it cannot lie on the lengthwise fold of"
                                    + " %s. Lay this fabric in a single layer.")
                            .formatted(SpreadRule.named(piece), fabric.name()));
        }
        List<Orientation> bodyInside = orientations.stream()
                .filter(orientation -> touchesFoldFromInside(orientation, piece.outline(), fold.from()))
                .toList();
        if (bodyInside.isEmpty()) {
            throw new RefusedException("The outline of %s crosses its own fold edge; mend the drawing."
                    .formatted(SpreadRule.named(piece)));
        }
        return new PlacementDomain(bodyInside, new PlacementDomain.Positions.Line(fold.from(), 0));
    }

    private static boolean touchesFoldFromInside(Orientation orientation, Outline outline, Point fold) {
        return orientation.apply(outline).box().minY()
                == orientation.apply(fold).y();
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
