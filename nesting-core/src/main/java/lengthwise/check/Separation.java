package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.Length;

/** No two pieces overlap, and all keep the gap. */
final class Separation {
    private final Length gap;
    private final Length tolerance;

    Separation(Length gap, Length tolerance) {
        this.gap = gap;
        this.tolerance = tolerance;
    }

    List<Violation> violations(List<PlacedPiece> pieces) {
        List<PlacedArea> areas =
                pieces.stream().map(piece -> PlacedArea.of(piece.outline())).toList();
        List<Box> boxes = pieces.stream().map(piece -> piece.outline().box()).toList();
        List<Violation> violations = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            Box reach = grown(boxes.get(i));
            for (int j = i + 1; j < pieces.size(); j++) {
                if (reach.overlaps(boxes.get(j))) {
                    judge(pieces.get(i), areas.get(i), pieces.get(j), areas.get(j), violations);
                }
            }
        }
        return violations;
    }

    private Box grown(Box box) {
        long by = gap.micrometres();
        return new Box(box.minX() - by, box.minY() - by, box.maxX() + by, box.maxY() + by);
    }

    private void judge(PlacedPiece a, PlacedArea areaA, PlacedPiece b, PlacedArea areaB, List<Violation> violations) {
        if (areaA.overlaps(areaB, tolerance.micrometres())) {
            PlacedArea.Amount amount = areaA.overlap(areaB);
            violations.add(new Violation.Overlap(a, b, amount.squareMillimetres(), amount.millimetres()));
        } else if (areaA.isNearerThan(areaB, gap.minus(tolerance).micrometres())) {
            violations.add(new Violation.TooClose(a, b, areaA.distance(areaB) / 1000, gap));
        }
    }
}
