package lengthwise.solver;

import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Ring;

/**
 * A distinct oriented outline: demands that look alike as they lie share one. It is the image of a base outline, which
 * all turned and mirrored copies have in common, so that no-fit polygons are shared too.
 *
 * @param index its number in the task
 * @param base number of the base outline
 * @param orientation takes the base outline, box corner at the origin, to this shape
 * @param ring the true outline
 * @param box of the true outline
 * @param gap least distance to other pieces; negative for an obstacle, which needs none
 */
record Shape(int index, int base, Orientation orientation, Ring ring, Box box, long gap) {
    /** Shapes of a task are distinct: each is equal to itself alone, and no outline has to be compared. */
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return index;
    }

    boolean isObstacle() {
        return gap < 0;
    }

    /** Returns the least distance that this shape and another must keep. */
    long gapTo(Shape other) {
        return isObstacle() || other.isObstacle() ? 0 : Math.max(gap, other.gap);
    }
}
