package lengthwise.check;

import lengthwise.geometry.Point;
import lengthwise.model.Axis;
import lengthwise.model.MatchPoint;
import lengthwise.model.Repeat;

/**
 * The points of a print that look alike, from one of them: repeats apart along and across, every second column of a
 * half-drop moved by half. An axis that does not repeat, or that a match point leaves free, is 0.
 */
record PrintLattice(long along, long across, boolean halfDrop) {
    static PrintLattice of(Repeat repeat, MatchPoint match) {
        return new PrintLattice(
                match.holds(Axis.LENGTHWISE) ? repeat.lengthwise().micrometres() : 0,
                match.holds(Axis.CROSSWISE) ? repeat.crosswise().micrometres() : 0,
                repeat.halfDrop());
    }

    /** Returns the way to a point from the nearest lattice point, of the two columns between which it lies. */
    Point off(Point point) {
        long column = across == 0 ? 0 : Math.floorDiv(point.y(), across);
        Point before = off(point, column);
        Point after = off(point, column + 1);
        return largest(before) <= largest(after) ? before : after;
    }

    private Point off(Point point, long column) {
        // In half micrometres, so that half of an odd repeat is whole.
        long drop = halfDrop ? Math.floorMod(column, 2) * along : 0;
        long offX = along == 0 ? 0 : centred(2 * point.x() - drop, 2 * along);
        return new Point((Math.abs(offX) / 2) * Long.signum(offX), across == 0 ? 0 : point.y() - column * across);
    }

    private static long centred(long value, long step) {
        return value - step * Math.floorDiv(value + step / 2, step);
    }

    static long largest(Point off) {
        return Math.max(Math.abs(off.x()), Math.abs(off.y()));
    }
}
