package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * Finds notches: short lines that start on the cut line, one or several in a shape, small V shapes whose ends lie on
 * it, small triangles that stand on it, small T shapes, and whatever small is named a notch. Each becomes a short line from
 * the cut line inwards.
 */
final class NotchMarks {
    private static final double LONGEST = 15_000;
    private static final double SHORTEST = 1_000;
    private static final double ON_LINE = 300;

    private NotchMarks() {}

    /** Gives the piece its notches and takes their marks out of the list. */
    static void find(PieceSketch piece, List<Mark> marks) {
        marks.removeIf(mark -> {
            boolean named = mark.is(MarkKind.NOTCH);
            if (!named && !mark.isUnnamed()) {
                return false;
            }
            List<Segment> notches = several(piece.cutLine(), mark);
            if (notches.isEmpty() && mark.extent() <= LONGEST) {
                notches = notch(piece.cutLine(), mark, named).stream().toList();
            }
            piece.notches().addAll(notches);
            return !notches.isEmpty();
        });
    }

    /** Returns the notches of a shape with several strokes each of which is one; none if any is not. */
    private static List<Segment> several(Contour cutLine, Mark mark) {
        List<Segment> notches = new ArrayList<>();
        if (mark.lines().size() >= 2 && mark.contours().isEmpty()) {
            for (Chain stroke : mark.lines()) {
                Optional<Segment> notch =
                        stroke.length() <= LONGEST ? notch(cutLine, stroke, ON_LINE) : Optional.empty();
                if (notch.isEmpty() || cutLine.nearest(notch.get().to()).distance() < SHORTEST) {
                    return List.of();
                }
                notches.add(notch.get());
            }
        }
        return notches;
    }

    private static Optional<Segment> notch(Contour cutLine, Mark mark, boolean named) {
        double reach = named ? LONGEST : ON_LINE;
        if (mark.lines().isEmpty()) {
            return named || standsOn(cutLine, mark) ? triangle(cutLine, mark) : Optional.empty();
        }
        if (!named && !mark.contours().isEmpty()) {
            return Optional.empty();
        }
        if (mark.lines().size() > 2) {
            return Optional.empty();
        }
        return notch(cutLine, touching(cutLine, mark), reach);
    }

    private static Optional<Segment> notch(Contour cutLine, Chain stroke, double reach) {
        Point start = stroke.first();
        Point end = stroke.last();
        double fromStart = cutLine.nearest(start).distance();
        double fromEnd = cutLine.nearest(end).distance();
        if (Math.min(fromStart, fromEnd) > reach) {
            return Optional.empty();
        }
        if (fromStart <= ON_LINE && fromEnd <= ON_LINE && stroke.points().size() >= 3) {
            Point middle = Vectors.middle(new Segment(start, end));
            Point apex = stroke.points().get(stroke.points().size() / 2);
            return inwards(cutLine, middle, apex);
        }
        boolean fromItsStart = fromStart <= fromEnd;
        return inwards(cutLine, fromItsStart ? start : end, fromItsStart ? end : start);
    }

    /** Returns the stroke that begins on the cut line: the stem of a T, not its bar. */
    private static Chain touching(Contour cutLine, Mark mark) {
        Chain best = mark.lines().get(0);
        double least = Double.MAX_VALUE;
        for (Chain stroke : mark.lines()) {
            double off = Math.min(
                    cutLine.nearest(stroke.first()).distance(),
                    cutLine.nearest(stroke.last()).distance());
            if (off < least) {
                least = off;
                best = stroke;
            }
        }
        return best;
    }

    /** Says whether a mark is a triangle with one side, and no more, on the cut line. */
    private static boolean standsOn(Contour cutLine, Mark mark) {
        return mark.contours().size() == 1
                && mark.contours().get(0).ring().size() == 3
                && mark.contours().get(0).ring().vertices().stream()
                                .filter(corner -> cutLine.nearest(corner).distance() <= ON_LINE)
                                .count()
                        == 2;
    }

    private static Optional<Segment> triangle(Contour cutLine, Mark mark) {
        List<Point> corners = mark.contours().get(0).ring().vertices();
        Point apex = corners.get(0);
        for (Point corner : corners) {
            if (cutLine.nearest(corner).distance() > cutLine.nearest(apex).distance()) {
                apex = corner;
            }
        }
        return inwards(cutLine, apex, apex);
    }

    /** Returns the notch from the point of the cut line nearest to {@code from}; one drawn outwards is turned in. */
    private static Optional<Segment> inwards(Contour cutLine, Point from, Point to) {
        Point foot = cutLine.nearest(from).at();
        Point tip = cutLine.covers(to) ? to : foot.plus(foot.minus(to));
        return foot.equals(tip) ? Optional.empty() : Optional.of(new Segment(foot, tip));
    }
}
