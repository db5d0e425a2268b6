package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import lengthwise.check.Violation.OffFabric.Edge;
import lengthwise.geometry.Box;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/** Every piece lies inside the cuttable width, unless its edge may lie on a selvedge, and between the start and the stated end of the marker. */
final class CuttableArea {
    private final Fabric fabric;
    private final SelvedgeEdge selvedges;
    private final Length length;
    private final long tolerance;

    CuttableArea(MarkerOrder order, Length length, Length tolerance) {
        this.fabric = order.fabric();
        this.selvedges = new SelvedgeEdge(order, tolerance);
        this.length = length;
        this.tolerance = tolerance.micrometres();
    }

    List<Violation> violations(PlacedPiece piece) {
        Box box = piece.outline().box();
        Edge start = fabric.spread().form() == Spread.Form.FOLD_CROSSWISE ? Edge.FOLD : Edge.START;
        Edge near = Edge.NEAR;
        Edge far = Edge.FAR;
        switch (fabric.spread().form()) {
            case FOLD_LENGTHWISE -> near = Edge.FOLD;
            case SELVEDGES_TO_MIDDLE, TUBE -> {
                near = Edge.FOLD;
                far = Edge.FAR_FOLD;
            }
            default -> {}
        }
        List<Violation> violations = new ArrayList<>();
        over(piece, start, -box.minX(), violations);
        if (selvedges.isAllowed(piece)) {
            violations.addAll(selvedges.violations(piece));
        } else {
            over(piece, near, -box.minY(), violations);
            over(piece, far, box.maxY() - fabric.cuttableWidth().micrometres(), violations);
        }
        long late = box.maxX() - length.micrometres();
        if (late > tolerance) {
            violations.add(new Violation.LengthWrong(piece, length, late / 1000.0));
        }
        return violations;
    }

    private void over(PlacedPiece piece, Edge edge, long by, List<Violation> violations) {
        if (by > tolerance) {
            violations.add(new Violation.OffFabric(piece, edge, by / 1000.0));
        }
    }
}
