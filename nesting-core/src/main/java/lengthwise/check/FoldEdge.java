package lengthwise.check;

import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;

/**
 * On folded fabric the fold edge of a half piece lies on a fold: y = 0, where there are two also the far side, or x = 0
 * on fabric folded crosswise.
 */
final class FoldEdge implements PieceRule {
    private final Fabric fabric;
    private final Length tolerance;

    FoldEdge(Fabric fabric, Length tolerance) {
        this.fabric = fabric;
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

    private long offFold(Wanted wanted, Reading reading) {
        Segment fold = wanted.piece()
                .foldEdge()
                .orElseThrow(() -> new IllegalArgumentException(
                        "%s is cut on the fold, but has no fold edge.".formatted(wanted.name())));
        Point from = reading.pose().apply(fold.from());
        Point to = reading.pose().apply(fold.to());
        long near = Math.max(Math.abs(from.y()), Math.abs(to.y()));
        return switch (fabric.spread().form()) {
            case FOLD_CROSSWISE -> Math.max(Math.abs(from.x()), Math.abs(to.x()));
            case SELVEDGES_TO_MIDDLE, TUBE -> {
                long width = fabric.laidWidth().micrometres();
                yield Math.min(near, Math.max(Math.abs(width - from.y()), Math.abs(width - to.y())));
            }
            default -> near;
        };
    }
}
