package lengthwise.check;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;

/**
 * A piece that is keyed to a border lies across the cloth, its up end away from the border's selvedge, and its hem or a mark
 * of it lies on the border's line.
 */
final class BorderLine implements PieceRule {
    private final MarkerOrder order;
    private final Length tolerance;

    BorderLine(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = tolerance;
    }

    /** Says whether the border says how a piece is turned, and not its grain or the print along the cloth. */
    static boolean turns(MarkerOrder order, Wanted wanted) {
        return order.lyingOf(wanted.name()).border().isPresent();
    }

    @Override
    public boolean isKept(PlacedPiece placed, Wanted wanted, Reading reading) {
        Optional<Lying.Border> border = order.lyingOf(wanted.name()).border();
        return border.isEmpty()
                || (pointsAway(border.get(), wanted, reading)
                        && Math.abs(off(border.get(), wanted, reading))
                                <= tolerance.micrometres() + reading.deviation());
    }

    @Override
    public Violation violation(PlacedPiece placed, Wanted wanted, Reading reading) {
        Lying.Border border = order.lyingOf(wanted.name()).border().orElseThrow();
        return new Violation.OffBorder(
                placed, pointsAway(border, wanted, reading), Math.abs(off(border, wanted, reading)) / 1000.0);
    }

    private static boolean pointsAway(Lying.Border border, Wanted wanted, Reading reading) {
        if (wanted.piece().up().isEmpty()) {
            return false;
        }
        Point up = reading.pose().orientation().apply(upEnd(wanted));
        return up.x() == 0 && (up.y() > 0) == (border.selvedge() == Lying.Selvedge.NEAR);
    }

    private static Point upEnd(Wanted wanted) {
        return wanted.piece().up().orElse(QuarterTurn.NONE).apply(new Point(1, 0));
    }

    /** Returns how far the tied point lies from the line. */
    private static double off(Lying.Border border, Wanted wanted, Reading reading) {
        return reading.pose().apply(tied(border.at(), wanted)).y() - border.y().micrometres();
    }

    private static Point tied(Lying.Tie tie, Wanted wanted) {
        return switch (tie.kind()) {
            case NOTCH -> wanted.piece().marks().notches().get(tie.number() - 1).from();
            case DRILL_HOLE -> wanted.piece().marks().drillHoles().get(tie.number() - 1);
            case LOWEST_POINT -> {
                Point up = upEnd(wanted);
                List<Point> vertices = wanted.piece().outline().shell().vertices();
                yield vertices.stream()
                        .max(Comparator.comparingLong(vertex -> -vertex.x() * up.x() - vertex.y() * up.y()))
                        .orElseThrow();
            }
        };
    }
}
