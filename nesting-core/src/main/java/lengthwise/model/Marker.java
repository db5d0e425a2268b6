package lengthwise.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;

/** The layout of one fabric: every placement lies within x from 0 to the length and y from 0 to the
 * cuttable width, but for those with an edge on a selvedge. */
public record Marker(MarkerOrder order, List<Placement> placements, Length length) {
    public Marker {
        placements = List.copyOf(placements);
    }

    /** Returns the placements from the start of the fabric on, and across it where two begin together. */
    public List<Placement> inLayingOrder() {
        return placements.stream()
                .map(Start::of)
                .sorted(Comparator.comparingLong(Start::along).thenComparingLong(Start::across))
                .map(Start::placement)
                .toList();
    }

    /** Where a placement begins. An outline is worked out anew at each asking, so it is asked once a piece. */
    private record Start(Placement placement, long along, long across) {
        static Start of(Placement placement) {
            Box box = placement.outline().box();
            return new Start(placement, box.minX(), box.minY());
        }
    }

    /** Returns where the last piece ends: at the marker's length, unless that goes on to a whole repeat of the print. */
    public Length piecesEnd() {
        return new Length(placements.stream()
                .mapToLong(placement -> placement.outline().box().maxX())
                .max()
                .orElse(0));
    }

    /** Returns what is left of the cloth on hand behind the marker, as it lies on the table; empty if it is to be bought. */
    public Optional<Length> left() {
        return order.fabric().room().map(room -> room.minus(length));
    }

    /**
     * Returns the marker efficiency, from 0 to 1: net area of the laid pieces / (marker length × cuttable width).
     */
    public double efficiency() {
        double net = placements.stream()
                .mapToDouble(placement -> placement.item().piece().outline().squareMillimetres())
                .sum();
        return net / (length.millimetres() * order.fabric().cuttableWidth().millimetres());
    }
}
