package lengthwise.check;

import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;

/** A piece that belongs to a zone of the cloth lies in that band. */
final class ZoneBand {
    private final MarkerOrder order;
    private final long tolerance;

    ZoneBand(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = tolerance.micrometres();
    }

    List<Violation> violations(PlacedPiece piece) {
        return order.lyingOf(piece.piece()).zone().stream()
                .filter(zone -> over(piece, zone.band()) > tolerance)
                .map(zone -> (Violation) new Violation.OutOfZone(piece, zone.name(), over(piece, zone.band()) / 1000.0))
                .toList();
    }

    private static long over(PlacedPiece piece, Fabric.Band band) {
        Box box = piece.outline().box();
        return Math.max(
                band.from().micrometres() - box.minY(), box.maxY() - band.to().micrometres());
    }
}
