package lengthwise.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.OnHand;
import lengthwise.model.PlacedPiece;

/** No piece reaches over the end of the cloth that is there, or leaves the outline of a remnant. */
final class ClothOnHand {
    private final Optional<Length> room;
    private final Optional<PlacedArea> remnant;
    private final Length tolerance;

    ClothOnHand(Fabric fabric, Length tolerance) {
        this.room = fabric.room();
        this.remnant = fabric.onHand().flatMap(OnHand::outline).map(PlacedArea::of);
        this.tolerance = tolerance;
    }

    List<Violation> violations(PlacedPiece piece) {
        List<Violation> violations = new ArrayList<>();
        if (room.isPresent()) {
            long over = piece.outline().box().maxX() - room.get().micrometres();
            if (over > tolerance.micrometres()) {
                violations.add(new Violation.BeyondCloth(piece, room.get(), over / 1000.0));
            }
        }
        if (remnant.isPresent()) {
            PlacedArea area = PlacedArea.of(piece.outline());
            if (area.leaves(remnant.get(), tolerance.micrometres())) {
                PlacedArea.Amount amount = area.outside(remnant.get());
                violations.add(new Violation.OffRemnant(piece, amount.squareMillimetres(), amount.millimetres()));
            }
        }
        return violations;
    }
}
