package lengthwise.svg;

import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.GrainLine;
import lengthwise.model.Placement;
import lengthwise.model.Segment;

/**
 * The arrow drawn along the grain line of a laid piece: one head at the up end, two where the piece may lie either way.
 *
 * @param line in marker coordinates, micrometres
 * @param headAtStart whether there is a head where the line starts
 * @param headAtEnd likewise; at least one of the two
 */
record GrainArrow(Segment line, boolean headAtStart, boolean headAtEnd) {
    private static final double LONGEST_HEAD = 7_000;
    private static final double HALF_HEAD_WIDTH = 0.27;

    /** What stands nearer to an arrow than this looks as if it belonged to it (micrometres). */
    private static final long AIR = 1_500;

    /** A shorter arrow is hard to lay a ruler along (micrometres). */
    private static final double SHORTEST = 14_000;

    static GrainArrow of(Placement placement) {
        Segment line = GrainLine.of(placement);
        long up = placement
                .item()
                .piece()
                .upEnd()
                .map(placement.pose().orientation()::apply)
                .orElse(Point.ORIGIN)
                .dot(line.to().minus(line.from()));
        return new GrainArrow(line, up <= 0, up >= 0);
    }

    /** Returns the arrows along one half of the line, the half with the head first; none where those are too short. */
    List<GrainArrow> halves() {
        if (line.length() < 2 * SHORTEST) {
            return List.of();
        }
        Point middle = new Point(
                (line.from().x() + line.to().x()) / 2,
                (line.from().y() + line.to().y()) / 2);
        GrainArrow first = new GrainArrow(new Segment(line.from(), middle), headAtStart, headAtEnd);
        GrainArrow last = new GrainArrow(new Segment(middle, line.to()), headAtStart, headAtEnd);
        return headAtEnd ? List.of(last, first) : List.of(first, last);
    }

    /** Returns what lettering should keep out of: the arrow, heads and all, and some air. */
    Box room() {
        long beside = Math.round(HALF_HEAD_WIDTH * head()) + AIR;
        return new Box(
                Math.min(line.from().x(), line.to().x()) - beside,
                Math.min(line.from().y(), line.to().y()) - beside,
                Math.max(line.from().x(), line.to().x()) + beside,
                Math.max(line.from().y(), line.to().y()) + beside);
    }

    private double head() {
        return Math.min(LONGEST_HEAD, line.length() / 3);
    }

    /** Returns the data of a path, in millimetres. */
    String path(Point shift) {
        double x1 = (line.from().x() + shift.x()) / 1000.0;
        double y1 = (line.from().y() + shift.y()) / 1000.0;
        double x2 = (line.to().x() + shift.x()) / 1000.0;
        double y2 = (line.to().y() + shift.y()) / 1000.0;
        double length = Math.max(0.001, Math.hypot(x2 - x1, y2 - y1));
        double ux = (x2 - x1) / length * head() / 1000;
        double uy = (y2 - y1) / length * head() / 1000;
        StringBuilder data = new StringBuilder("M%s %s L%s %s"
                .formatted(Millimetres.of(x1), Millimetres.of(y1), Millimetres.of(x2), Millimetres.of(y2)));
        if (headAtEnd) {
            data.append(head(x2, y2, -ux, -uy));
        }
        if (headAtStart) {
            data.append(head(x1, y1, ux, uy));
        }
        return data.toString();
    }

    private static String head(double x, double y, double backX, double backY) {
        return " M%s %s L%s %s L%s %s Z"
                .formatted(
                        Millimetres.of(x),
                        Millimetres.of(y),
                        Millimetres.of(x + backX - HALF_HEAD_WIDTH * backY),
                        Millimetres.of(y + backY + HALF_HEAD_WIDTH * backX),
                        Millimetres.of(x + backX + HALF_HEAD_WIDTH * backY),
                        Millimetres.of(y + backY - HALF_HEAD_WIDTH * backX));
    }
}
