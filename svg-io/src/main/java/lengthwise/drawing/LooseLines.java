package lengthwise.drawing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lengthwise.geometry.Point;

/**
 * Joins lines whose ends meet within {@value #REACH} µm into closed chains: an outline that was taken apart.
 *
 * <p>Method: ends that meet are one knot; lines with a loose end are set aside until none is left; what remains closes
 * where every knot joins exactly two lines.
 */
final class LooseLines {
    private static final long REACH = 10;

    private final List<Line> lines;
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

    /** A closed chain and the lines it is made of, in order. */
    record Joined(Chain chain, List<Line> lines) {}

    private LooseLines(List<Line> lines) {
        this.lines = lines;
        this.first = new int[lines.size()];
        this.last = new int[lines.size()];
        for (int i = 0; i < lines.size(); i++) {
            first[i] = knot(lines.get(i).chain().first());
            last[i] = knot(lines.get(i).chain().last());
            atKnot.get(first[i]).add(i);
            atKnot.get(last[i]).add(i);
        }
    }

    static List<Joined> join(List<Line> lines) {
        return new LooseLines(lines).closedChains();
    }

    private int knot(Point point) {
        long cellX = Math.floorDiv(point.x(), REACH);
        long cellY = Math.floorDiv(point.y(), REACH);
        for (long x = cellX - 1; x <= cellX + 1; x++) {
            for (long y = cellY - 1; y <= cellY + 1; y++) {
                for (int known : cells.getOrDefault(new Point(x, y), List.of())) {
                    if (knots.get(known).distance(point) <= REACH) {
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
                java.util.Collections.reverse(along);
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
            joined.add(new Joined(new Chain(points, true), used));
        }
    }
}
