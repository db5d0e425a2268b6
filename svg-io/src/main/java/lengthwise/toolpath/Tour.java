package lengthwise.toolpath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lengthwise.geometry.Point;

/**
 * A short way from a start to each of some stops, not back. Each stop may be entered, and is left, at any one of its
 * points.
 *
 * <p>Method: always on to the nearest stop not seen yet, at its nearest point; then stretches of the way are turned round
 * as long as that shortens it (2-opt), entries staying as they are. The result need not be the shortest way. Ties go to
 * the stop named first, so the same stops give the same way. Costs O(n·m) for n stops and m points, and O(n²) a round.
 *
 * <p>References: D. J. Rosenkrantz, R. E. Stearns, P. M. Lewis, <i>An analysis of several heuristics for the traveling
 * salesman problem</i>, SIAM Journal on Computing 6 (1977), 563–581; G. A. Croes, <i>A method for solving
 * traveling-salesman problems</i>, Operations Research 6 (1958), 791–812.
 */
final class Tour {
    private static final int MOST_ROUNDS = 100;

    /** A turn that saves less (µm) is rounding, and might be made for ever. */
    private static final double LEAST_GAIN = 0.5;

    private final Point start;
    private final List<Entry> way;

    /** A stop, by its place among those given, and which of its points is entered. */
    record Entry(int stop, int index, Point at) {}

    private Tour(Point start, List<Entry> way) {
        this.start = start;
        this.way = way;
    }

    static List<Entry> through(Point start, List<List<Point>> stops) {
        Tour tour = new Tour(start, nearestFirst(start, stops));
        for (int round = 0; round < MOST_ROUNDS && tour.turnedSomewhere(); round++) {
            // Each round shortens the way.
        }
        return List.copyOf(tour.way);
    }

    /** Returns the point of one stop that is nearest to where the tool is. */
    static int nearest(Point from, List<Point> stop) {
        int best = 0;
        for (int i = 1; i < stop.size(); i++) {
            if (from.distance(stop.get(i)) < from.distance(stop.get(best))) {
                best = i;
            }
        }
        return best;
    }

    private static List<Entry> nearestFirst(Point start, List<List<Point>> stops) {
        List<Entry> way = new ArrayList<>();
        boolean[] seen = new boolean[stops.size()];
        Point at = start;
        for (int step = 0; step < seen.length; step++) {
            Entry best = new Entry(-1, 0, at);
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < seen.length; i++) {
                if (!seen[i]) {
                    int index = nearest(at, stops.get(i));
                    Point there = stops.get(i).get(index);
                    if (at.distance(there) < least) {
                        least = at.distance(there);
                        best = new Entry(i, index, there);
                    }
                }
            }
            seen[best.stop] = true;
            at = best.at;
            way.add(best);
        }
        return way;
    }

    private boolean turnedSomewhere() {
        boolean turned = false;
        for (int i = 0; i < way.size(); i++) {
            for (int j = i + 1; j < way.size(); j++) {
                if (gain(i, j) > LEAST_GAIN) {
                    Collections.reverse(way.subList(i, j + 1));
                    turned = true;
                }
            }
        }
        return turned;
    }

    /** Returns what is saved by going through the stops from i to j the other way round. */
    private double gain(int i, int j) {
        Point before = i == 0 ? start : way.get(i - 1).at;
        Point first = way.get(i).at;
        Point last = way.get(j).at;
        double now = before.distance(first);
        double then = before.distance(last);
        if (j + 1 < way.size()) {
            Point after = way.get(j + 1).at;
            now += last.distance(after);
            then += first.distance(after);
        }
        return now - then;
    }
}
