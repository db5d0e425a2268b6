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
        List<PlacedArea> regions =
                pieces.stream().map(piece -> PlacedArea.of(piece.outline())).toList();
        List<Violation> violations = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i + 1; j < pieces.size(); j++) {
                if (isNear(pieces.get(i), pieces.get(j))) {
                    judge(pieces.get(i), regions.get(i), pieces.get(j), regions.get(j), violations);
                }
            }
        }
        return violations;
    }

    private boolean isNear(PlacedPiece a, PlacedPiece b) {
        Box box = a.outline().box();
        long reach = gap.micrometres();
        return new Box(box.minX() - reach, box.minY() - reach, box.maxX() + reach, box.maxY() + reach)
                .overlaps(b.outline().box());
    }

    private void judge(
            PlacedPiece a, PlacedArea regionA, PlacedPiece b, PlacedArea regionB, List<Violation> violations) {
        if (regionA.overlaps(regionB, tolerance.micrometres())) {
            PlacedArea.Amount amount = regionA.overlap(regionB);
            violations.add(new Violation.Overlap(a, b, amount.squareMillimetres(), amount.millimetres()));
        } else if (regionA.isNearerThan(regionB, gap.minus(tolerance).micrometres())) {
            violations.add(new Violation.TooClose(a, b, regionA.distance(regionB) / 1000, gap));
        }
    }
}
