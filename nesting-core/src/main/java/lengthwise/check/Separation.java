package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;

/** No two pieces overlap, and all keep their gaps: between two pieces the larger one counts. */
final class Separation {
    private final MarkerOrder order;
    private final Length tolerance;

    Separation(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = tolerance;
    }

    List<Violation> violations(List<PlacedPiece> pieces) {
        List<PlacedArea> areas =
                pieces.stream().map(piece -> PlacedArea.of(piece.outline())).toList();
        List<Box> boxes = pieces.stream().map(piece -> piece.outline().box()).toList();
        List<Violation> violations = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i + 1; j < pieces.size(); j++) {
                Length gap = gap(pieces.get(i), pieces.get(j));
                if (grown(boxes.get(i), gap).overlaps(boxes.get(j))) {
                    judge(pieces.get(i), areas.get(i), pieces.get(j), areas.get(j), gap, violations);
                }
            }
        }
        return violations;
    }

    private Length gap(PlacedPiece a, PlacedPiece b) {
        Length gapOfA = order.gapOf(a.piece());
        Length gapOfB = order.gapOf(b.piece());
        return gapOfA.micrometres() >= gapOfB.micrometres() ? gapOfA : gapOfB;
    }

    private static Box grown(Box box, Length gap) {
        long by = gap.micrometres();
        return new Box(box.minX() - by, box.minY() - by, box.maxX() + by, box.maxY() + by);
    }

    private void judge(
            PlacedPiece a, PlacedArea areaA, PlacedPiece b, PlacedArea areaB, Length gap, List<Violation> violations) {
        if (areaA.overlaps(areaB, tolerance.micrometres())) {
            PlacedArea.Amount amount = areaA.overlap(areaB);
            violations.add(new Violation.Overlap(a, b, amount.squareMillimetres(), amount.millimetres()));
        } else if (areaA.isNearerThan(areaB, gap.minus(tolerance).micrometres())) {
            violations.add(new Violation.TooClose(a, b, areaA.distance(areaB) / 1000, gap));
        }
    }
}
