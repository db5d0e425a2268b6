package lengthwise.rules;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Spread;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * A piece with a straight edge that may lie on a selvedge uses the edge of the cloth that is not good enough for other
 * pieces: it lies there with that edge on the selvedge, or else in the cuttable area as any other. The strip then goes from
 * selvedge to selvedge, and all others keep to the cuttable area.
 */
final class SelvedgeRule {
    /** A piece turned onto its grain by an arrow is straight along the selvedge to this (µm). */
    private static final long LEVEL = 30;

    private SelvedgeRule() {}

    /** Says whether any piece of the order, or any filler, may lie on a selvedge. */
    static boolean isAsked(MarkerOrder order) {
        return order.lying().values().stream().anyMatch(Lying::onSelvedge);
    }

    private static boolean isOnSelvedge(Item item, MarkerOrder order) {
        return order.lyingOf(item.piece().name()).onSelvedge();
    }

    /** Returns the strip from edge to edge of the cloth, for demands that know where in it they may lie. */
    static LayoutTask strip(Fabric fabric, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
        Fabric.UnusableEdge edges = fabric.edgesOnTable();
        long near = edges.near().micrometres();
        long height = near + fabric.cuttableWidth().plus(edges.far()).micrometres();
        return new LayoutTask(-near, height, demands, obstacles, bonds);
    }

    /** Returns where a piece may lie in that strip, instead of anywhere in the cuttable area. */
    static PlacementDomain domain(Item item, MarkerOrder order, PlacementDomain inCuttableArea)
            throws RefusedException {
        Fabric fabric = order.fabric();
        Piece piece = item.piece();
        if (!isOnSelvedge(item, order)) {
            // where no selvedge lies at a side the piece that is asked to lie there is refused itself
            return fabric.spread().isFoldedTwice() ? inCuttableArea : keptInside(piece, fabric, inCuttableArea);
        }
        refuseOthers(piece, order, inCuttableArea.positions() instanceof Positions.Free);
        Positions positions = new Positions.Between(0, fabric.cuttableWidth().micrometres());
        for (Point edge : straightEdges(piece)) {
            if (!fabric.spread().isFoldedLengthwise()) {
                long near = -fabric.edgesOnTable().near().micrometres();
                positions = new Positions.Either(positions, new Positions.Line(edge, near));
            }
            long far = fabric.cuttableWidth().plus(fabric.edgesOnTable().far()).micrometres();
            positions = new Positions.Either(positions, new Positions.Line(edge, far));
        }
        return new PlacementDomain(inCuttableArea.orientations(), positions);
    }

    private static PlacementDomain keptInside(Piece piece, Fabric fabric, PlacementDomain domain)
            throws RefusedException {
        long width = fabric.cuttableWidth().micrometres();
        if (domain.positions() instanceof Positions.Free) {
            return new PlacementDomain(domain.orientations(), new Positions.Between(0, width));
        }
        if (domain.positions() instanceof Positions.Line line) {
            List<Orientation> inside = domain.orientations().stream()
                    .filter(orientation -> isInside(piece, orientation, line, width))
                    .toList();
            if (inside.isEmpty()) {
                throw new RefusedException(
                        "%s reaches over the cuttable width of %s where it has to lie. Take wider cloth, or move what it is tied to."
                                .formatted(SpreadRule.named(piece), fabric.name()));
            }
            return new PlacementDomain(inside, line);
        }
        if (domain.positions() instanceof Positions.Between) {
            return domain;
        }
        throw new RefusedException(
                ("Other pieces of %s may lie on the selvedge (edge-on-selvedge), and %s %s: the two are not laid out"
                                + " together yet. Leave one of them out.")
                        .formatted(
                                fabric.name(),
                                SpreadRule.named(piece),
                                domain.positions() instanceof Positions.Lattice
                                                || domain.positions() instanceof Positions.Cells
                                        ? "has its place in the print"
                                        : "lies on a fold across the cloth"));
    }

    private static boolean isInside(Piece piece, Orientation orientation, Positions.Line line, long width) {
        Box box = orientation.apply(piece.outline()).box();
        long shift = line.y() - orientation.apply(line.anchor()).y();
        return box.minY() + shift >= 0 && box.maxY() + shift <= width;
    }

    private static void refuseOthers(Piece piece, MarkerOrder order, boolean free) throws RefusedException {
        Fabric fabric = order.fabric();
        if (piece.turning() != Piece.Turning.ALONG_GRAIN) {
            throw refused(piece, "it runs on the bias or either way: let it run lengthwise or crosswise, or");
        }
        if (fabric.spread().form() == Spread.Form.TUBE || fabric.spread().isFoldedTwice()) {
            throw refused(
                    piece,
                    "on %s no selvedge lies at a side of the marker: lay this fabric in a single layer, or"
                            .formatted(fabric.name()));
        }
        if (fabric.onHand().filter(there -> there.outline().isPresent()).isPresent()) {
            throw refused(piece, "%s is a remnant with an outline of its own:".formatted(fabric.name()));
        }
        if (!free) {
            throw refused(
                    piece,
                    piece.foldEdge().isPresent()
                            ? "it lies on the fold:"
                            : "its match point, its motifs, its border or its zone say where it lies: leave out that, or");
        }
    }

    private static RefusedException refused(Piece piece, String why) {
        return new RefusedException("%s may lie on the selvedge (edge-on-selvedge), but %s leave edge-on-selvedge out."
                .formatted(SpreadRule.named(piece), why));
    }

    /** Returns a point of the longest straight edge along the cloth on either side of the piece; of equal ones, of both. */
    private static List<Point> straightEdges(Piece piece) throws RefusedException {
        Ring ring = piece.outline().shell().withoutFlatVertices();
        Box box = ring.box();
        long longest = 0;
        List<Point> edges = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            Point from = ring.vertex(i);
            Point to = from.plus(ring.edge(i));
            boolean outermost = Math.max(from.y(), to.y()) - box.minY() <= LEVEL
                    || box.maxY() - Math.min(from.y(), to.y()) <= LEVEL;
            long length = Math.abs(to.x() - from.x());
            if (outermost && length > LEVEL && length >= longest - LEVEL) {
                if (length > longest + LEVEL) {
                    edges.clear();
                }
                longest = Math.max(longest, length);
                boolean low = from.y() - box.minY() <= LEVEL;
                edges.add(new Point(from.x(), low ? box.minY() : box.maxY()));
            }
        }
        if (edges.isEmpty()) {
            throw refused(piece, "it has no straight edge along the selvedge:");
        }
        return edges;
    }
}
