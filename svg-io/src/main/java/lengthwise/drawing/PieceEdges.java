package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.Course.Foot;
import lengthwise.drawing.Course.Stretch;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * The edges of a drawn piece, measured along the curves as they were flattened: along the line of stitching where the drawing
 * has it beside the whole edge, else along the outline. What lies on the fold is no edge.
 *
 * <p>Points are named on the outline. Its corners are counted clockwise on the page from the one next to the upper left; a point
 * stands for the corner of the line of stitching beside it, else for the place nearest to it. Of two ways round, the shorter one
 * is meant, unless a point on the way is named.
 */
public final class PieceEdges {
    /** As wide as any seam allowance. */
    private static final double WIDEST_ALLOWANCE = 40_000;

    /** Ends of lines that are meant to meet (µm). */
    private static final double MEETS = 500;

    private static final double ON_FOLD = 300;

    /** Ways that differ by less are as long as each other to the eye. */
    private static final double CLEARLY_SHORTER = 0.95;

    /** The corner of a line of stitching is so much farther from that of the outline than the line itself: up to 100° of turn. */
    private static final double CORNER_REACH = 1.6;

    private static final double CORNER_SLACK = 1_000;

    /** A line of stitching is not so much shorter than its edge; then it belongs to another one. */
    private static final double LEAST_BESIDE = 0.5;

    private static final int SAMPLES = 24;
    private static final int MOST_SEW_LINES = 100;

    /** An outline with more corners is ragged: none of them is worth a number. */
    private static final int MOST_CORNERS = 500;

    private static final int MOST_SECTIONS = 1_000;

    private final DrawnPiece piece;
    private final Course cutLine;
    private final List<SewLine> sewLines;
    private final List<Point> corners;

    /** Which line of the drawing was measured along. */
    public enum Line {
        OUTLINE,
        SEW_LINE
    }

    /**
     * How long an edge is.
     *
     * @param micrometres of what is drawn, once
     * @param meetsFold whether it ends on the fold, and so goes on as long again when the piece is opened
     */
    public record Measured(double micrometres, Line along, boolean meetsFold) {}

    /** A line of stitching and its corners. */
    private record SewLine(Course course, List<Point> corners) {}

    private PieceEdges(DrawnPiece piece) {
        this.piece = piece;
        Course whole = Course.of(piece.outline().shell());
        this.cutLine =
                piece.foldEdge().map(fold -> whole.without(fold, ON_FOLD)).orElse(whole);
        this.sewLines = joined(piece.sewLines()).stream()
                .map(PieceEdges::course)
                .map(line -> piece.foldEdge()
                        .map(fold -> line.without(fold, ON_FOLD))
                        .orElse(line))
                .map(line -> new SewLine(line, Corners.along(line)))
                .toList();
        List<Point> all = Corners.along(cutLine);
        this.corners = all.size() > MOST_CORNERS
                ? List.of()
                : Corners.fromUpperLeft(all, piece.outline().box());
    }

    public static PieceEdges of(DrawnPiece piece) {
        return new PieceEdges(piece);
    }

    /** Returns the corners, the first of them corner 1; none if the outline is ragged. */
    public List<Point> corners() {
        return corners;
    }

    /** Returns where a point is; empty if the piece has none of that number. */
    public Optional<Point> at(EdgePoint point) {
        List<Point> all = switch (point.kind()) {
            case CORNER -> corners;
            case NOTCH -> piece.notches().stream().map(Segment::from).toList();
        };
        return point.number() >= 1 && point.number() <= all.size()
                ? Optional.of(all.get(point.number() - 1))
                : Optional.empty();
    }

    /** Returns which points there are, a clause: "corners 1 to 5 and notch 1". */
    public String points() {
        return said("corner", corners.size()) + " and "
                + said("notch", piece.notches().size());
    }

    private static String said(String what, int count) {
        String plural = what.equals("notch") ? "notches" : what + "s";
        return switch (count) {
            case 0 -> "no " + plural;
            case 1 -> what + " 1";
            default -> plural + " 1 to " + count;
        };
    }

