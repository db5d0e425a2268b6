package lengthwise.pdf;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * Cuts a line to a box.
 *
 * <p>Reference: Y.-D. Liang, B. A. Barsky, "A new concept and method for line clipping", ACM Transactions on Graphics 3
 * (1984) 1–22.
 */
final class Clipping {
    private static final long FAR = 1_000_000_000_000L;

    /** A box that cuts nothing. */
    static final Box EVERYWHERE = new Box(-FAR, -FAR, FAR, FAR);

    private Clipping() {}

    /** Returns what of a line lies in a box, in order; points where it leaves the box are rounded to the grid. */
    static List<List<Point>> inside(List<Point> line, Box box) {
        List<List<Point>> parts = new ArrayList<>();
        List<Point> part = new ArrayList<>();
        for (int i = 0; i + 1 < line.size(); i++) {
            Point from = line.get(i);
            Point to = line.get(i + 1);
            double[] range = range(from, to, box);
            if (range[0] > range[1]) {
                continue;
            }
            if (part.isEmpty() || range[0] > 0) {
                finish(part, parts);
                part = new ArrayList<>(List.of(at(from, to, range[0])));
            }
            part.add(at(from, to, range[1]));
            if (range[1] < 1) {
                finish(part, parts);
                part = new ArrayList<>();
            }
        }
        finish(part, parts);
        return parts;
    }

    private static void finish(List<Point> part, List<List<Point>> parts) {
        if (part.stream().distinct().count() > 1) {
            parts.add(part);
        }
    }

    /** Returns from where to where a segment lies in the box, as shares of it; the first is larger where it does not. */
    private static double[] range(Point from, Point to, Box box) {
        double[] range = {0, 1};
        long dx = to.x() - from.x();
        long dy = to.y() - from.y();
        narrow(range, -dx, from.x() - box.minX());
        narrow(range, dx, box.maxX() - from.x());
        narrow(range, -dy, from.y() - box.minY());
        narrow(range, dy, box.maxY() - from.y());
        return range;
    }

    private static void narrow(double[] range, long towards, long room) {
        if (towards == 0) {
            if (room < 0) {
                range[0] = 2;
            }
        } else if (towards < 0) {
            range[0] = Math.max(range[0], (double) room / towards);
        } else {
            range[1] = Math.min(range[1], (double) room / towards);
        }
    }

    private static Point at(Point from, Point to, double share) {
        if (share == 0 || share == 1) {
            return share == 0 ? from : to;
        }
        return new Point(
                from.x() + Math.round((to.x() - from.x()) * share), from.y() + Math.round((to.y() - from.y()) * share));
    }
}
