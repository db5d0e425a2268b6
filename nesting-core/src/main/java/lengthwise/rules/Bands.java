package lengthwise.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Motif;

/**
 * Regions cut into bands along x and replaced by upright rectangles: such as cover them, or such as lie inside them. A
 * rectangle is off by a micrometre at most where the region is a rectangle itself, else by what its band is high.
 */
final class Bands {
    private static final int OF_A_MOTIF = 24;
    private static final int OF_A_PIECE = 64;

    private Bands() {}

    /** Returns rectangles that together cover a motif. */
    static List<Box> covering(Motif motif) {
        return motif.round() ? ofEllipse(motif.place(), /* inside= */ false) : List.of(motif.place());
    }

    /** Returns rectangles that lie in a motif. */
    static List<Box> inside(Motif motif) {
        return motif.round() ? ofEllipse(motif.place(), /* inside= */ true) : List.of(motif.place());
    }

    /** Bands of equal angle; each is as wide as the ellipse at its side nearest to the middle, or farthest from it. */
    private static List<Box> ofEllipse(Box box, boolean inside) {
        double middleX = 0.5 * (box.minX() + box.maxX());
        double middleY = 0.5 * (box.minY() + box.maxY());
        double halfWidth = 0.5 * box.width();
        double halfHeight = 0.5 * box.height();
        List<Box> bands = new ArrayList<>();
        for (int i = 0; i < OF_A_MOTIF; i++) {
            double from = StrictMath.sin(Math.PI * ((double) i / OF_A_MOTIF - 0.5));
            double to = StrictMath.sin(Math.PI * ((i + 1.0) / OF_A_MOTIF - 0.5));
            boolean overMiddle = from < 0 && to > 0;
            double nearest = overMiddle ? 0 : Math.min(Math.abs(from), Math.abs(to));
            double farthest = Math.max(Math.abs(from), Math.abs(to));
            double out = inside ? farthest : nearest;
            double half = halfWidth * Math.sqrt(Math.max(0, 1 - out * out));
            long left = (long) (inside ? Math.ceil(middleX - half) : Math.floor(middleX - half));
            long right = (long) (inside ? Math.floor(middleX + half) : Math.ceil(middleX + half));
            long bottom =
                    (long) (inside ? Math.ceil(middleY + halfHeight * from) : Math.floor(middleY + halfHeight * from));
            long top = (long) (inside ? Math.floor(middleY + halfHeight * to) : Math.ceil(middleY + halfHeight * to));
            if (left <= right && bottom <= top) {
                bands.add(new Box(left, bottom, right, top));
            }
        }
        return bands;
    }

    /** Returns rectangles that together cover all inside a ring. */
    static List<Box> covering(Ring ring) {
        Box box = ring.box();
        List<Box> bands = new ArrayList<>();
        for (int i = 0; i < OF_A_PIECE; i++) {
            long from = box.minY() + box.height() * i / OF_A_PIECE;
            long to = box.minY() + box.height() * (i + 1) / OF_A_PIECE;
            // between grid lines, where no vertex lies
            for (double[] stretch : shadow(ring, from - 0.5, to + 0.5)) {
                bands.add(new Box((long) Math.floor(stretch[0]), from, (long) Math.ceil(stretch[1]), to));
            }
        }
        return bands;
    }

    /** Returns the stretches of x over which a ring has a point in a band, in order. */
    private static List<double[]> shadow(Ring ring, double fromY, double toY) {
        List<double[]> stretches = new ArrayList<>();
        stretches.addAll(inside(ring, fromY));
        stretches.addAll(inside(ring, toY));
        for (int i = 0; i < ring.size(); i++) {
            Point from = ring.vertex(i);
            Point to = from.plus(ring.edge(i));
            double low = Math.max(fromY, (double) Math.min(from.y(), to.y()));
            double high = Math.min(toY, (double) Math.max(from.y(), to.y()));
            if (low <= high) {
                double one = from.y() == to.y() ? (double) from.x() : xAt(from, to, low);
                double other = from.y() == to.y() ? (double) to.x() : xAt(from, to, high);
                stretches.add(new double[] {Math.min(one, other), Math.max(one, other)});
            }
        }
        return joined(stretches);
    }

    /** Returns the stretches of a line along x that lie inside a ring. */
    private static List<double[]> inside(Ring ring, double y) {
        double[] crossings = new double[ring.size()];
        int n = 0;
        for (int i = 0; i < ring.size(); i++) {
            Point from = ring.vertex(i);
            Point to = from.plus(ring.edge(i));
            if ((from.y() < y) != (to.y() < y)) {
                crossings[n++] = xAt(from, to, y);
            }
        }
        Arrays.sort(crossings, 0, n);
        List<double[]> stretches = new ArrayList<>();
        for (int k = 0; k + 1 < n; k += 2) {
            stretches.add(new double[] {crossings[k], crossings[k + 1]});
        }
        return stretches;
    }

    private static double xAt(Point from, Point to, double y) {
        return from.x() + (y - from.y()) * (to.x() - from.x()) / (to.y() - from.y());
    }

    private static List<double[]> joined(List<double[]> stretches) {
        List<double[]> sorted = stretches.stream()
                .sorted(Comparator.comparingDouble(stretch -> stretch[0]))
                .toList();
        List<double[]> joined = new ArrayList<>();
        for (double[] stretch : sorted) {
            double[] last = joined.isEmpty() ? stretch : joined.get(joined.size() - 1);
            if (joined.isEmpty() || stretch[0] > last[1]) {
                joined.add(stretch.clone());
            } else {
                last[1] = Math.max(last[1], stretch[1]);
            }
        }
        return joined;
    }
}
