package lengthwise.drawing;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/** Finds drill holes: small circles, small crosses, and whatever small is named a drill hole. */
final class DrillMarks {
    private static final long WIDEST_CIRCLE = 8_000;
    private static final long WIDEST_CROSS = 12_000;

    private DrillMarks() {}

    /** Gives the piece its drill holes and takes their marks out of the list. */
    static void find(PieceSketch piece, List<Mark> marks) {
        marks.removeIf(mark -> {
            boolean named = mark.is(MarkKind.DRILL_HOLE) && mark.extent() <= 2 * WIDEST_CROSS;
            if (!named
                    && !(mark.isUnnamed()
                            && (isSmallCircle(mark) || crossing(mark).isPresent()))) {
                return false;
            }
            Point centre = crossing(mark).orElseGet(() -> centre(mark.box()));
            if (!piece.drillHoles().contains(centre)) {
                piece.drillHoles().add(centre);
            }
            return true;
        });
    }

    private static Point centre(Box box) {
        return new Point((box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2);
    }

    private static boolean isSmallCircle(Mark mark) {
        if (mark.contours().size() != 1 || !mark.lines().isEmpty() || mark.extent() > WIDEST_CIRCLE) {
            return false;
        }
        Contour contour = mark.contours().get(0);
        Box box = contour.box();
        double disc = Math.PI / 4 * box.width() * box.height() / 1e6;
        boolean round = Math.abs((double) box.width() - box.height()) <= 0.05 * box.width();
        return round && Math.abs(contour.area() - disc) <= 0.03 * disc;
    }

    /** Returns where two short strokes cross in their middles. */
    private static Optional<Point> crossing(Mark mark) {
        List<Segment> runs = mark.runs();
        if (runs.size() != 2 || mark.extent() > WIDEST_CROSS || !mark.contours().isEmpty()) {
            return Optional.empty();
        }
        Point one = Vectors.middle(runs.get(0));
        Point other = Vectors.middle(runs.get(1));
        boolean crossed =
                one.distance(other) <= 0.1 * mark.extent() && Vectors.degreesBetween(runs.get(0), runs.get(1)) > 45;
        return crossed ? Optional.of(one) : Optional.empty();
    }
}
