package lengthwise.check;

import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Piece;

/**
 * One way to read how a piece lies: a symmetric outline has several.
 *
 * @param pose takes the ordered piece to where it lies
 * @param deviation how far the outline then is from the placed one, in micrometres; 0 where it fits within tolerance
 */
record Reading(Pose pose, double deviation) {
    boolean flipped() {
        return pose.orientation().flipped();
    }

    boolean isAcrossGrain() {
        return pose.orientation().turn().quarters() % 2 != 0;
    }

    /** Returns by how many degrees the piece's up end, pointing to {@code up} as drawn, points away from +x. */
    int degreesFromUp(QuarterTurn up) {
        Point end = pose.orientation().apply(up.apply(new Point(1, 0)));
        return end.x() > 0 ? 0 : end.x() < 0 ? 180 : 90;
    }

    int degreesFromUp(Piece piece) {
        return degreesFromUp(piece.up().orElseThrow());
    }
}
