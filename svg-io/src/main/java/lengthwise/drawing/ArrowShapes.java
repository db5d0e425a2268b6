package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lengthwise.drawing.Arrow.Heads;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * Finds arrows: a straight stem, and at its ends heads set by the file's own means or drawn, as barbs that run back
 * from the tip or as a closed triangle that points outwards. Cross bars, dots and tails are no heads.
 */
final class ArrowShapes {
    /** Shorter stems (µm) are no grain lines. */
    private static final double SHORTEST_STEM = 20_000;

    static final double LONGEST_BARB = 25_000;

    private ArrowShapes() {}

    /** An arrow, and the indices of the neighbours that are its heads. */
    record Found(Arrow arrow, Set<Integer> heads) {}

    /**
     * Returns the arrow that a mark draws, with heads of its own or from marks beside it.
     *
     * @param beside small marks of the same group
     */
    static Optional<Found> of(Mark mark, List<Mark> beside) {
        Optional<Segment> longest = StraightRuns.longest(mark.runs());
        if (longest.isEmpty() || longest.get().length() < SHORTEST_STEM || isBent(mark, longest.get())) {
            return Optional.empty();
        }
        Segment stem = longest.get();
        Set<Integer> used = new TreeSet<>();
        End from = end(mark, beside, new Segment(stem.to(), stem.from()), used);
        End to = end(mark, beside, stem, used);
        Heads heads = from.head && to.head ? Heads.BOTH : from.head || to.head ? Heads.ONE : Heads.NONE;
        Segment line = from.head && !to.head ? new Segment(to.tip, from.tip) : new Segment(from.tip, to.tip);
        return Optional.of(new Found(new Arrow(line, heads), used));
    }

    /** Says whether another part of the mark is nearly as long as the stem: then it is no arrow but a figure. */
    private static boolean isBent(Mark mark, Segment stem) {
        double rest = mark.runs().stream()
                .filter(run -> !run.equals(stem))
                .mapToDouble(Segment::length)
                .max()
                .orElse(0);
        return rest > Math.max(LONGEST_BARB, stem.length() / 3) || rest > stem.length() / 1.5;
    }

    private record End(boolean head, Point tip) {}

    /** Looks at the end of a stem that runs towards it. */
    private static End end(Mark mark, List<Mark> beside, Segment stem, Set<Integer> used) {
        Point tip = stem.to();
        boolean head = hasHeadOfTheFile(mark, tip) || hasBarb(mark.runs(), stem);
        for (Contour contour : mark.contours()) {
            Optional<Point> out = tipOf(contour, stem);
            if (out.isPresent()) {
                head = true;
                tip = out.get();
            }
        }
        for (int i = 0; i < beside.size(); i++) {
            if (beside.get(i).equals(mark) || !isNear(beside.get(i).box(), tip, reach(stem))) {
                continue;
            }
            Optional<Point> out = Optional.empty();
            for (Contour contour : beside.get(i).contours()) {
                out = out.or(() -> tipOf(contour, stem));
            }
            if (out.isPresent() || hasBarb(beside.get(i).runs(), stem)) {
                head = true;
                used.add(i);
                tip = out.orElse(tip);
            }
        }
        return new End(head, tip);
    }

    private static boolean hasHeadOfTheFile(Mark mark, Point end) {
        DrawnShape shape = mark.shape();
        if (mark.lines().isEmpty()) {
            return false;
        }
        Point first = mark.lines().get(0).first();
        Point last = mark.lines().get(mark.lines().size() - 1).last();
        return (shape.headAtStart() && first.distance(end) < 1000) || (shape.headAtEnd() && last.distance(end) < 1000);
    }

    private static boolean isNear(Box box, Point point, double reach) {
        return box.minX() - reach <= point.x()
                && point.x() <= box.maxX() + reach
                && box.minY() - reach <= point.y()
                && point.y() <= box.maxY() + reach;
    }

    private static double reach(Segment stem) {
        return Math.max(2000, stem.length() / 30);
    }

    /** Says whether a short line runs back from the tip at a slant. */
    private static boolean hasBarb(List<Segment> runs, Segment stem) {
        for (Segment run : runs) {
            if (run.length() > Math.min(LONGEST_BARB, stem.length() / 2) || run.length() < 500) {
                continue;
            }
            for (Segment barb : List.of(run, new Segment(run.to(), run.from()))) {
                double back = -(Vectors.along(stem, barb.to()) - Vectors.along(stem, barb.from()));
                double aside = Math.abs(Vectors.across(stem, barb.to()) - Vectors.across(stem, barb.from()));
                boolean slants = back > 0.15 * barb.length() && aside > 0.12 * barb.length();
                if (slants && barb.from().distance(stem.to()) <= reach(stem)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Returns the tip of a closed head at the end of a stem, if it points on. */
    private static Optional<Point> tipOf(Contour contour, Segment stem) {
        long extent = Math.max(contour.box().width(), contour.box().height());
        if (extent > Math.min(LONGEST_BARB, stem.length() / 2)
                || contour.nearest(stem.to()).distance() > reach(stem)) {
            return Optional.empty();
        }
        List<Point> points = contour.ring().vertices();
        double front =
                points.stream().mapToDouble(p -> Vectors.along(stem, p)).max().orElseThrow();
        double back =
                points.stream().mapToDouble(p -> Vectors.along(stem, p)).min().orElseThrow();
        double end = (front - back) * 0.15;
        List<Double> atFront = new ArrayList<>();
        List<Double> atBack = new ArrayList<>();
        for (Point point : points) {
            double along = Vectors.along(stem, point);
            if (along >= front - end) {
                atFront.add(Vectors.across(stem, point));
            }
            if (along <= back + end) {
                atBack.add(Vectors.across(stem, point));
            }
        }
        if (spread(atFront) >= spread(atBack) / 2) {
            return Optional.empty();
        }
        double share = Math.max(front, stem.length()) / stem.length();
        Point on = stem.to().minus(stem.from());
        return Optional.of(new Point(
                stem.from().x() + StrictMath.round(on.x() * share),
                stem.from().y() + StrictMath.round(on.y() * share)));
    }

    private static double spread(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).max().orElse(0)
                - values.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    }
}
