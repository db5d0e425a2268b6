package lengthwise.solver.compaction;

import lengthwise.geometry.ConvexParts;

/**
 * A placed shape in a linear program.
 *
 * @param x position, and the box within which it may be moved, in micrometres
 * @param end largest x of the shape at position 0
 * @param gap least distance to other bodies; negative for an obstacle, which needs none
 * @param movable false for an obstacle
 */
public record Body(
        ConvexParts parts,
        double x,
        double y,
        double lowX,
        double highX,
        double lowY,
        double highY,
        long end,
        long gap,
        boolean movable) {
    double gapTo(Body other) {
        return gap < 0 || other.gap < 0 ? 0 : (double) Math.max(gap, other.gap);
    }

    /** Returns this body at another position. */
    public Body at(double newX, double newY) {
        return new Body(parts, newX, newY, lowX, highX, lowY, highY, end, gap, movable);
    }
}
