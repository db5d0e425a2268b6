package lengthwise.geometry;

/**
 * Decides exactly whether two shapes are in each other's way. Integer arithmetic, no tolerance.
 *
 * <p>Two shapes overlap if and only if the interiors of some pair of their convex parts meet, that is, if the
 * displacement lies strictly inside the Minkowski sum of that pair. Two convex parts are apart or touch if and only if a
 * line along an edge of one of them has the other on its far side, so no sum has to be built (separating axes: S.
 * Gottschalk, M. Lin, D. Manocha, <i>OBBTree</i>, SIGGRAPH 1996, for the plane). Touching is allowed, so exact fits
 * exist.
 *
 * <p>A gap is a least Euclidean distance, compared in squares of 128 bits. Holes do not count: a shape is its shell.
 */
public final class PairTest {
    private PairTest() {}

    /**
     * Says whether two shapes overlap or lie nearer than a gap.
     *
     * @param dx x of the displacement of {@code b} against {@code a}; dy likewise
     * @param gap least distance, 0 to allow touching
     */
    public static boolean conflict(ConvexParts a, ConvexParts b, long dx, long dy, long gap) {
        Box boxA = a.ring().box();
        Box boxB = b.ring().box();
        if (apart(boxA, boxB, dx, dy, gap)) {
            return false;
        }
        return overlap(a, b, dx, dy) || (gap > 0 && nearer(a.ring(), b.ring(), boxA, boxB, dx, dy, gap));
    }

    /** Says whether the interiors meet when {@code b} is displaced. */
    public static boolean overlap(ConvexParts a, ConvexParts b, long dx, long dy) {
        Box whole = b.ring().box();
        for (int i = 0; i < a.parts().size(); i++) {
            Box box = a.box(i);
            if (apart(box, whole, dx, dy, 0)) {
                continue;
            }
            for (int j = 0; j < b.parts().size(); j++) {
                if (!apart(box, b.box(j), dx, dy, 0)) {
                    Ring partA = a.parts().get(i);
                    Ring partB = b.parts().get(j);
                    if (!hasSeparatingEdge(partA, partB, dx, dy) && !hasSeparatingEdge(partB, partA, -dx, -dy)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean apart(Box a, Box b, long dx, long dy, long gap) {
        return b.minX() + dx >= a.maxX() + gap
                || a.minX() >= b.maxX() + dx + gap
                || b.minY() + dy >= a.maxY() + gap
                || a.minY() >= b.maxY() + dy + gap;
    }

    private static boolean hasSeparatingEdge(Ring a, Ring b, long dx, long dy) {
        int n = a.size();
        for (int i = 0; i < n; i++) {
            int next = i + 1 == n ? 0 : i + 1;
            long ex = a.x(next) - a.x(i);
            long ey = a.y(next) - a.y(i);
            long x = dx - a.x(i);
            long y = dy - a.y(i);
            boolean outside = true;
            for (int j = 0; j < b.size() && outside; j++) {
                outside = ex * (b.y(j) + y) - ey * (b.x(j) + x) <= 0;
            }
            if (outside) {
                return true;
            }
        }
        return false;
    }

    /** Says whether some points of two rings that do not overlap are nearer than {@code gap}. */
    private static boolean nearer(Ring a, Ring b, Box boxA, Box boxB, long dx, long dy, long gap) {
        return vertexNearEdge(a, b, boxB, dx, dy, gap) || vertexNearEdge(b, a, boxA, -dx, -dy, gap);
    }

    /** Says whether a vertex of {@code a} is nearer than {@code gap} to an edge of {@code b} displaced by (dx, dy). */
    private static boolean vertexNearEdge(Ring a, Ring b, Box boxB, long dx, long dy, long gap) {
        for (int i = 0; i < a.size(); i++) {
            long x = a.x(i) - dx;
            long y = a.y(i) - dy;
            if (x <= boxB.minX() - gap || x >= boxB.maxX() + gap || y <= boxB.minY() - gap || y >= boxB.maxY() + gap) {
                continue;
            }
            for (int j = 0; j < b.size(); j++) {
                int next = j + 1 == b.size() ? 0 : j + 1;
                if (nearSegment(x, y, b.x(j), b.y(j), b.x(next), b.y(next), gap)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean nearSegment(long x, long y, long ax, long ay, long bx, long by, long gap) {
        if (x <= Math.min(ax, bx) - gap
                || x >= Math.max(ax, bx) + gap
                || y <= Math.min(ay, by) - gap
                || y >= Math.max(ay, by) + gap) {
            return false;
        }
        long ex = bx - ax;
        long ey = by - ay;
        long px = x - ax;
        long py = y - ay;
        long along = px * ex + py * ey;
        long square = ex * ex + ey * ey;
        if (along <= 0) {
            return px * px + py * py < gap * gap;
        }
        if (along >= square) {
            return (px - ex) * (px - ex) + (py - ey) * (py - ey) < gap * gap;
        }
        long cross = Math.abs(ex * py - ey * px);
        return productLess(cross, cross, gap * gap, square);
    }

    /** Says whether a·b < c·d for factors that are not negative, in 128 bits. */
    private static boolean productLess(long a, long b, long c, long d) {
        long highLeft = Math.multiplyHigh(a, b);
        long highRight = Math.multiplyHigh(c, d);
        return highLeft < highRight || (highLeft == highRight && Long.compareUnsigned(a * b, c * d) < 0);
    }
}
