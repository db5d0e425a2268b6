package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;

/** No piece lies over a flaw of the fabric; it may touch one. */
final class Flaws {
    private final List<Box> flaws;
    private final Length tolerance;

    Flaws(List<Box> flaws, Length tolerance) {
        this.flaws = flaws;
        this.tolerance = tolerance;
    }

    List<Violation> violations(PlacedPiece piece) {
        List<Violation> violations = new ArrayList<>();
        for (Box flaw : flaws) {
            if (flaw.overlaps(piece.outline().box())) {
                PlacedArea region = PlacedArea.of(piece.outline());
                PlacedArea bad = PlacedArea.of(Outline.of(flaw.ring()));
                if (region.overlaps(bad, tolerance.micrometres())) {
                    PlacedArea.Amount amount = region.overlap(bad);
                    violations.add(
                            new Violation.OverFlaw(piece, flaw, amount.squareMillimetres(), amount.millimetres()));
                }
            }
        }
        return violations;
    }
}
