package lengthwise.check;

import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;

/** On folded fabric the fold edge of a half piece lies on the fold, y = 0. */
final class FoldEdge implements PieceRule {
    private final Length tolerance;

    FoldEdge(Length tolerance) {
        this.tolerance = tolerance;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return !wanted.onFold() || offFold(wanted, reading) <= tolerance.micrometres() + reading.deviation();
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return new Violation.OffFold(placed, offFold(wanted, reading) / 1000.0);
    }

    private static long offFold(Wanted wanted, Reading reading) {
        Segment fold = wanted.piece()
                .foldEdge()
                .orElseThrow(() -> new IllegalArgumentException(
                        "%s is cut on the fold, but has no fold edge.".formatted(wanted.name())));
        return Math.max(
                Math.abs(reading.pose().apply(fold.from()).y()),
                Math.abs(reading.pose().apply(fold.to()).y()));
    }
}
