package lengthwise.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/**
 * A stretch of cut line where straight edges of two pieces coincide, as they may where the gap is 0: one cut does for both.
 * Found by how the pieces lie, whoever laid them.
 *
 * @param line in marker coordinates
 */
public record SharedCut(Placement one, Placement other, Segment line) {
    /** A shorter stretch is not worth looking for on the table (µm). */
    private static final double SHORTEST = 20_000;

    /** No blade follows a line more truly than this (µm). */
    public static final double SAME_LINE = 50;

    /** Returns all such stretches of a marker, in the order of its placements. */
    public static List<SharedCut> on(Marker marker) {
        List<Placement> touching = marker.placements().stream()
                .filter(placement ->
                        marker.order().gapOf(placement.item().piece().name()).micrometres() <= SAME_LINE)
                .toList();
        List<Ring> rings = touching.stream()
                .map(placement ->
                        placement.outline().shell().withoutFlatVertices().positive())
                .toList();
        List<SharedCut> shared = new ArrayList<>();
        for (int i = 0; i < rings.size(); i++) {
            for (int j = i + 1; j < rings.size(); j++) {
                if (areNear(rings.get(i).box(), rings.get(j).box())) {
                    for (Segment line : shared(rings.get(i), rings.get(j))) {
                        shared.add(new SharedCut(touching.get(i), touching.get(j), line));
                    }
                }
            }
        }
        return shared;
    }

    /** Returns the stretches where straight edges of two outlines coincide; their holes are not looked at. */
    public static List<Segment> lines(Outline one, Outline other) {
        return areNear(one.box(), other.box())
                ? shared(one.shell().withoutFlatVertices(), other.shell().withoutFlatVertices())
                : List.of();
    }

    /** Returns how long stretches are together. */
    public static Length together(List<SharedCut> cuts) {
        return new Length(
                Math.round(cuts.stream().mapToDouble(cut -> cut.line.length()).sum()));
    }

    private static boolean areNear(Box a, Box b) {
        return a.minX() <= b.maxX() + SAME_LINE
                && b.minX() <= a.maxX() + SAME_LINE
                && a.minY() <= b.maxY() + SAME_LINE
                && b.minY() <= a.maxY() + SAME_LINE;
    }

    private static List<Segment> shared(Ring a, Ring b) {
        List<Segment> lines = new ArrayList<>();
        for (int i = 0; i < a.size(); i++) {
            if (a.edge(i).distance(Point.ORIGIN) >= SHORTEST) {
                for (int j = 0; j < b.size(); j++) {
                    shared(a.vertex(i), a.edge(i), b.vertex(j), b.edge(j)).ifPresent(lines::add);
                }
            }
        }
        return lines;
    }

    /** Returns what two edges have in common; those of two pieces that only touch run opposite ways. */
    private static Optional<Segment> shared(Point a, Point edgeA, Point b, Point edgeB) {
        double length = edgeA.distance(Point.ORIGIN);
        if (edgeA.dot(edgeB) >= 0 || edgeB.distance(Point.ORIGIN) < SHORTEST) {
            return Optional.empty();
        }
        Point toStart = b.minus(a);
        Point toEnd = toStart.plus(edgeB);
        double from = Math.max(0, edgeA.dot(toEnd) / length);
        double to = Math.min(length, edgeA.dot(toStart) / length);
        double off = Math.max(Math.abs(edgeA.cross(toStart)), Math.abs(edgeA.cross(toEnd))) / length;
        return to - from < SHORTEST || off > SAME_LINE
                ? Optional.empty()
                : Optional.of(new Segment(along(a, edgeA, from / length), along(a, edgeA, to / length)));
    }

    private static Point along(Point from, Point edge, double share) {
        return from.plus(new Point(Math.round(edge.x() * share), Math.round(edge.y() * share)));
    }
}
