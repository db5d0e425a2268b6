package lengthwise.model;

import java.util.List;
import java.util.Optional;

/**
 * One piece of cloth that a garment gets from a laid contour. A contour on folded fabric may give two.
 *
 * @param hand the side of the body, as worn; {@link Hand#NONE} where left and right mean nothing
 */
public record CutOut(Piece piece, Garment garment, Hand hand) {
    /** Returns what the order gets when a contour is cut through all layers; what nobody ordered is not listed. */
    public static List<CutOut> of(Item item, MarkerOrder order) {
        Piece piece = item.piece();
        Garment first = item.garments().get(0);
        if (order.fabric().spread().form().layers() > 1 && piece.foldEdge().isEmpty()) {
            return pairOf(item, order)
                    .map(pair -> List.of(
                            new CutOut(piece, first, pair.drawnHand()),
                            new CutOut(piece, first, pair.drawnHand().other())))
                    .orElseGet(() -> item.garments().stream()
                            .map(garment -> new CutOut(piece, garment, Hand.NONE))
                            .toList());
        }
        return List.of(new CutOut(piece, first, item.hand()));
    }

    private static Optional<CutPiece> pairOf(Item item, MarkerOrder order) {
        return order.bundles().stream()
                .filter(bundle -> bundle.garment().equals(item.garments().get(0)))
                .flatMap(bundle -> bundle.pieces().stream())
                .filter(cut ->
                        cut.cut().manner() == Cut.Manner.PAIR && cut.piece().equals(item.piece()))
                .findFirst();
    }
}
