package lengthwise.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Segment;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * A piece that is keyed to a border print lies across the cloth, a quarter turn off its grain: its up end points away from
 * the selvedge that the border runs along, and its hem or a mark of it lies on a line.
 */
final class BorderRule {
    private BorderRule() {}

    static PlacementDomain domain(Item item, MarkerOrder order, Lying.Border border) throws RefusedException {
        Piece piece = item.piece();
        Fabric fabric = order.fabric();
        refuseOthers(piece, order);
        Point up = new Point(0, border.selvedge() == Lying.Selvedge.NEAR ? 1 : -1);
        Point upEnd = piece.upEnd()
                .orElseThrow(
                        () -> refused(
                                piece,
                                fabric,
                                "nothing says which of its ends is up. Give its grain line one arrow head, or say up: as-drawn"));
        List<Orientation> orientations = Stream.of(QuarterTurn.values())
                .flatMap(turn -> fabric.spread().mirrors()
                        ? Stream.of(new Orientation(false, turn), new Orientation(true, turn))
                        : Stream.of(new Orientation(item.mirrored(), turn)))
                .filter(orientation -> orientation.apply(upEnd).equals(up))
                .toList();
        Point tied = tied(piece, border.at(), upEnd);
        Positions line = new Positions.Line(tied, border.y().micrometres());
        refuseOutside(piece, fabric, orientations.get(0), tied, border);
        return new PlacementDomain(orientations, line);
    }

    private static void refuseOthers(Piece piece, MarkerOrder order) throws RefusedException {
        Fabric fabric = order.fabric();
        if (fabric.direction() != Direction.EITHER_WAY) {
            throw refused(
                    piece,
                    fabric,
                    "the print's up end points along the cloth (direction: one-way). Say direction: either-way");
        }
        if (piece.turning() != Piece.Turning.ALONG_GRAIN) {
            throw refused(
                    piece,
                    fabric,
                    "it is cut on the bias or runs either way. Let it lie on grain, or leave its border out");
        }
        if (piece.foldEdge().isPresent()) {
            throw refused(piece, fabric, "it lies on the fold. Lay this fabric in a single layer");
        }
        if (order.lyingOf(piece.name()).zone().isPresent()) {
            throw refused(piece, fabric, "it keeps to a zone. Say one of the two");
        }
        ZoneRule.refuseHiddenSelvedges(piece, fabric, "is keyed to a border");
    }

    static void refuseMatched(Item item, Fabric fabric, Optional<Positions.Lattice> inPrint) throws RefusedException {
        if (inPrint.isPresent()) {
            throw refused(
                    item.piece(),
                    fabric,
                    "it is matched to the print's repeat, by a match point of its own or of another piece. Say one of the two");
        }
    }

    private static RefusedException refused(Piece piece, Fabric fabric, String why) {
        return new RefusedException("%s is keyed to a border of %s, so that it lies across the cloth, but %s."
                .formatted(SpreadRule.named(piece), fabric.name(), why));
    }

    /** Returns the point that lies on the line. */
    private static Point tied(Piece piece, Lying.Tie tie, Point upEnd) throws RefusedException {
        List<Point> points = switch (tie.kind()) {
            case LOWEST_POINT ->
                piece.outline().shell().vertices().stream().min(Comparator.comparingLong(upEnd::dot)).stream()
                        .toList();
            case NOTCH -> piece.marks().notches().stream().map(Segment::from).toList();
            case DRILL_HOLE -> piece.marks().drillHoles();
        };
        int index = Math.max(0, tie.number() - 1);
        if (index >= points.size()) {
            throw new RefusedException(
                    "%s is keyed to a border by its %s %d, but has only %d of them. Name another mark, or say border: hem."
                            .formatted(
                                    SpreadRule.named(piece),
                                    tie.kind() == Lying.Tie.Kind.NOTCH ? "notch" : "drill hole",
                                    tie.number(),
                                    points.size()));
        }
        return points.get(index);
    }

    private static void refuseOutside(
            Piece piece, Fabric fabric, Orientation orientation, Point tied, Lying.Border border)
            throws RefusedException {
        Box box = orientation.apply(piece.outline()).box();
        long shift = border.y().micrometres() - orientation.apply(tied).y();
        long over = Math.max(
                -(box.minY() + shift),
                box.maxY() + shift - fabric.cuttableWidth().micrometres());
        if (over > 0) {
            throw new RefusedException(
                    "%s is keyed to a border of %s and would reach %s mm over the cuttable width there. Move the border's line (from-selvedge), or make the unusable edge narrower."
                            .formatted(SpreadRule.named(piece), fabric.name(), over / 1000.0));
        }
    }
}
