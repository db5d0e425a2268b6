package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
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
 * <p>In a single layer every piece is laid by itself and half pieces are opened. Plies that lie face up give each
 * contour as often as there are plies, all of one hand. Of layers that lie face to face every second one gives the mirror
 * image, so one cut gives pairs; half pieces go on a fold that runs their way and open as one; pieces that are alike and
 * symmetric are cut as many at a time as there are layers, across garments if need be.
 *
 * <p>In plies a garment is cut from one ply as far as the number of garments allows, so that its pieces are of one shade
 * (common practice, no source), and the contours come in the order that they have in a single ply.
 */
final class SpreadRule {
    private final MarkerOrder order;
    private final Fabric fabric;
    private final Spread spread;
    private final List<Item> items = new ArrayList<>();
    private final List<String> surplus = new ArrayList<>();

    private SpreadRule(MarkerOrder order) {
        this.order = order;
        this.fabric = order.fabric();
        this.spread = fabric.spread();
    }

    /** The contours to lay, in the order of the garments, and what is cut that nobody ordered. */
    record Contours(List<Item> items, List<String> surplus) {}

    static Contours of(MarkerOrder order) throws RefusedException {
        SpreadRule rule = new SpreadRule(order);
        if (rule.spread.mirrors()) {
            rule.faceToFace();
        } else {
            rule.faceUp();
        }
        return new Contours(List.copyOf(rule.items), List.copyOf(rule.surplus));
    }

    /** What contours have in common that can be cut together. */
    private record Kind(Piece piece, Hand hand, boolean mirrored) {}

    /** The first, second, third… of a kind that a garment has. */
    private record OfGarment(Kind kind, int nth) {}

    private void faceUp() {
        Map<OfGarment, List<Garment>> waiting = new LinkedHashMap<>();
        for (Bundle bundle : order.bundles()) {
            for (CutPiece cutPiece : bundle.pieces()) {
                Piece piece = cutPiece.piece();
                Hand drawn = cutPiece.drawnHand();
                for (int i = 0; i < cutPiece.cut().count(); i++) {
                    List<Kind> kinds = switch (cutPiece.cut().manner()) {
                        case ALIKE -> List.of(new Kind(piece, drawn, false));
                        case PAIR -> List.of(new Kind(piece, drawn, false), new Kind(piece, drawn.other(), true));
                        case ON_FOLD -> List.of(new Kind(Unfolding.whole(piece), Hand.NONE, false));
                    };
                    for (Kind kind : kinds) {
                        add(new OfGarment(kind, i), bundle.garment(), spread.layers(), waiting);
                    }
                }
            }
        }
        addRest(waiting, spread.layers(), "");
    }

    private void faceToFace() throws RefusedException {
        Map<OfGarment, List<Garment>> pairs = new LinkedHashMap<>();
        Map<Piece, List<Garment>> alike = new LinkedHashMap<>();
        for (Bundle bundle : order.bundles()) {
            for (CutPiece cutPiece : bundle.pieces()) {
                Piece piece = cutPiece.piece();
                Garment garment = bundle.garment();
                for (int i = 0; i < cutPiece.cut().count(); i++) {
                    if (cutPiece.cut().manner() == Cut.Manner.PAIR) {
                        refuseUpsideDown(piece);
                        Kind pair = new Kind(piece, Hand.NONE, false);
                        add(new OfGarment(pair, i), garment, spread.layers() / 2, pairs);
                    } else if (cutPiece.cut().manner() == Cut.Manner.ON_FOLD && FoldRule.takes(piece, spread)) {
                        items.add(new Item(FoldRule.half(piece, spread), List.of(garment), Hand.NONE, false));
                    } else {
                        alike.computeIfAbsent(Unfolding.whole(piece), p -> new ArrayList<>())
                                .add(garment);
                    }
                }
            }
        }
        addRest(pairs, spread.layers() / 2, "pair of ");
        for (Map.Entry<Piece, List<Garment>> entry : alike.entrySet()) {
            severalAtATime(entry.getKey(), entry.getValue());
        }
    }

    /** Lays a contour as soon as as many garments want it as one cut gives. */
    private void add(OfGarment one, Garment garment, int atATime, Map<OfGarment, List<Garment>> waiting) {
        List<Garment> garments = waiting.computeIfAbsent(one, k -> new ArrayList<>());
        garments.add(garment);
        if (garments.size() == atATime) {
            lay(one.kind, garments);
            waiting.remove(one);
        }
    }

