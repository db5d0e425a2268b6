package lengthwise.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Takes vertices out of a ring so that it grows, and by no more than a given distance: a reflex corner is cut off, or a
 * short edge between two convex corners is replaced by the point where its neighbours meet. Always the step that adds
 * the least area comes next. The result covers the ring but for rounding to the grid.
 *
 * <p>After the two operations of J. Gardeyn, G. Vanden Berghe, T. Wauters, arXiv 2509.13329, 2025, section on
 * simplification; the bound on distance to the first outline is ours.
 */
public final class OutwardSimplification {
    private final double[] xs;
    private final double[] ys;
    private final double tolerance;
    private final List<Corner> corners = new ArrayList<>();

    /** A corner that stands for the vertices {@code first} to {@code last} of the ring. */
    private record Corner(double x, double y, int first, int last) {}

    /** A step: a corner goes, and with {@code extend} the next one too, in favour of {@code corner}. */
    private record Step(Corner replaced, boolean extend, Corner corner, double area) {}

    private OutwardSimplification(Ring ring, double tolerance) {
        this.xs = ring.vertices().stream().mapToDouble(Point::x).toArray();
        this.ys = ring.vertices().stream().mapToDouble(Point::y).toArray();
        this.tolerance = tolerance;
        for (int i = 0; i < ring.size(); i++) {
            corners.add(new Corner(xs[i], ys[i], i, i));
        }
    }

    /**
     * Returns a simpler ring.
     *
     * @param ring positive and simple
     * @param tolerance how far the boundary may move, in micrometres
     */
    public static Ring of(Ring ring, double tolerance) {
        return new OutwardSimplification(ring.withoutFlatVertices(), tolerance).simplified();
    }

    private Ring simplified() {
        List<Optional<Step>> steps = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            steps.add(Optional.ofNullable(step(i)));
        }
        while (corners.size() > 4) {
            Step best = null;
            for (Optional<Step> step : steps) {
                if (step.isPresent() && (best == null || step.get().area() < best.area())) {
                    best = step.get();
                }
            }
            if (best == null) {
                break;
            }
            int at = corners.indexOf(best.replaced());
            corners.set(at, best.corner());
            int gone = best.extend() ? (at + 1) % corners.size() : at;
            corners.remove(gone);
            steps.remove(gone);
            // a step looks at one corner before and two after
            for (int k = -3; k <= 2; k++) {
                int changed = Math.floorMod(gone + k, corners.size());
                steps.set(changed, Optional.ofNullable(step(changed)));
            }
        }
        return Ring.of(corners.stream()
                        .map(corner -> new Point(Math.round(corner.x()), Math.round(corner.y())))
                        .distinct()
                        .toList())
                .withoutFlatVertices();
    }

    private @Nullable Step step(int i) {
        Corner before = corner(i - 1);
        Corner at = corner(i);
        Corner after = corner(i + 1);
        double turn = cross(before, at, after);
        if (turn < 0) {
            return chainWithin(before, after) ? new Step(at, false, at, -turn) : null;
        }
        Corner beyond = corner(i + 2);
        if (cross(at, after, beyond) <= 0) {
            return null;
        }
        return extension(before, at, after, beyond);
    }

    /** Returns the step that lets the edges before and after the edge at {@code i} meet, if they do so near enough. */
    private @Nullable Step extension(Corner before, Corner at, Corner after, Corner beyond) {
        double ux = at.x() - before.x();
        double uy = at.y() - before.y();
        double vx = after.x() - beyond.x();
        double vy = after.y() - beyond.y();
        double det = vx * uy - ux * vy;
        if (det <= 0) {
            return null;
        }
        double t = (vx * (after.y() - at.y()) - vy * (after.x() - at.x())) / det;
        Corner meeting = new Corner(at.x() + t * ux, at.y() + t * uy, at.first(), after.last());
        if (!(t >= 0) || distanceToChain(meeting) > tolerance) {
            return null;
        }
        return new Step(at, true, meeting, Math.abs(cross(at, meeting, after)));
    }

    private boolean chainWithin(Corner from, Corner to) {
        for (int k = from.last(); k != to.first(); k = (k + 1) % xs.length) {
            if (distance(xs[k], ys[k], from.x(), from.y(), to.x(), to.y()) > tolerance) {
                return false;
            }
        }
        return true;
    }

    private double distanceToChain(Corner corner) {
        double least = Double.MAX_VALUE;
        for (int k = corner.first(); k != corner.last(); k = (k + 1) % xs.length) {
            int next = (k + 1) % xs.length;
            least = Math.min(least, distance(corner.x(), corner.y(), xs[k], ys[k], xs[next], ys[next]));
        }
        return least;
    }

    private static double distance(double x, double y, double ax, double ay, double bx, double by) {
        double ex = bx - ax;
        double ey = by - ay;
        double along = ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey);
        double t = Math.max(0, Math.min(1, along));
        return Math.sqrt(square(x - ax - t * ex) + square(y - ay - t * ey));
    }

    private static double square(double value) {
        return value * value;
    }

    private Corner corner(int i) {
        return corners.get(Math.floorMod(i, corners.size()));
    }

    private static double cross(Corner a, Corner b, Corner c) {
        return (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x());
    }
}
