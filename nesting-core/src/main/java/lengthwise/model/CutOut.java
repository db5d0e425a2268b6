package lengthwise.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One piece of cloth that a garment gets from a laid contour. In several layers a contour gives more than one.
 *
 * @param hand the side of the body, as worn; {@link Hand#NONE} where left and right mean nothing
 */
public record CutOut(Piece piece, Garment garment, Hand hand) {
    /** Returns what the order gets when a contour is cut through all layers; what nobody ordered is not listed. */
    public static List<CutOut> of(Item item, MarkerOrder order) {
        Piece piece = item.piece();
        boolean pairs = order.fabric().spread().mirrors() && piece.foldEdge().isEmpty();
        Optional<Hand> drawn = pairs ? pairOf(item, order).map(CutPiece::drawnHand) : Optional.empty();
        return item.garments().stream()
                .flatMap(garment -> drawn.isPresent()
                        ? Stream.of(
                                new CutOut(piece, garment, drawn.get()),
                                new CutOut(piece, garment, drawn.get().other()))
                        : Stream.of(new CutOut(piece, garment, pairs ? Hand.NONE : item.hand())))
                .toList();
    }

    private static Optional<CutPiece> pairOf(Item item, MarkerOrder order) {
        return order.withAllFillers().stream()
                .filter(bundle -> bundle.garment().equals(item.garments().get(0)))
                .flatMap(bundle -> bundle.pieces().stream())
                .filter(cut ->
                        cut.cut().manner() == Cut.Manner.PAIR && cut.piece().equals(item.piece()))
                .findFirst();
    }
}
