package lengthwise.check;

import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Piece;

/**
 * One way to read how a piece lies: a symmetric outline has several.
 *
 * @param pose takes the ordered piece to where it lies
 * @param deviation how far the outline then is from the placed one, in micrometres; 0 where it fits within tolerance
 * @param tilt by how much it is tilted besides, in its own frame, from +x towards +y, in degrees
 */
record Reading(Pose pose, double deviation, double tilt) {
    /** Not tilted. */
    Reading(Pose pose, double deviation) {
        this(pose, deviation, 0);
    }

    boolean flipped() {
        return pose.orientation().flipped();
    }

    boolean isAcrossGrain() {
        return pose.orientation().turn().quarters() % 2 != 0;
    }

    /**
     * Returns by how many degrees the piece's up end points away from +x: 0, 90 or 180. On the bias it points to one end
     * of the fabric and to one selvedge alike, and the end counts: 0 or 180.
     */
    int degreesFromUp(Piece piece) {
        Point drawn = new Point(1, piece.turning() == Piece.Turning.ON_BIAS ? 1 : 0);
        Point end = pose.orientation().apply(piece.up().orElseThrow().apply(drawn));
        return end.x() > 0 ? 0 : end.x() < 0 ? 180 : 90;
    }
}
