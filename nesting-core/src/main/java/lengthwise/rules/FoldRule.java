package lengthwise.rules;

import java.util.List;
import java.util.stream.Stream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Piece;
import lengthwise.model.Segment;
import lengthwise.model.Spread;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * Half pieces lie with their fold edge on a fold of the cloth. On a fold along the cloth that is y = 0, or the far side
 * as well where there are two. On a fold across it is x = 0, and since the opened piece is one piece of cloth that the
 * fold runs through, its print is whole: of its two halves the one ahead of the fold lies in the marker.
 */
final class FoldRule {
    private FoldRule() {}

    /** Says whether a half piece goes on a fold; elsewhere it is opened. */
    static boolean takes(Piece half, Spread spread) {
        return spread.isFoldedLengthwise() || (spread.isFoldedCrosswise() && runsAcross(half));
    }

    /** Returns the half that lies in the marker. */
    static Piece half(Piece half, Spread spread) {
        Segment fold = half.foldEdge().orElseThrow();
        long x = fold.from().x();
        boolean behind = half.outline().box().minX() < x;
        return spread.isFoldedCrosswise() && behind ? half.mapped(p -> new Point(2 * x - p.x(), p.y())) : half;
    }

    static PlacementDomain domain(Piece piece, Fabric fabric, List<Orientation> orientations) throws RefusedException {
        Segment fold = piece.foldEdge().orElseThrow();
        if (fabric.spread().isFoldedCrosswise()) {
            return acrossTheCloth(piece, fabric, orientations);
        }
        if (runsAcross(piece)) {
            throw new RefusedException(
                    ("The fold edge of %s runs across its grain; it cannot lie on the lengthwise fold of"
                                    + " %s. %s this fabric in a single layer.")
                            .formatted(
                                    SpreadRule.named(piece),
                                    fabric.name(),
                                    piece.strip() ? "Let it run crosswise, or lay" : "Lay"));
        }
        boolean twice = fabric.spread().isFoldedTwice();
        List<Orientation> bodyInside = orientations.stream()
                .filter(orientation -> isAtLowSide(piece, orientation) || (twice && isAtHighSide(piece, orientation)))
                .toList();
        refuseCrossing(piece, bodyInside);
        Positions near = new Positions.Line(fold.from(), 0);
        Positions far = new Positions.Line(fold.from(), fabric.cuttableWidth().micrometres());
        return new PlacementDomain(bodyInside, twice ? new Positions.Either(near, far) : near);
    }

    /** All that is cut from one piece of cloth lies one way, even where garments may be turned: a turn moves the fold. */
    private static PlacementDomain acrossTheCloth(Piece piece, Fabric fabric, List<Orientation> orientations)
            throws RefusedException {
        boolean upMatters =
                fabric.direction() != Direction.EITHER_WAY && piece.up().isPresent();
        List<Orientation> ahead = orientations.stream()
                .filter(orientation -> isAtStart(piece, orientation))
                .filter(orientation -> !upMatters || orientation.equals(Orientation.AS_DRAWN))
                .toList();
        refuseCrossing(piece, ahead);
        long end = ahead.get(0).apply(piece.outline()).box().width();
        return new PlacementDomain(ahead, new Positions.Window(0, end));
    }

    private static void refuseCrossing(Piece piece, List<Orientation> orientations) throws RefusedException {
        if (orientations.isEmpty()) {
            throw new RefusedException("The outline of %s crosses its own fold edge; mend the drawing."
                    .formatted(SpreadRule.named(piece)));
        }
    }

    private static boolean runsAcross(Piece half) {
        return half.foldEdge().filter(fold -> fold.from().y() != fold.to().y()).isPresent();
    }

    private static boolean isAtLowSide(Piece piece, Orientation orientation) {
        long y = orientation.apply(piece.outline()).box().minY();
        return foldEnds(piece, orientation).allMatch(end -> end.y() == y);
    }

    private static boolean isAtHighSide(Piece piece, Orientation orientation) {
        long y = orientation.apply(piece.outline()).box().maxY();
        return foldEnds(piece, orientation).allMatch(end -> end.y() == y);
    }

    private static boolean isAtStart(Piece piece, Orientation orientation) {
        long x = orientation.apply(piece.outline()).box().minX();
        return orientation.turn() == QuarterTurn.NONE
                && foldEnds(piece, orientation).allMatch(end -> end.x() == x);
    }

    private static Stream<Point> foldEnds(Piece piece, Orientation orientation) {
        Segment fold = piece.foldEdge().orElseThrow();
        return Stream.of(orientation.apply(fold.from()), orientation.apply(fold.to()));
    }
}