    /** Returns how long the whole outline is, the fold left out. */
    public Measured whole() {
        Optional<Course> sewn = sewLines.stream()
                .map(SewLine::course)
                .filter(line ->
                        offBeside(new Stretch(0, cutLine.length()), line).isPresent())
                .filter(line -> line.length() > LEAST_BESIDE * cutLine.length())
                .findFirst();
        return new Measured(
                sewn.orElse(cutLine).length(), sewn.isPresent() ? Line.SEW_LINE : Line.OUTLINE, !cutLine.closed());
    }

    /**
     * Measures from one point to another.
     *
     * @param past a point on the way, where two ways lead round
     * @throws DrawingException in a clause, without a place, if a point is not there, or it is not clear which way is meant
     */
    public Measured between(EdgePoint from, EdgePoint to, Optional<EdgePoint> past) throws DrawingException {
        Point start = need(from);
        Point end = need(to);
        Stretch way = way(cutLine.foot(start).along(), cutLine.foot(end).along(), from, to, past);
        return measured(way, start, end);
    }

    /** The part of an edge from one of its named points to the next. */
    public record Section(EdgePoint from, EdgePoint to, Measured length) {}

    /** A named point and how far along the outline it lies. */
    private record Place(EdgePoint point, double along) {}

    /** Returns the parts of the outline from each named point to the next one, clockwise on the page; none if they are too many. */
    public List<Section> sections() {
        List<Place> places = new ArrayList<>();
        for (int i = 1; i <= corners.size(); i++) {
            place(new EdgePoint(EdgePoint.Kind.CORNER, i)).ifPresent(places::add);
        }
        for (int i = 1; i <= piece.notches().size(); i++) {
            place(new EdgePoint(EdgePoint.Kind.NOTCH, i)).ifPresent(places::add);
        }
        if (places.size() > MOST_SECTIONS) {
            return List.of();
        }
        places.sort(Comparator.comparingDouble(Place::along));
        if (cutLine.closed() && places.size() > 1) {
            Place first = places.get(0);
            places.add(new Place(first.point, first.along + cutLine.length()));
        }
        List<Section> sections = new ArrayList<>();
        for (int i = 1; i < places.size(); i++) {
            Place from = places.get(i - 1);
            Place to = places.get(i);
            Stretch way = new Stretch(from.along, to.along);
            sections.add(
                    new Section(from.point, to.point, measured(way, cutLine.at(way.from()), cutLine.at(way.to()))));
        }
        return List.copyOf(sections);
    }

    private Optional<Place> place(EdgePoint point) {
        return at(point).map(at -> new Place(point, cutLine.foot(at).along()));
    }

    private Measured measured(Stretch way, Point start, Point end) {
        Optional<Stretch> sewn = beside(way, start, end);
        return new Measured(
                sewn.orElse(way).length(),
                sewn.isPresent() ? Line.SEW_LINE : Line.OUTLINE,
                isOnFold(start) || isOnFold(end));
    }

    private boolean isOnFold(Point point) {
        return piece.foldEdge()
                .filter(fold -> Vectors.distance(fold, point) <= ON_FOLD)
                .isPresent();
    }

    private Point need(EdgePoint point) throws DrawingException {
        return at(point)
                .orElseThrow(() -> new DrawingException("it has no %s; it has %s".formatted(point.called(), points())));
    }

    private Stretch way(double start, double end, EdgePoint from, EdgePoint to, Optional<EdgePoint> past)
            throws DrawingException {
        if (Math.abs(start - end) < 1) {
            throw new DrawingException("%s and %s are at the same place".formatted(from.called(), to.called()));
        }
        List<Stretch> ways = cutLine.between(start, end);
        if (past.isPresent()) {
            double along = cutLine.foot(need(past.get())).along();
            List<Stretch> through = ways.stream()
                    .filter(way ->
                            cutLine.holds(way, along) && Math.abs(along - start) >= 1 && Math.abs(along - end) >= 1)
                    .toList();
            if (through.size() != 1) {
                throw new DrawingException(
                        "%s does not lie between %s and %s".formatted(past.get().called(), from.called(), to.called()));
            }
            return through.get(0);
        }
        Stretch shorter = ways.get(0);
        Stretch longer = ways.get(0);
        for (Stretch way : ways) {
            shorter = way.length() < shorter.length() ? way : shorter;
            longer = way.length() > longer.length() ? way : longer;
        }
        if (ways.size() > 1 && shorter.length() > CLEARLY_SHORTER * longer.length()) {
            throw new DrawingException(
                    "from %s to %s both ways round are about as long; name a point on the way, such as past: notch 1"
                            .formatted(from.called(), to.called()));
        }
        return shorter;
    }