    /** Lays what still waits, as many of a kind at a time as one cut gives, whichever garments they are for. */
    private void addRest(Map<OfGarment, List<Garment>> waiting, int atATime, String what) {
        Map<Kind, List<Garment>> rest = new LinkedHashMap<>();
        waiting.forEach((one, garments) ->
                rest.computeIfAbsent(one.kind, k -> new ArrayList<>()).addAll(garments));
        rest.forEach((kind, garments) -> {
            for (int i = 0; i < garments.size(); i += atATime) {
                lay(kind, garments.subList(i, Math.min(i + atATime, garments.size())));
            }
            String hand = kind.hand == Hand.NONE ? "" : ", " + kind.hand.letter();
            int more = Math.floorMod(-garments.size(), atATime);
            surplus(what + named(kind.piece) + hand, more, ordered(kind), atATime);
        });
    }

    private void lay(Kind kind, List<Garment> garments) {
        items.add(new Item(kind.piece, garments, kind.hand, kind.mirrored));
    }

    private int ordered(Kind kind) {
        return items.stream()
                .filter(item -> new Kind(item.piece(), item.hand(), item.mirrored()).equals(kind))
                .mapToInt(item -> item.garments().size())
                .sum();
    }

    private void severalAtATime(Piece piece, List<Garment> garments) throws RefusedException {
        if (!isTheSameInAllLayers(piece)) {
            throw new RefusedException(("%s is cut alike, but %s lies %s: every second one would come out mirrored."
                            + " Lay this fabric in a single layer, or cut the piece as a pair.")
                    .formatted(named(piece), fabric.name(), words()));
        }
        refuseUpsideDown(piece);
        int layers = spread.layers();
        for (int i = 0; i < garments.size(); i += layers) {
            items.add(new Item(piece, garments.subList(i, Math.min(i + layers, garments.size())), Hand.NONE, false));
        }
        surplus(named(piece), Math.floorMod(-garments.size(), layers), garments.size(), layers);
    }

    private void surplus(String what, int more, int ordered, int atATime) {
        if (more > 0) {
            surplus.add("%s %s more than ordered: %s %s ordered and the %s gives them %s at a time."
                    .formatted(
                            more == 1 ? "One" : Integer.toString(more),
                            what,
                            Integer.toString(ordered),
                            ordered == 1 ? "is" : "are",
                            isInPlies() ? "lay of " + spread.layers() + " plies" : "folded fabric",
                            atATime == 2 ? "two" : Integer.toString(atATime)));
        }
    }

    /** A piece that is its own mirror image only after a half turn would lie upside down in the print of one layer. */
    private boolean isTheSameInAllLayers(Piece piece) {
        return upMatters(piece) ? piece.isSymmetricAboutGrain() : piece.isSymmetric();
    }

    private void refuseUpsideDown(Piece piece) throws RefusedException {
        if (spread.turnsUpEnd() && upMatters(piece)) {
            String wayOut = isInPlies()
                    ? "Begin every ply at the same end of the cloth (plies-run: same-way)."
                    : "Fold it lengthwise, or cut it along the fold and turn one part round (form: plies-face-to-face).";
            throw new RefusedException(
                    "%s has an up end and %s is one-way, but lies %s: every second one would come out upside down. %s"
                            .formatted(named(piece), fabric.name(), words(), wayOut));
        }
    }

    private boolean upMatters(Piece piece) {
        return fabric.direction() != Direction.EITHER_WAY && piece.up().isPresent();
    }

    private boolean isInPlies() {
        return spread.form() == Spread.Form.PLIES_FACE_UP || spread.form() == Spread.Form.PLIES_FACE_TO_FACE;
    }

    private String words() {
        return switch (spread.form()) {
            case FOLD_CROSSWISE -> "folded crosswise";
            case TUBE -> "as a tube";
            case PLIES_FACE_TO_FACE ->
                spread.turnsUpEnd() ? "in plies face to face that run to and fro" : "in plies face to face";
            default -> "folded";
        };
    }

    static String named(Piece piece) {
        return piece.size().name().isEmpty()
                ? piece.name()
                : piece.name() + " " + piece.size().name();
    }
}
