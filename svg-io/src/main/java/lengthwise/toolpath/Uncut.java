package lengthwise.toolpath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;

/** What is left to cut of a ring when stretches along its straight edges are cut already, or must not be cut. */
public final class Uncut {
    /** Shorter remains are rounding (µm). */
    private static final double SHORTEST = 1;

    private final Ring ring;
    private final double tolerance;
    private final List<List<Point>> chains = new ArrayList<>();
    private List<Point> open = new ArrayList<>();

    private Uncut(Ring ring, double tolerance) {
        this.ring = ring;
        this.tolerance = tolerance;
    }

    /**
     * Returns the remaining lines: the ring itself, closed by its first point, where no stretch lies on it.
     *
     * @param stretches straight lines; what of an edge lies beside one is left out
     * @param tolerance how far a stretch may lie off an edge, in micrometres
     */
    public static List<List<Point>> of(Ring ring, List<Segment> stretches, double tolerance) {
        return new Uncut(ring.withoutFlatVertices(), tolerance).without(stretches);
    }

    /** A part of an edge, as distances from its start. */
    private record Span(double from, double to) {}

    private List<List<Point>> without(List<Segment> stretches) {
        boolean whole = true;
        for (int i = 0; i < ring.size(); i++) {
            List<Span> kept = kept(i, stretches);
            double length = ring.edge(i).distance(Point.ORIGIN);
            whole &= kept.equals(List.of(new Span(0, length)));
            for (Span span : kept) {
                if (span.from > 0 || open.isEmpty()) {
                    lift();
                    open.add(at(i, span.from));
                }
                open.add(at(i, span.to));
            }
            if (kept.isEmpty() || kept.get(kept.size() - 1).to < length) {
                lift();
            }
        }
        if (!whole
                && !open.isEmpty()
                && !chains.isEmpty()
                && chains.get(0).get(0).equals(ring.vertex(0))) {
            // The line goes on across the vertex that the ring is said to begin with.
            open.addAll(chains.get(0).subList(1, chains.get(0).size()));
            chains.remove(0);
        }
        lift();
        return chains;
    }

    private void lift() {
        if (open.size() > 1) {
            chains.add(open);
        }
        open = new ArrayList<>();
    }

    private Point at(int edge, double distance) {
        double length = ring.edge(edge).distance(Point.ORIGIN);
        if (distance >= length) {
            return ring.vertex((edge + 1) % ring.size());
        }
        return new Point(
                ring.x(edge) + StrictMath.round(ring.edge(edge).x() * (distance / length)),
                ring.y(edge) + StrictMath.round(ring.edge(edge).y() * (distance / length)));
    }

    private List<Span> kept(int edge, List<Segment> stretches) {
        double length = ring.edge(edge).distance(Point.ORIGIN);
        List<Span> kept = new ArrayList<>(List.of(new Span(0, length)));
        for (Segment stretch : stretches) {
            Point from = stretch.from().minus(ring.vertex(edge));
            Point to = stretch.to().minus(ring.vertex(edge));
            double off = Math.max(
                    Math.abs(ring.edge(edge).cross(from) / length),
                    Math.abs(ring.edge(edge).cross(to) / length));
            if (off <= tolerance) {
                double one = ring.edge(edge).dot(from) / length;
                double other = ring.edge(edge).dot(to) / length;
                kept = less(kept, Math.min(one, other) - tolerance, Math.max(one, other) + tolerance, length);
            }
        }
        return Collections.unmodifiableList(kept);
    }

    /** Takes a stretch out of what is kept; ends within the tolerance of a corner are at the corner. */
    private List<Span> less(List<Span> kept, double widerFrom, double widerTo, double length) {
        double from = widerFrom <= 0 ? 0 : widerFrom + tolerance;
        double to = widerTo >= length ? length : widerTo - tolerance;
        List<Span> left = new ArrayList<>();
        for (Span span : kept) {
            if (to <= span.from || from >= span.to) {
                left.add(span);
                continue;
            }
            if (from - span.from > SHORTEST) {
                left.add(new Span(span.from, from));
            }
            if (span.to - to > SHORTEST) {
                left.add(new Span(to, span.to));
            }
        }
        return left;
    }
}