    /** Returns the part of the nearest line of stitching that runs beside a part of the outline, all along it. */
    private Optional<Stretch> beside(Stretch way, Point start, Point end) {
        Optional<Stretch> nearest = Optional.empty();
        double least = Double.MAX_VALUE;
        for (SewLine sewLine : sewLines) {
            Course line = sewLine.course;
            double middle = line.foot(cutLine.at(way.middle())).along();
            OptionalDouble off = offBeside(way, line);
            Optional<Stretch> part = line.between(besideCorner(start, sewLine), besideCorner(end, sewLine)).stream()
                    .filter(each -> line.holds(each, middle) && each.length() > LEAST_BESIDE * way.length())
                    .findFirst();
            if (off.isPresent() && part.isPresent() && off.getAsDouble() < least) {
                least = off.getAsDouble();
                nearest = part;
            }
        }
        return nearest;
    }

    /** Returns how far a line is from a part of the outline on the whole; empty if it is farther than any allowance. */
    private OptionalDouble offBeside(Stretch way, Course line) {
        double sum = 0;
        for (int i = 0; i <= SAMPLES; i++) {
            double off = line.foot(cutLine.at(way.from() + way.length() * i / SAMPLES))
                    .distance();
            if (off > WIDEST_ALLOWANCE) {
                return OptionalDouble.empty();
            }
            sum += off;
        }
        return OptionalDouble.of(sum);
    }

    private static double besideCorner(Point point, SewLine line) {
        Foot foot = line.course.foot(point);
        double reach = CORNER_REACH * foot.distance() + CORNER_SLACK;
        Optional<Point> nearest = Optional.empty();
        for (Point corner : line.corners) {
            double distance = corner.distance(point);
            if (distance <= reach) {
                reach = distance;
                nearest = Optional.of(corner);
            }
        }
        return nearest.map(corner -> line.course.foot(corner).along()).orElse(foot.along());
    }

    /** Returns the lines with those joined to one whose ends meet; where there are too many to be seams, none. */
    private static List<List<Point>> joined(List<List<Point>> drawn) {
        List<List<Point>> lines =
                new ArrayList<>(drawn.stream().filter(line -> line.size() > 1).toList());
        if (lines.size() > MOST_SEW_LINES) {
            return List.of();
        }
        for (int i = 0; i < lines.size(); i++) {
            int j = i + 1;
            while (j < lines.size()) {
                Optional<List<Point>> longer = joined(lines.get(i), lines.get(j));
                if (longer.isPresent()) {
                    lines.set(i, longer.get());
                    lines.remove(j);
                    j = i + 1;
                } else {
                    j++;
                }
            }
        }
        return lines;
    }

    private static Course course(List<Point> line) {
        boolean closed = isClosed(line);
        return new Course(closed ? line.subList(0, line.size() - 1) : line, closed);
    }

    private static boolean isClosed(List<Point> line) {
        return line.size() > 3 && meet(line.get(0), last(line));
    }

    private static Optional<List<Point>> joined(List<Point> line, List<Point> other) {
        if (isClosed(line) || isClosed(other)) {
            return Optional.empty();
        }
        if (meet(last(line), other.get(0))) {
            return Optional.of(chained(line, other));
        }
        if (meet(last(line), last(other))) {
            return Optional.of(chained(line, reversed(other)));
        }
        if (meet(line.get(0), last(other))) {
            return Optional.of(chained(other, line));
        }
        return meet(line.get(0), other.get(0)) ? Optional.of(chained(reversed(other), line)) : Optional.empty();
    }

    private static boolean meet(Point a, Point b) {
        return a.distance(b) <= MEETS;
    }

    private static Point last(List<Point> line) {
        return line.get(line.size() - 1);
    }

    private static List<Point> chained(List<Point> line, List<Point> next) {
        List<Point> all = new ArrayList<>(line);
        all.addAll(next);
        return all;
    }

    private static List<Point> reversed(List<Point> line) {
        List<Point> reversed = new ArrayList<>(line);
        Collections.reverse(reversed);
        return reversed;
    }
}
