package lengthwise.check;

import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;

/**
 * Where the up end of the cloth points the other way in every second layer, nothing that has an up end is cut through two
 * layers. A half on the fold is one piece of cloth, and may be.
 */
final class UpEndBelow implements PieceRule {
    private final boolean turned;

    UpEndBelow(Spread spread) {
        this.turned = switch (spread.form()) {
            case FOLD_CROSSWISE -> true;
            case PLIES_FACE_TO_FACE -> spread.plyRun() == Spread.PlyRun.TO_AND_FRO;
            default -> false;
        };
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        return !turned || wanted.onFold() || !wanted.upMatters();
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        return new Violation.UpsideDownBelow(placed);
    }
}
