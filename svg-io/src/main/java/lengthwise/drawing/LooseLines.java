package lengthwise.drawing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lengthwise.geometry.Point;

/**
 * Joins lines whose ends meet within some reach into closed chains: an outline that was taken apart. A line drawn twice
 * counts once.
 *
 * <p>Method: ends that meet are one knot; lines with a loose end are set aside until none is left; what remains closes
 * where every knot joins exactly two lines.
 */
final class LooseLines {
    /** How far ends that meet may lie apart, in micrometres. */
    static final long REACH = 10;

    private static final int MOST_BETWEEN = 10;

    private final List<Line> lines;
    private final long reach;
    private final Map<Line, List<Line>> doubles = new HashMap<>();
    private final Map<Ends, List<Line>> byEnds = new HashMap<>();
    private final Map<Point, List<Integer>> cells = new HashMap<>();
    private final List<Point> knots = new ArrayList<>();
    private final List<List<Integer>> atKnot = new ArrayList<>();
    private final int[] first;
    private final int[] last;

    /** An open line and the shape it belongs to; told apart from others by identity. */
    static final class Line {
        private final DrawnShape shape;
        private final Chain chain;

        Line(DrawnShape shape, Chain chain) {
            this.shape = shape;
            this.chain = chain;
        }

        DrawnShape shape() {
            return shape;
        }

        Chain chain() {
            return chain;
        }
    }

    /** A closed chain, the lines it is made of, in order, and those that lie on one of these. */
    record Joined(Chain chain, List<Line> lines, List<Line> doubles) {}

    /** The knots that a line joins. */
    private record Ends(int lower, int higher) {}

    private LooseLines(List<Line> lines, long reach) {
        this.lines = lines;
        this.reach = reach;
        this.first = new int[lines.size()];
        this.last = new int[lines.size()];
        for (int i = 0; i < lines.size(); i++) {
            first[i] = knot(lines.get(i).chain().first());
            last[i] = knot(lines.get(i).chain().last());
            List<Line> between = byEnds.computeIfAbsent(
                    new Ends(Math.min(first[i], last[i]), Math.max(first[i], last[i])), ends -> new ArrayList<>());
            Optional<Line> same = drawnBefore(lines.get(i), between);
            if (same.isPresent()) {
                doubles.computeIfAbsent(same.get(), known -> new ArrayList<>()).add(lines.get(i));
            } else {
                between.add(lines.get(i));
                atKnot.get(first[i]).add(i);
                atKnot.get(last[i]).add(i);
            }
        }
    }

    static List<Joined> join(List<Line> lines, long reach) {
        return new LooseLines(lines, reach).closedChains();
    }

    /** Returns the line between the same knots that a line lies on, in whatever direction. */
    private static Optional<Line> drawnBefore(Line line, List<Line> between) {
        List<Point> points = line.chain().points();
        List<Point> back = new ArrayList<>(points);
        Collections.reverse(back);
        return between.stream()
                .limit(MOST_BETWEEN)
                .filter(known -> coincide(known.chain().points(), points)
                        || coincide(known.chain().points(), back))
                .findFirst();
    }

    private static boolean coincide(List<Point> one, List<Point> other) {
        boolean same = one.size() == other.size();
        for (int i = 0; i < one.size() && same; i++) {
            same = one.get(i).distance(other.get(i)) <= REACH;
        }
        return same;
    }

    private int knot(Point point) {
        long cellX = Math.floorDiv(point.x(), reach);
        long cellY = Math.floorDiv(point.y(), reach);
        for (long x = cellX - 1; x <= cellX + 1; x++) {
            for (long y = cellY - 1; y <= cellY + 1; y++) {
                for (int known : cells.getOrDefault(new Point(x, y), List.of())) {
                    if (knots.get(known).distance(point) <= reach) {
                        return known;
                    }
                }
            }
        }
        knots.add(point);
        atKnot.add(new ArrayList<>());
        cells.computeIfAbsent(new Point(cellX, cellY), cell -> new ArrayList<>())
                .add(knots.size() - 1);
        return knots.size() - 1;
    }

    private List<Joined> closedChains() {
        Deque<Integer> loose = new ArrayDeque<>();
        for (int knot = 0; knot < knots.size(); knot++) {
            loose.add(knot);
        }
        while (!loose.isEmpty()) {
            int knot = loose.remove();
            if (atKnot.get(knot).size() == 1) {
                int line = atKnot.get(knot).get(0);
                atKnot.get(first[line]).remove((Integer) line);
                atKnot.get(last[line]).remove((Integer) line);
                loose.add(first[line] == knot ? last[line] : first[line]);
            }
        }
        List<Joined> joined = new ArrayList<>();
        Set<Integer> done = new LinkedHashSet<>();
        for (int line = 0; line < lines.size(); line++) {
            if (atKnot.get(first[line]).contains(line) && !done.contains(line)) {
                round(line, done, joined);
            }
        }
        return joined;
    }

    /** Follows the lines from one on, until it comes back or meets a fork. */
    private void round(int start, Set<Integer> done, List<Joined> joined) {
        List<Point> points = new ArrayList<>();
        List<Line> used = new ArrayList<>();
        int line = start;
        int knot = first[start];
        do {
            if (!done.add(line) || atKnot.get(knot).size() != 2) {
                return;
            }
            used.add(lines.get(line));
            List<Point> along = new ArrayList<>(lines.get(line).chain().points());
            if (first[line] != knot) {
                Collections.reverse(along);
            }
            points.add(knots.get(knot));
            points.addAll(along.subList(1, along.size() - 1));
            knot = first[line] == knot ? last[line] : first[line];
            List<Integer> here = atKnot.get(knot);
            if (here.size() != 2) {
                return;
            }
            line = here.get(0) == line ? here.get(1) : here.get(0);
        } while (line != start);
        if (points.size() >= 3) {
            List<Line> drawnTwice = used.stream()
                    .flatMap(each -> doubles.getOrDefault(each, List.of()).stream())
                    .toList();
            joined.add(new Joined(new Chain(points, true), used, drawnTwice));
        }
    }
}
