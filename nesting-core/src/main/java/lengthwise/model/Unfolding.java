package lengthwise.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/**
 * Opens a half piece along its fold edge: the whole piece is the half and its reflection in the fold, joined to one
 * outline that is symmetric to the micrometre.
 *
 * <p>The fold edge lies along x or along y, and all of the half lies on one side of it.
 */
public final class Unfolding {
    private Unfolding() {}

    /**
     * Returns the whole piece, without a fold edge; a piece without one is returned as it is.
     *
     * @throws IllegalArgumentException if the fold edge is slanting, or the outline crosses the fold or meets it in
     *     more than one stretch
     */
    public static Piece whole(Piece half) {
        if (half.foldEdge().isEmpty()) {
            return half;
        }
        UnaryOperator<Point> reflection = reflection(half, half.foldEdge().get());
        return new Piece(
                half.name(),
                half.size(),
                opened(half, reflection),
                half.up(),
                half.turning(),
                Optional.empty(),
                half.matchPoint(),
                half.strip(),
                opened(half.marks(), reflection));
    }

    /**
     * Returns the part of a whole outline that lies on the half's side of its fold edge: the inverse of {@link #whole},
     * for an outline that was changed symmetrically in between. Where the outline crosses the fold it is cut there.
     */
    public static Outline half(Outline whole, Piece half) {
        Segment fold = half.foldEdge().orElseThrow();
        boolean along = fold.from().y() == fold.to().y();
        long line = along ? fold.from().y() : fold.from().x();
        long side = sideOf(half.outline().shell(), along, line);
        List<Point> kept = new ArrayList<>();
        Ring shell = whole.shell();
        for (int i = 0; i < shell.size(); i++) {
            Point from = shell.vertex(i);
            Point to = shell.vertex((i + 1) % shell.size());
            long beyondFrom = side * ((along ? from.y() : from.x()) - line);
            long beyondTo = side * ((along ? to.y() : to.x()) - line);
            if (beyondFrom >= 0) {
                kept.add(from);
            }
            if ((beyondFrom < 0 && beyondTo > 0) || (beyondFrom > 0 && beyondTo < 0)) {
                double share = beyondFrom / ((double) beyondFrom - beyondTo);
                kept.add(
                        along
                                ? new Point(from.x() + StrictMath.round((to.x() - from.x()) * share), line)
                                : new Point(line, from.y() + StrictMath.round((to.y() - from.y()) * share)));
            }
        }
        List<Ring> holes = whole.holes().stream()
                .filter(hole -> sideOf(hole, along, line) == side)
                .toList();
        return new Outline(Ring.of(kept), holes);
    }

    /** Returns a point of a piece and, of one that is cut on the fold, its mirror image, if that is another point. */
    public static List<Point> images(Piece half, Point point) {
        return half.foldEdge().isEmpty()
                ? List.of(point)
                : Stream.of(point, reflection(half, half.foldEdge().get()).apply(point))
                        .distinct()
                        .toList();
    }

    private static long sideOf(Ring ring, boolean along, long line) {
        long less = line - (along ? ring.box().minY() : ring.box().minX());
        long more = (along ? ring.box().maxY() : ring.box().maxX()) - line;
        return more >= less ? 1 : -1;
    }

    private static UnaryOperator<Point> reflection(Piece half, Segment fold) {
        if (fold.from().y() == fold.to().y()) {
            long y = fold.from().y();
            return point -> new Point(point.x(), 2 * y - point.y());
        }
        if (fold.from().x() == fold.to().x()) {
            long x = fold.from().x();
            return point -> new Point(2 * x - point.x(), point.y());
        }
        throw new IllegalArgumentException(
                "The fold edge of %s runs neither along nor across its grain.".formatted(half.name()));
    }

    private static Outline opened(Piece half, UnaryOperator<Point> reflection) {
        Ring shell = half.outline().shell();
        List<Point> away = awayFromFold(half, shell, reflection);
        List<Point> whole = new ArrayList<>(away);
        for (int i = away.size() - 1; i >= 0; i--) {
            Point mirrored = reflection.apply(away.get(i));
            if (!mirrored.equals(away.get(i))) {
                whole.add(mirrored);
            }
        }
        List<Ring> holes = half.outline().holes().stream()
                .flatMap(hole -> Stream.of(hole, hole.mapped(reflection)))
                .toList();
        return new Outline(Ring.of(whole), holes);
    }

    /** Returns the vertices from where the outline leaves the fold to where it comes back, both included. */
    private static List<Point> awayFromFold(Piece half, Ring shell, UnaryOperator<Point> reflection) {
        int n = shell.size();
        int leaves = -1;
        int count = 0;
        for (int i = 0; i < n; i++) {
            boolean on = onFold(shell.vertex(i), reflection);
            if (on && !onFold(shell.vertex((i + 1) % n), reflection)) {
                leaves = i;
                count++;
            }
        }
        if (count != 1) {
            throw new IllegalArgumentException(
                    "The outline of %s meets its fold in %d places; it must lie along the fold in one stretch."
                            .formatted(half.name(), count));
        }
        List<Point> away = new ArrayList<>();
        away.add(shell.vertex(leaves));
        for (int i = 1; i < n; i++) {
            Point vertex = shell.vertex((leaves + i) % n);
            away.add(vertex);
            if (onFold(vertex, reflection)) {
                break;
            }
        }
        return away;
    }

    private static boolean onFold(Point point, UnaryOperator<Point> reflection) {
        return reflection.apply(point).equals(point);
    }

    private static PieceMarks opened(PieceMarks marks, UnaryOperator<Point> reflection) {
        PieceMarks mirrored = marks.mapped(reflection);
        return new PieceMarks(
                marks.grainLine(),
                joined(marks.notches(), mirrored.notches()),
                joined(marks.drillHoles(), mirrored.drillHoles()),
                joined(marks.innerLines(), mirrored.innerLines()));
    }

    private static <T> List<T> joined(List<T> marks, List<T> mirrored) {
        return Stream.concat(marks.stream(), mirrored.stream()).distinct().toList();
    }
}
