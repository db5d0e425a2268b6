package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.CutAlready;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;

/** What is cut already lies where it was cut, and nothing lies where the cloth is gone. */
final class WhereCut {
    private final CutAlready cut;
    private final Length tolerance;

    WhereCut(CutAlready cut, Length tolerance) {
        this.cut = cut;
        this.tolerance = tolerance;
    }

    List<Violation> violations(List<PlacedPiece> pieces) {
        List<Violation> violations = new ArrayList<>();
        for (PlacedPiece where : cut.pieces()) {
            moved(where, pieces).ifPresent(violations::add);
        }
        for (PlacedPiece gone : cut.spoilt()) {
            PlacedArea hole = PlacedArea.of(gone.outline());
            for (PlacedPiece piece : pieces) {
                PlacedArea area = PlacedArea.of(piece.outline());
                if (piece.outline().box().overlaps(gone.outline().box())
                        && area.overlaps(hole, tolerance.micrometres())) {
                    PlacedArea.Amount amount = area.overlap(hole);
                    violations.add(
                            new Violation.OverCutAway(piece, gone, amount.squareMillimetres(), amount.millimetres()));
                }
            }
        }
        return violations;
    }

    /** Of those that bear its label the nearest one is meant. One that is missing is told of by the count. */
    private Optional<Violation> moved(PlacedPiece where, List<PlacedPiece> pieces) {
        Boundary wasCut = Boundary.of(where.outline());
        return pieces.stream()
                .filter(where::isLabelledAs)
                .map(piece -> new Violation.NotWhereCut(piece, wasCut.deviation(Boundary.of(piece.outline())) / 1000))
                .min(Comparator.comparingDouble(Violation.NotWhereCut::by))
                .filter(moved -> moved.by() > MarkerCheck.OUTSIDE_TOLERANCE.millimetres())
                .map(Violation.class::cast);
    }
}
