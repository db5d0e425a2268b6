package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * Finds the corners of a line: where it turns by {@value #SHARP} degrees or more within a millimetre. A curve does not, unless
 * it is as round as a pencil's lead.
 */
final class Corners {
    private static final double SHARP = 25;

    /** Half of the millimetre. */
    private static final double REACH = 500;

    private Corners() {}

    private record Turn(Point at, double along, double degrees) {}

    /** Returns the corners in the order of the line; the ends of an open one are corners. */
    static List<Point> along(Course line) {
        List<Turn> turns = new ArrayList<>();
        int n = line.points().size();
        for (int i = 0; i < n; i++) {
            boolean end = !line.closed() && (i == 0 || i == n - 1);
            double along = line.upTo(i);
            double degrees = end ? 180 : degrees(line, line.points().get(i), along);
            if (degrees >= SHARP) {
                turns.add(new Turn(line.points().get(i), along, degrees));
            }
        }
        return oneEach(turns, line).stream().map(Turn::at).toList();
    }

    private static double degrees(Course line, Point at, double along) {
        Segment before = new Segment(line.at(along - REACH), at);
        Segment after = new Segment(at, line.at(along + REACH));
        Point u = before.to().minus(before.from());
        Point v = after.to().minus(after.from());
        return Math.toDegrees(Math.abs(StrictMath.atan2((double) u.cross(v), (double) u.dot(v))));
    }

    /** A corner with its tip cut off, or rounded in drawing, turns at several points: the sharpest stands for them. */
    private static List<Turn> oneEach(List<Turn> turns, Course line) {
        List<List<Turn>> corners = new ArrayList<>();
        for (Turn turn : turns) {
            List<Turn> last = corners.isEmpty() ? List.of() : corners.get(corners.size() - 1);
            if (!last.isEmpty() && turn.along - last.get(last.size() - 1).along <= 2 * REACH) {
                last.add(turn);
            } else {
                corners.add(new ArrayList<>(List.of(turn)));
            }
        }
        if (line.closed() && corners.size() > 1) {
            List<Turn> first = corners.get(0);
            List<Turn> last = corners.get(corners.size() - 1);
            if (first.get(0).along + line.length() - last.get(last.size() - 1).along <= 2 * REACH) {
                last.addAll(first);
                corners.remove(0);
            }
        }
        return corners.stream()
                .map(near -> near.stream()
                        .reduce((a, b) -> b.degrees > a.degrees ? b : a)
                        .orElseThrow())
                .toList();
    }

    /** Returns them from the one next to the upper left corner of a box on. */
    static List<Point> fromUpperLeft(List<Point> corners, Box box) {
        List<Point> numbered = new ArrayList<>(corners);
        double least = Double.MAX_VALUE;
        int first = 0;
        for (int i = 0; i < corners.size(); i++) {
            double right = (corners.get(i).x() - box.minX()) / (double) Math.max(1, box.width());
            double down = (corners.get(i).y() - box.minY()) / (double) Math.max(1, box.height());
            if (right + down < least) {
                least = right + down;
                first = i;
            }
        }
        Collections.rotate(numbered, -first);
        return List.copyOf(numbered);
    }
}
