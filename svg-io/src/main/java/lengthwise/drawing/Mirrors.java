package lengthwise.drawing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Congruence;

/** Finds pieces that are the mirror image of another piece of the same name and size: a right beside its left. */
final class Mirrors {
    /** Outlines of more vertices than this, multiplied, are compared by what the file says alone. */
    private static final long MOST_WORK = 100_000_000;

    private Mirrors() {}

    static void mark(List<PieceSketch> pieces, Effort effort) throws DrawingException {
        Map<String, PieceSketch> firsts = new HashMap<>();
        for (PieceSketch piece : pieces) {
            PieceSketch first =
                    firsts.putIfAbsent(piece.name() + '\n' + piece.size().orElse(""), piece);
            if (first != null) {
                piece.mirrored(isMirrored(first, piece, effort));
            }
        }
    }

    private static boolean isMirrored(PieceSketch first, PieceSketch other, Effort effort) throws DrawingException {
        double area = first.cutLine().area();
        if (Math.abs(area - other.cutLine().area()) > 1e-3 * area) {
            return false;
        }
        if (first.cutLine().shape().reflected() != other.cutLine().shape().reflected()) {
            return true;
        }
        long work =
                (long) first.cutLine().ring().size() * other.cutLine().ring().size();
        if (work > MOST_WORK) {
            return false;
        }
        effort.spend(work);
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
