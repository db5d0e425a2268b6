package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import lengthwise.geometry.Point;
import lengthwise.model.Bundle;
import lengthwise.model.CutPiece;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;

/**
 * An order whose pieces lie another way than was asked for, to compare what that takes. Neither way allows all that the other
 * does, so that either may be the shorter: pieces on the bias or on the straight grain, across the cloth on a border or along
 * it, with an edge on the selvedge or not.
 *
 * @param asked what was asked for, and
 * @param than what it is compared to, each as a part of a sentence: "Cutting on the bias", "cutting the same on the straight grain"
 */
public record Instead(String asked, String than, MarkerOrder order) {
    /** Returns what an order can be compared to. */
    static List<Instead> of(MarkerOrder order) {
        List<Instead> others = new ArrayList<>();
        if (order.bundles().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .anyMatch(cut -> cut.piece().turning() == Piece.Turning.ON_BIAS)) {
            others.add(new Instead("Cutting on the bias", "cutting the same on the straight grain", straight(order)));
        }
        if (order.lying().values().stream().anyMatch(lying -> lying.border().isPresent())) {
            others.add(new Instead(
                    "Keying to the border", "laying the same along the grain", lying(order, Lying::withoutBorder)));
        }
        if (order.lying().values().stream().anyMatch(Lying::onSelvedge)) {
            others.add(new Instead(
                    "Using the selvedge", "keeping to the cuttable width", lying(order, Lying::withoutSelvedge)));
        }
        return List.copyOf(others);
    }

    private static MarkerOrder lying(MarkerOrder order, UnaryOperator<Lying> other) {
        Map<String, Lying> lying = new LinkedHashMap<>();
        order.lying().forEach((piece, how) -> lying.put(piece, other.apply(how)));
        return order.withLying(lying);
    }

    private static MarkerOrder straight(MarkerOrder order) {
        return order.withBundles(order.bundles().stream()
                .map(bundle -> new Bundle(
                        bundle.garment(),
                        bundle.pieces().stream()
                                .map(cut -> new CutPiece(straight(cut.piece()), cut.cut(), cut.drawnHand()))
                                .toList()))
                .toList());
    }

    /** A piece on the bias is turned back by 45°; good to a micrometre, which is enough to compare, and nobody cuts it. */
    private static Piece straight(Piece piece) {
        if (piece.turning() != Piece.Turning.ON_BIAS) {
            return piece;
        }
        Piece back = piece.mapped(point -> new Point(
                StrictMath.round((point.x() + point.y()) / StrictMath.sqrt(2)),
                StrictMath.round((point.y() - point.x()) / StrictMath.sqrt(2))));
        return new Piece(
                back.name(),
                back.size(),
                back.outline(),
                back.up(),
                back.strip() ? Piece.Turning.ANY_QUARTER : Piece.Turning.ALONG_GRAIN,
                back.foldEdge(),
                back.matchPoint(),
                back.strip(),
                back.marks());
    }
}
