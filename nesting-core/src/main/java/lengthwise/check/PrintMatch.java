package lengthwise.check;

import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Piece.MatchPoint;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;

/**
 * The match point of a piece falls on a point of the print's lattice, within its tolerance along and across. Through two
 * layers that meet in a fold at y = 0 it does so in both: what lies at y in the one is at −y of the opened cloth in the
 * other.
 */
final class PrintMatch implements PieceRule {
    private final Optional<Repeat> repeat;
    private final boolean folded;
    private final Length tolerance;

    PrintMatch(Fabric fabric, Length tolerance) {
        this.repeat = fabric.repeatOnTable();
        this.folded = fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE;
        this.tolerance = tolerance;
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        Optional<MatchPoint> match = wanted.piece().matchPoint();
        if (repeat.isEmpty() || match.isEmpty()) {
            return true;
        }
        Point off = off(reading.pose().apply(match.get().at()));
        return largest(off) <= match.get().tolerance().micrometres() + tolerance.micrometres() + reading.deviation();
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        MatchPoint match = wanted.piece().matchPoint().orElseThrow();
        Point off = off(reading.pose().apply(match.at()));
        return new Violation.OffMatchPoint(
                placed, Math.abs(off.x()) / 1000.0, Math.abs(off.y()) / 1000.0, match.tolerance());
    }

    private Point off(Point point) {
        Point upper = off(repeat.orElseThrow(), point);
        Point lower = folded ? off(repeat.orElseThrow(), new Point(point.x(), -point.y())) : upper;
        return largest(lower) > largest(upper) ? lower : upper;
    }

    /** Returns the way to a point from the nearest lattice point, of the two columns between which it lies. */
    private static Point off(Repeat repeat, Point point) {
        long x = point.x() - repeat.originX().micrometres();
        long y = point.y() - repeat.originY().micrometres();
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        long column = across == 0 ? 0 : Math.floorDiv(y, across);
        Point before = off(x, y, column, along, across, repeat.halfDrop());
        Point after = off(x, y, column + 1, along, across, repeat.halfDrop());
        return largest(before) <= largest(after) ? before : after;
    }

    private static Point off(long x, long y, long column, long along, long across, boolean halfDrop) {
        // In half micrometres, so that half of an odd repeat is whole.
        long drop = halfDrop ? Math.floorMod(column, 2) * along : 0;
        long offX = along == 0 ? 0 : centred(2 * x - drop, 2 * along);
        return new Point((Math.abs(offX) / 2) * Long.signum(offX), across == 0 ? 0 : y - column * across);
    }

    private static long centred(long value, long step) {
        return value - step * Math.floorDiv(value + step / 2, step);
    }

    private static long largest(Point off) {
        return Math.max(Math.abs(off.x()), Math.abs(off.y()));
    }
}
