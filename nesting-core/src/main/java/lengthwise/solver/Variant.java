package lengthwise.solver;

import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;

/**
 * One way to lay a demand: an allowed orientation, the shape it then has, and where that shape may go.
 *
 * @param shift what to add to the position of the shape to get the offset of the demand's pose
 */
record Variant(Orientation orientation, Shape shape, Point shift, Region region) {
    Pose pose(long x, long y) {
        return new Pose(orientation, new Point(x, y).plus(shift));
    }
}
