package lengthwise.solver;

import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;

/**
 * A shape moving against another one: the depth map of their base outlines, turned into place, and the field sampled
 * from it. A displacement is the position of the moving shape less that of the fixed one.
 */
final class Pair {
    private final DepthMap map;
    private final double xx;
    private final double xy;
    private final double yx;
    private final double yy;
    /** How much deeper than the depth of the no-fit polygon counts: the gap, and a margin for rounding. */
    final double reach;
    /** The box outside which the two do not hinder each other. */
    final double minX;

    final double minY;
    final double maxX;
    final double maxY;

    /** Depths at the nodes of a grid from (minX, minY), row by row along x, zero where there is no hindrance. */
    final float[] field;

    final int fieldColumns;
    final int fieldRows;

    /**
     * Makes a pair.
     *
     * @param toMap takes a displacement to one of the map
     */
    Pair(DepthMap map, Orientation toMap, double reach, double step) {
        this.map = map;
        this.reach = reach;
        Point ex = toMap.apply(new Point(1, 0));
        Point ey = toMap.apply(new Point(0, 1));
        xx = (double) ex.x();
        yx = (double) ex.y();
        xy = (double) ey.x();
        yy = (double) ey.y();
        double ax = xx * map.minX + yx * map.minY;
        double bx = xx * map.maxX + yx * map.maxY;
        double ay = xy * map.minX + yy * map.minY;
        double by = xy * map.maxX + yy * map.maxY;
        minX = Math.min(ax, bx);
        maxX = Math.max(ax, bx);
        minY = Math.min(ay, by);
        maxY = Math.max(ay, by);
        fieldColumns = (int) Math.ceil((maxX - minX) / step) + 1;
        fieldRows = (int) Math.ceil((maxY - minY) / step) + 1;
        field = new float[fieldColumns * fieldRows];
        for (int row = 0; row < fieldRows; row++) {
            for (int column = 0; column < fieldColumns; column++) {
                double dx = minX + column * step;
                double dy = minY + row * step;
                double depth = map.rareDepth(xx * dx + xy * dy, yx * dx + yy * dy);
                field[row * fieldColumns + column] = (float) Math.max(0, depth + reach);
            }
        }
    }

    /** Returns how far the moving shape is from hindering the fixed one no more; 0 if it does not. */
    double hindrance(double dx, double dy) {
        return Math.max(0, map.depth(xx * dx + xy * dy, yx * dx + yy * dy) + reach);
    }

    /** Answers the same, with the shortest way out. */
    void look(double dx, double dy, Contact contact) {
        map.look(xx * dx + xy * dy, yx * dx + yy * dy, contact);
        contact.depth = Math.max(0, contact.depth + reach);
        double outX = xx * contact.outX + yx * contact.outY;
        contact.outY = xy * contact.outX + yy * contact.outY;
        contact.outX = outX;
    }

    long bytes() {
        return 4L * field.length + 120;
    }
}
