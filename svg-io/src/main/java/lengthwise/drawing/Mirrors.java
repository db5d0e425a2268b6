package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Congruence;

/** Finds pieces that are the mirror image of another piece of the same name and size: a right beside its left. */
final class Mirrors {
    private Mirrors() {}

    static void mark(List<PieceSketch> pieces) {
        List<PieceSketch> firsts = new ArrayList<>();
        for (PieceSketch piece : pieces) {
            Optional<PieceSketch> first = firsts.stream()
                    .filter(other ->
                            other.name().equals(piece.name()) && other.size().equals(piece.size()))
                    .findFirst();
            if (first.isEmpty()) {
                firsts.add(piece);
            } else {
                piece.mirrored(isMirrored(first.get(), piece));
            }
        }
    }

    private static boolean isMirrored(PieceSketch first, PieceSketch other) {
        double area = first.cutLine().area();
        if (Math.abs(area - other.cutLine().area()) > 1e-3 * area) {
            return false;
        }
        if (first.cutLine().shape().reflected() != other.cutLine().shape().reflected()) {
            return true;
        }
        return !congruent(first, other, false) && congruent(first, other, true);
    }

    private static boolean congruent(PieceSketch first, PieceSketch other, boolean flipped) {
        for (QuarterTurn turn : QuarterTurn.values()) {
            if (Congruence.byTranslation(other.outline(), new Orientation(flipped, turn).apply(first.outline()))) {
                return true;
            }
        }
        return false;
    }
}
