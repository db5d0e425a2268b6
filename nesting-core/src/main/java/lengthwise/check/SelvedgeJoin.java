package lengthwise.check;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;

/** Where both selvedges are folded to the middle, no piece lies across their join. */
final class SelvedgeJoin {
    private final Optional<Fabric.Band> join;
    private final long tolerance;

    SelvedgeJoin(Optional<Fabric.Band> join, Length tolerance) {
        this.join = join;
        this.tolerance = tolerance.micrometres();
    }

    /** A piece is in one part, so that it keeps clear of a band across the cloth just when its box does. */
    List<Violation> violations(PlacedPiece piece) {
        if (join.isEmpty()) {
            return List.of();
        }
        Box box = piece.outline().box();
        long by = Math.min(
                box.maxY() - join.get().from().micrometres(), join.get().to().micrometres() - box.minY());
        return by > tolerance ? List.of(new Violation.OverJoin(piece, by / 1000.0)) : List.of();
    }
}
