package lengthwise.rules;

import java.util.Optional;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.CutPiece;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Piece.Turning;

/**
 * A drawing may show pieces with their up ends to either side; here every piece is first turned so that its up end points
 * to +x, where its grain allows that turn. Then pieces that lie at the same turn lie the same way up, and a flip (about
 * the x axis) leaves up where it is.
 */
final class UpEndRule {
    private UpEndRule() {}

    static MarkerOrder upright(MarkerOrder order) {
        return order.withBundles(
                order.bundles().stream().map(UpEndRule::upright).toList());
    }

    private static Bundle upright(Bundle bundle) {
        return new Bundle(
                bundle.garment(),
                bundle.pieces().stream()
                        .map(cut -> new CutPiece(upright(cut.piece()), cut.cut(), cut.drawnHand()))
                        .toList());
    }

    private static Piece upright(Piece piece) {
        QuarterTurn up = piece.up().orElse(QuarterTurn.NONE);
        boolean keepsGrain = up.quarters() % 2 == 0 || piece.turning() != Turning.ALONG_GRAIN;
        return up == QuarterTurn.NONE || !keepsGrain ? piece : turned(piece, up.inverse());
    }

    private static Piece turned(Piece piece, QuarterTurn turn) {
        Piece turned = piece.mapped(turn::apply);
        return new Piece(
                turned.name(),
                turned.size(),
                turned.outline(),
                Optional.of(QuarterTurn.NONE),
                turned.turning(),
                turned.foldEdge(),
                turned.matchPoint(),
                turned.strip(),
                turned.marks());
    }
}
