package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/**
 * A piece whose straight edge may lie on a selvedge leaves the cuttable width only with that edge exactly there: its longest
 * straight edge along the cloth. It does not leave the cloth.
 */
final class SelvedgeEdge {
    /** Turned onto its grain an edge that is drawn straight is level to this, in micrometres. */
    private static final long LEVEL = 30;

    private final MarkerOrder order;
    private final long tolerance;

    SelvedgeEdge(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = tolerance.micrometres();
    }

    /** Says whether the edge of this piece may lie on a selvedge of this cloth. */
    boolean isAllowed(PlacedPiece piece) {
        Spread.Form form = order.fabric().spread().form();
        return order.lyingOf(piece.piece()).onSelvedge()
                && form != Spread.Form.TUBE
                && form != Spread.Form.SELVEDGES_TO_MIDDLE;
    }

    List<Violation> violations(PlacedPiece piece) {
        Fabric fabric = order.fabric();
        Box box = piece.outline().box();
        List<Violation> violations = new ArrayList<>();
        long width = fabric.cuttableWidth().micrometres();
        long nearEdge = fabric.edgesOnTable().near().micrometres();
        long farEdge = fabric.edgesOnTable().far().micrometres();
        if (box.minY() < -tolerance) {
            off(piece, box.minY() + nearEdge, box.minY(), violations);
        }
        if (box.maxY() > width + tolerance) {
            off(piece, width + farEdge - box.maxY(), box.maxY(), violations);
        }
        return violations;
    }

    /**
     * @param inside how far the side of the piece lies from the selvedge, on the cloth
     * @param side y of that side
     */
    private void off(PlacedPiece piece, long inside, long side, List<Violation> violations) {
        if (Math.abs(inside) > tolerance || !isLongest(piece, side)) {
            violations.add(new Violation.OffSelvedge(piece, Math.abs(inside) / 1000.0));
        }
    }

    private boolean isLongest(PlacedPiece piece, long side) {
        Ring ring = piece.outline().shell().withoutFlatVertices();
        Box box = ring.box();
        long there = longestLevel(ring, side);
        long longest = Math.max(longestLevel(ring, box.minY()), longestLevel(ring, box.maxY()));
        return there > 0 && there >= longest - LEVEL - 2 * tolerance;
    }

    private long longestLevel(Ring ring, long side) {
        long longest = 0;
        for (int i = 0; i < ring.size(); i++) {
            long endY = ring.y(i) + ring.edge(i).y();
            if (Math.max(Math.abs(ring.y(i) - side), Math.abs(endY - side)) <= LEVEL + tolerance) {
                longest = Math.max(longest, Math.abs(ring.edge(i).x()));
            }
        }
        return longest;
    }
}
