package lengthwise.toolpath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lengthwise.geometry.Point;

/**
 * One way of the tool through the cloth: let down at the first point, lifted at the last.
 *
 * @param piece the place of its piece among those of the marker
 * @param points two or more; the first is repeated at the end of a closed one
 */
public record Pass(Kind kind, int piece, List<Point> points) {
    /** What a pass cuts. */
    public enum Kind {
        SLIT,
        DRILL_HOLE,
        HOLE,
        OUTLINE;

        /** Says whether it is cut inside its piece, and so before the outline sets the piece free. */
        public boolean isInner() {
            return this != OUTLINE;
        }
    }

    public Pass {
        if (points.size() < 2) {
            throw new IllegalArgumentException("A pass leads from a point to another, not through " + points + ".");
        }
        points = List.copyOf(points);
    }

    public Point start() {
        return points.get(0);
    }

    public Point end() {
        return points.get(points.size() - 1);
    }

    public boolean isClosed() {
        return start().equals(end());
    }

    /** Returns its length in micrometres. */
    public double length() {
        double sum = 0;
        for (int i = 1; i < points.size(); i++) {
            sum += points.get(i - 1).distance(points.get(i));
        }
        return sum;
    }

    /** Returns where it may begin: anywhere on a closed one, at either end of an open one. */
    List<Point> starts() {
        return isClosed() ? points.subList(0, points.size() - 1) : List.of(start(), end());
    }

    /** Returns the same cut, begun at one of its {@link #starts}. */
    Pass from(int start) {
        if (start == 0) {
            return this;
        }
        if (!isClosed()) {
            List<Point> back = new ArrayList<>(points);
            Collections.reverse(back);
            return new Pass(kind, piece, back);
        }
        int n = points.size() - 1;
        List<Point> turned = new ArrayList<>();
        for (int i = 0; i <= n; i++) {
            turned.add(points.get((start + i) % n));
        }
        return new Pass(kind, piece, turned);
    }
}
