package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Spread;
import lengthwise.model.Unfolding;

/**
 * What the way of spreading makes of the order: which contours are laid, and which hand each gives.
 *
 * <p>In a single layer every piece is laid by itself and half pieces are opened. On fabric folded lengthwise the two
 * layers lie face to face, so one cut gives a pair; half pieces go on the fold and open as one; pieces that are alike
 * and symmetric are cut two at a time, across garments if need be.
 */
final class SpreadRule {
    private final MarkerOrder order;
    private final List<Item> items = new ArrayList<>();
    private final List<String> surplus = new ArrayList<>();

    private SpreadRule(MarkerOrder order) {
        this.order = order;
    }

    /** The contours to lay, in the order of the garments, and what is cut that nobody ordered. */
    record Contours(List<Item> items, List<String> surplus) {}

    static Contours of(MarkerOrder order) throws RefusedException {
        SpreadRule rule = new SpreadRule(order);
        if (order.fabric().spread().form() == Spread.Form.SINGLE_LAYER) {
            rule.singleLayer();
        } else {
            rule.foldedLengthwise();
        }
        return new Contours(List.copyOf(rule.items), List.copyOf(rule.surplus));
    }

    private void singleLayer() {
        for (Bundle bundle : order.bundles()) {
            for (CutPiece cutPiece : bundle.pieces()) {
                List<Garment> garment = List.of(bundle.garment());
                for (int i = 0; i < cutPiece.cut().count(); i++) {
                    switch (cutPiece.cut().manner()) {
                        case ALIKE -> items.add(new Item(cutPiece.piece(), garment, cutPiece.drawnHand(), false));
                        case PAIR -> {
                            Hand drawn = cutPiece.drawnHand();
                            items.add(new Item(cutPiece.piece(), garment, drawn, false));
                            items.add(new Item(cutPiece.piece(), garment, drawn.other(), true));
                        }
                        case ON_FOLD ->
                            items.add(new Item(Unfolding.whole(cutPiece.piece()), garment, Hand.NONE, false));
                    }
                }
            }
        }
    }

    private void foldedLengthwise() throws RefusedException {
        Map<Piece, List<Garment>> alike = new LinkedHashMap<>();
        for (Bundle bundle : order.bundles()) {
            for (CutPiece cutPiece : bundle.pieces()) {
                Piece piece = cutPiece.piece();
                for (int i = 0; i < cutPiece.cut().count(); i++) {
                    if (cutPiece.cut().manner() == Cut.Manner.ALIKE) {
                        alike.computeIfAbsent(piece, p -> new ArrayList<>()).add(bundle.garment());
                    } else {
                        items.add(new Item(piece, List.of(bundle.garment()), Hand.NONE, false));
                    }
                }
            }
        }
        for (Map.Entry<Piece, List<Garment>> entry : alike.entrySet()) {
            twoAtATime(entry.getKey(), entry.getValue());
        }
    }

    private void twoAtATime(Piece piece, List<Garment> garments) throws RefusedException {
        if (!isTheSameInBothLayers(piece)) {
            throw new RefusedException(("%s is cut alike, but %s lies folded: every second one would come out mirrored."
                            + " Lay this fabric in a single layer, or cut the piece as a pair.")
                    .formatted(named(piece), order.fabric().name()));
        }
        for (int i = 0; i < garments.size(); i += 2) {
            items.add(new Item(piece, garments.subList(i, Math.min(i + 2, garments.size())), Hand.NONE, false));
        }
        if (garments.size() % 2 == 1) {
            surplus.add("One %s more than ordered: %d are ordered and the folded fabric gives them two at a time."
                    .formatted(named(piece), garments.size()));
        }
    }

    /** A piece that is its own mirror image only after a half turn would lie upside down in the print of one layer. */
    private boolean isTheSameInBothLayers(Piece piece) {
        boolean upMatters =
                order.fabric().direction() != Direction.EITHER_WAY && piece.up().isPresent();
        return upMatters ? piece.isSymmetricAboutGrain() : piece.isSymmetric();
    }

    static String named(Piece piece) {
        return piece.size().name().isEmpty()
                ? piece.name()
                : piece.name() + " " + piece.size().name();
    }
}
