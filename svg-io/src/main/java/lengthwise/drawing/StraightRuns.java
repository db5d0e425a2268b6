package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;

/**
 * The straight parts of a chain or ring. A run goes on as long as some line from its start passes within the tolerance
 * of every point so far: each point narrows a cone of allowed directions, so the cost is linear.
 *
 * <p>Reference: J. Sklansky, V. Gonzalez, "Fast polygonal approximation of digitized curves", Pattern Recognition 12
 * (1980).
 */
final class StraightRuns {
    /** How straight an edge of an outline must be (µm). */
    static final double EDGE = 20;

    /** How straight a line drawn by hand must be (µm). */
    static final double LINE = 200;

    private StraightRuns() {}

    static List<Segment> of(Chain chain, double tolerance) {
        return along(chain.points(), tolerance);
    }

    /** Returns the runs of a ring; a run that passes through the first vertex is in one piece. */
    static List<Segment> of(Ring ring, double tolerance) {
        List<Point> points = new ArrayList<>(ring.vertices());
        points.add(ring.vertex(0));
        List<Segment> runs = new ArrayList<>(along(points, tolerance));
        if (runs.size() > 2) {
            Segment last = runs.get(runs.size() - 1);
            Segment first = runs.get(0);
            if (along(List.of(last.from(), last.to(), first.to()), tolerance).size() == 1) {
                runs.remove(runs.size() - 1);
                runs.set(0, new Segment(last.from(), first.to()));
            }
        }
        return runs;
    }

    static Optional<Segment> longest(List<Segment> runs) {
        return runs.stream().max(Comparator.comparingDouble(Segment::length));
    }

    private static List<Segment> along(List<Point> points, double tolerance) {
        List<Segment> runs = new ArrayList<>();
        int start = 0;
        while (start < points.size() - 1) {
            int end = runFrom(points, start, tolerance);
            if (!points.get(start).equals(points.get(end))) {
                runs.add(new Segment(points.get(start), points.get(end)));
            }
            start = end;
        }
        return runs;
    }

    private static int runFrom(List<Point> points, int start, double tolerance) {
        Point from = points.get(start);
        double base = Double.NaN;
        double low = -Math.PI;
        double high = Math.PI;
        double reached = 0;
        int end = start + 1;
        for (int i = start + 1; i < points.size(); i++) {
            double distance = from.distance(points.get(i));
            if (distance <= tolerance) {
                if (reached > 2 * tolerance) {
                    break;
                }
                end = i;
                continue;
            }
            double angle = StrictMath.atan2(
                    (double) points.get(i).y() - from.y(),
                    (double) points.get(i).x() - from.x());
            if (Double.isNaN(base)) {
                base = angle;
            }
            double turned = Math.IEEEremainder(angle - base, 2 * Math.PI);
            if (turned < low || turned > high || distance < reached - tolerance) {
                break;
            }
            double slack = StrictMath.asin(Math.min(1, tolerance / distance));
            low = Math.max(low, turned - slack);
            high = Math.min(high, turned + slack);
            reached = Math.max(reached, distance);
            end = i;
        }
        return end;
    }
}
