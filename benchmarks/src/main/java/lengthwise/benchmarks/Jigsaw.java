package lengthwise.benchmarks;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;

/**
 * A square of 1.5 m cut into pieces with nothing lost, so that the shortest layout is known: 1.5 m, density 100 %.
 *
 * <p>Lines from edge to edge cut it into columns, lines from column side to column side cut these into pieces; every line
 * is straight or curved. Neighbours share the very vertices of the line between them, all on the grid. The pieces come in
 * random order, each moved to the origin, and may lie either way round.
 */
final class Jigsaw {
    private static final long SIDE = 1_500_000;
    private static final int CURVE = 12;
    /** How far lines slant and bend, as a share of the mean width of a column or height of a piece. */
    private static final double SLANT = 0.3;

    private static final double BEND = 0.12;

    private final Random random;
    private final int pieces;

    private Jigsaw(int pieces, long seed) {
        this.random = new Random(seed);
        this.pieces = pieces;
    }

    /** Returns the instance {@code jigsaw:pieces:seed}. */
    static Instance of(int pieces, long seed) {
        if (pieces < 2) {
            throw new IllegalArgumentException("A jigsaw has at least two pieces, not " + pieces + ".");
        }
        List<Ring> rings = new Jigsaw(pieces, seed).rings();
        PlacementDomain domain = new PlacementDomain(
                List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.HALF)),
                new PlacementDomain.Positions.Free());
        List<Demand> demands = rings.stream()
                .map(ring ->
                        ring.moved(new Point(-ring.box().minX(), -ring.box().minY())))
                .map(ring -> new Demand(Outline.of(ring), domain, 0))
                .toList();
        LayoutTask task = new LayoutTask(SIDE, demands, List.of(), List.of());
        return new Instance("jigsaw:" + pieces + ":" + seed, task, 1, (double) SIDE * SIDE);
    }

    /** Returns the pieces where they were cut, shuffled. */
    static List<Ring> uncut(int pieces, long seed) {
        return new Jigsaw(pieces, seed).rings();
    }

    private List<Ring> rings() {
        int columns = (int) Math.max(1, Math.round(Math.sqrt(pieces)));
        double width = (double) SIDE / columns;
        List<int[]> spans = new ArrayList<>();
        for (int column = 0; column < columns; column++) {
            spans.add(new int[] {pieces * column / columns, pieces * (column + 1) / columns});
        }
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i <= columns; i++) {
            sides.add(i == 0 || i == columns ? Side.straight(i == 0 ? 0 : SIDE) : bentSide(i * width, width));
        }
        List<List<Crossing>> crossings = new ArrayList<>();
        for (int column = 0; column < columns; column++) {
            int count = spans.get(column)[1] - spans.get(column)[0];
            crossings.add(crossings(count, sides.get(column), sides.get(column + 1)));
        }
        List<Ring> rings = new ArrayList<>();
        for (int column = 0; column < columns; column++) {
            List<Crossing> lines = crossings.get(column);
            for (int i = 0; i + 1 < lines.size(); i++) {
                rings.add(piece(sides.get(column), sides.get(column + 1), lines.get(i), lines.get(i + 1)));
            }
        }
        Collections.shuffle(rings, random);
        return rings;
    }

    /** A line down the square: the x of each y at which it has a vertex. */
    private record Side(TreeMap<Long, Long> vertices, double middle, double slant, double bend, double phase) {
        static Side straight(long x) {
            Side side = new Side(new TreeMap<>(), x, 0, 0, 0);
            side.through(0);
            side.through(SIDE);
            return side;
        }

        /** Returns the point of the line at a height and makes it a vertex for the pieces on both sides. */
        Point through(long y) {
            double at = (double) y / SIDE;
            double x = middle + slant * (at - 0.5) + bend * StrictMath.sin(2 * Math.PI * at + phase);
            return new Point(vertices.computeIfAbsent(y, height -> Math.round(x)), y);
        }

        /** Returns the vertices strictly between two heights, downwards. */
        List<Point> between(long from, long to) {
            return vertices.subMap(from, false, to, false).entrySet().stream()
                    .map(entry -> new Point(entry.getValue(), entry.getKey()))
                    .toList();
        }
    }

    /** A line across a column, from its left side to its right side. */
    private record Crossing(List<Point> points) {
        Point left() {
            return points.get(0);
        }

        Point right() {
            return points.get(points.size() - 1);
        }
    }

    private Side bentSide(double middle, double width) {
        boolean curved = random.nextBoolean();
        Side side = new Side(
                new TreeMap<>(),
                middle,
                between(SLANT * width),
                curved ? BEND * width : 0,
                2 * Math.PI * random.nextDouble());
        int vertices = curved ? 2 * CURVE : 1;
        for (int i = 0; i <= vertices; i++) {
            side.through(SIDE * i / vertices);
        }
        return side;
    }

    private List<Crossing> crossings(int count, Side left, Side right) {
        double height = (double) SIDE / count;
        List<Crossing> lines = new ArrayList<>();
        lines.add(new Crossing(List.of(left.through(0), right.through(0))));
        for (int i = 1; i < count; i++) {
            double middle = i * height;
            Point from = left.through(Math.round(middle + between(SLANT / 2 * height)));
            Point to = right.through(Math.round(middle + between(SLANT / 2 * height)));
            double bend = random.nextBoolean() ? 0 : (random.nextBoolean() ? BEND : -BEND) * height;
            List<Point> points = new ArrayList<>(List.of(from));
            for (int step = 1; step < CURVE && bend != 0; step++) {
                double along = (double) step / CURVE;
                points.add(new Point(
                        Math.round(from.x() + along * (to.x() - from.x())),
                        Math.round(from.y() + along * (to.y() - from.y()) + bend * StrictMath.sin(Math.PI * along))));
            }
            points.add(to);
            lines.add(new Crossing(points));
        }
        lines.add(new Crossing(List.of(left.through(SIDE), right.through(SIDE))));
        return lines;
    }

    private static Ring piece(Side left, Side right, Crossing above, Crossing below) {
        List<Point> ring = new ArrayList<>(above.points());
        ring.addAll(right.between(above.right().y(), below.right().y()));
        List<Point> back = new ArrayList<>(below.points());
        Collections.reverse(back);
        ring.addAll(back);
        List<Point> up =
                new ArrayList<>(left.between(above.left().y(), below.left().y()));
        Collections.reverse(up);
        ring.addAll(up);
        return Ring.of(ring);
    }

    private double between(double reach) {
        return reach * (2 * random.nextDouble() - 1);
    }
}
