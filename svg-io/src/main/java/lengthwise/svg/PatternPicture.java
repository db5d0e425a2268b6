package lengthwise.svg;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.drawing.Arrow;
import lengthwise.drawing.Arrow.Heads;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.PieceEdges;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * A picture, at true scale, of what was recognised in drawings: a panel for each file and size, the pieces tinted, with
 * grain line and up end, fold, notches and corners with their numbers, drill holes, sew lines and names. For the eye alone; nothing is cut by it.
 */
public final class PatternPicture {
    private static final List<String> PALE = List.of("#e3e9da", "#f3e3d7", "#d9e5ea", "#efe0ea", "#eee9cf", "#dfdfee");
    private static final String INK = "#23312f";
    private static final String FOLD = "#a8442a";
    private static final String SEW = "#5b7b74";
    private static final long MARGIN = 12_000;
    private static final long HEADING = 14_000;
    private static final long LEGEND = 22_000;
    private static final long NARROWEST = 270_000;

    /** So many line pieces a label keeps clear of; more would take long. */
    private static final int MOST_OBSTACLES = 1000;

    /** Width of an average letter as a share of the letter's height: an estimate on the wide side. */
    private static final double LETTER = 0.58;

    private final Markup svg = new Markup();
    private final Map<String, String> tints = new LinkedHashMap<>();

    private PatternPicture() {}

    /** The pieces of one size in one file. */
    private record Panel(String heading, List<DrawnPiece> pieces) {
        Box box() {
            return pieces.stream()
                    .map(piece -> piece.outline().box())
                    .reduce(Box::union)
                    .orElseThrow();
        }

        long height() {
            return box().height() + HEADING + 2 * MARGIN;
        }
    }

    /** Returns the picture as the text of an SVG file, in UTF-8. */
    public static String of(List<PatternDrawing> drawings) {
        List<Panel> panels = new ArrayList<>();
        for (PatternDrawing drawing : drawings) {
            Map<Optional<String>, List<DrawnPiece>> bySize = new LinkedHashMap<>();
            for (DrawnPiece piece : drawing.pieces()) {
                bySize.computeIfAbsent(piece.size(), size -> new ArrayList<>()).add(piece);
            }
            String file = drawing.file().replaceAll(".*[/\\\\]", "");
            bySize.forEach((size, pieces) -> panels.add(
                    new Panel(file + size.map(name -> " · size " + name).orElse(""), pieces)));
        }
        return new PatternPicture().draw(panels);
    }

    private String draw(List<Panel> panels) {
        long width = Math.max(
                NARROWEST, panels.stream().mapToLong(p -> p.box().width()).max().orElse(0) + 2 * MARGIN);
        long height = panels.stream().mapToLong(Panel::height).sum() + LEGEND;
        svg.xmlDeclaration()
                .openDrawing(
                        0,
                        0,
                        width / 1000.0,
                        height / 1000.0,
                        "font-family",
                        "sans-serif",
                        "fill",
                        "none",
                        "stroke-linecap",
                        "round",
                        "stroke-linejoin",
                        "round")
                .line();
        svg.empty("rect", "width", "100%", "height", "100%", "fill", "#ffffff").line();
        long top = 0;
        for (Panel panel : panels) {
            panel(panel, top, width);
            top += panel.height();
        }
        legend(top);
        return svg.close().line().toString();
    }

    private void panel(Panel panel, long top, long width) {
        if (top > 0) {
            line(new Point(MARGIN, top), new Point(width - MARGIN, top), INK, 0.2, "");
        }
        label(panel.heading(), MARGIN / 1000.0, (top + HEADING) / 1000.0 - 3, 8, "start", true);
        Point by = new Point(
                MARGIN - panel.box().minX(),
                top + HEADING + MARGIN / 2 - panel.box().minY());
        for (DrawnPiece piece : panel.pieces()) {
            String tint = tints.computeIfAbsent(piece.name(), name -> PALE.get(tints.size() % PALE.size()));
            piece(piece, by, tint);
        }
    }

    private void piece(DrawnPiece piece, Point by, String tint) {
        Outline outline = piece.outline().moved(by);
        svg.open("g", "data-piece", piece.name(), "data-size", piece.size().orElse(""))
                .line();
        svg.element(
                        "title",
                        piece.name()
                                + piece.size().map(size -> ", size " + size).orElse(""))
                .line();
        svg.empty(
                        "path",
                        "d",
                        Millimetres.path(outline, Point.ORIGIN),
                        "fill",
                        tint,
                        "fill-rule",
                        "evenodd",
                        "stroke",
                        INK,
                        "stroke-width",
                        "0.5")
                .line();
        piece.sewLines().forEach(points -> chain(points, by, SEW, "2.4 1.6"));
        piece.innerLines().forEach(points -> chain(points, by, INK, ""));
        piece.notches().forEach(notch -> line(notch.from().plus(by), notch.to().plus(by), INK, 0.9, ""));
        piece.drillHoles().forEach(hole -> drillHole(hole.plus(by)));
        piece.foldEdge().ifPresent(edge -> fold(edge, outline, by));
        piece.arrow().ifPresent(arrow -> arrow(arrow, by));
        numbers(piece, by);
        name(piece, outline, by);
        svg.close().line();
    }

    /** Numbers notches at their tips, and corners in circles, a little inwards: by these a job names edges. */
    private void numbers(DrawnPiece piece, Point by) {
        List<Segment> notches = piece.notches();
        for (int i = 0; i < notches.size(); i++) {
            Point tip = notches.get(i).to();
            Point in = towards(notches.get(i).from(), tip, notches.get(i).length() + 2_800);
            number(i + 1, in.plus(by));
        }
        Box box = piece.outline().box();
        Point middle = new Point((box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2);
        List<Point> corners = PieceEdges.of(piece).corners();
        for (int i = 0; i < corners.size(); i++) {
            corner(i + 1, towards(corners.get(i), middle, 6_500).plus(by));
        }
    }

    private static Point towards(Point from, Point to, double by) {
        double length = Math.max(1, from.distance(to));
        return new Point(
                from.x() + StrictMath.round((to.x() - from.x()) * by / length),
                from.y() + StrictMath.round((to.y() - from.y()) * by / length));
    }

    private void corner(int number, Point at) {
        svg.empty(
                        "circle",
                        "cx",
                        Millimetres.of(at.x()),
                        "cy",
                        Millimetres.of(at.y()),
                        "r",
                        "2.8",
                        "fill",
                        "#ffffff",
                        "stroke",
                        INK,
                        "stroke-width",
                        "0.25")
                .line();
        number(number, at);
    }

    private void number(int number, Point at) {
        svg.element(
                        "text",
                        Integer.toString(number),
                        "x",
                        Millimetres.of(at.x()),
                        "y",
                        Millimetres.of(at.y() + 1_300),
                        "font-size",
                        "3.7",
                        "text-anchor",
                        "middle",
                        "fill",
                        INK,
                        "stroke",
                        "#ffffff",
                        "stroke-width",
                        "0.9",
                        "paint-order",
                        "stroke")
                .line();
    }

    private void name(DrawnPiece piece, Outline outline, Point by) {
        List<String> lines = new ArrayList<>();
        lines.add(piece.name() + (piece.mirrored() ? " (mirrored)" : ""));
        lines.add("%s × %s mm"
                .formatted(tenths(outline.box().width()), tenths(outline.box().height())));
        double longest = lines.stream().mapToInt(String::length).max().orElse(1) * LETTER;
        List<Segment> clearOf = new ArrayList<>();
        piece.arrow()
                .ifPresent(arrow -> clearOf.add(new Segment(
                        arrow.line().from().plus(by), arrow.line().to().plus(by))));
        for (List<Point> line : concat(piece.sewLines(), piece.innerLines())) {
            for (int i = 1; i < line.size() && clearOf.size() < MOST_OBSTACLES; i++) {
                clearOf.add(new Segment(line.get(i - 1).plus(by), line.get(i).plus(by)));
            }
        }
        LabelSpot spot = LabelSpot.in(outline, clearOf, List.of(), longest, lines.size() * 1.3);
        double letter = Math.max(1.8, Math.min(9, spot.unit() / 1000));
        double y = spot.y() / 1000 - letter * 1.3 * (lines.size() - 1) / 2 + letter * 0.35;
        for (int i = 0; i < lines.size(); i++) {
            label(
                    lines.get(i),
                    spot.x() / 1000,
                    y + i * letter * 1.3,
                    i == 0 ? letter : letter * 0.8,
                    "middle",
                    i == 0);
        }
    }

    private static List<List<Point>> concat(List<List<Point>> lines, List<List<Point>> more) {
        List<List<Point>> all = new ArrayList<>(lines);
        all.addAll(more);
        return all;
    }

    private void arrow(Arrow arrow, Point by) {
        Point from = arrow.line().from().plus(by);
        Point to = arrow.line().to().plus(by);
        line(from, to, INK, 0.5, "");
        if (arrow.heads() != Heads.NONE) {
            head(from, to);
        }
        if (arrow.heads() == Heads.BOTH) {
            head(to, from);
        }
    }

    private void head(Point tail, Point tip) {
        double length = Math.max(1, tail.distance(tip));
        double ux = (tip.x() - tail.x()) / length;
        double uy = (tip.y() - tail.y()) / length;
        double size = Math.min(6000, length / 3);
        Point left = new Point(
                tip.x() - StrictMath.round(size * (ux + 0.4 * uy)), tip.y() - StrictMath.round(size * (uy - 0.4 * ux)));
        Point right = new Point(
                tip.x() - StrictMath.round(size * (ux - 0.4 * uy)), tip.y() - StrictMath.round(size * (uy + 0.4 * ux)));
        svg.empty("path", "d", path(List.of(tip, left, right)) + " Z", "fill", INK)
                .line();
    }

    private void fold(Segment edge, Outline outline, Point by) {
        Point from = edge.from().plus(by);
        Point to = edge.to().plus(by);
        line(from, to, FOLD, 1.3, "");
        double length = Math.max(1, from.distance(to));
        Point middle = new Point((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
        Box box = outline.box();
        Point centre = new Point((box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2);
        boolean left = to.minus(from).cross(centre.minus(from)) > 0;
        double inX = (left ? -1 : 1) * (to.y() - from.y()) / length;
        double inY = (left ? 1 : -1) * (to.x() - from.x()) / length;
        double degrees = Math.toDegrees(StrictMath.atan2((double) to.y() - from.y(), (double) to.x() - from.x()));
        double upright = degrees > 90 || degrees <= -90 ? degrees + 180 : degrees;
        String x = Millimetres.of(middle.x() / 1000.0 + inX * 5);
        String y = Millimetres.of(middle.y() / 1000.0 + inY * 5);
        svg.element(
                        "text",
                        "fold",
                        "x",
                        x,
                        "y",
                        y,
                        "transform",
                        "rotate(" + Millimetres.of(upright) + " " + x + " " + y + ")",
                        "font-size",
                        "6",
                        "text-anchor",
                        "middle",
                        "dominant-baseline",
                        "central",
                        "fill",
                        FOLD)
                .line();
    }

    private void drillHole(Point at) {
        svg.empty(
                        "circle",
                        "cx",
                        Millimetres.of(at.x()),
                        "cy",
                        Millimetres.of(at.y()),
                        "r",
                        "1.5",
                        "stroke",
                        INK,
                        "stroke-width",
                        "0.4")
                .line();
        line(at.minus(new Point(2500, 0)), at.plus(new Point(2500, 0)), INK, 0.3, "");
        line(at.minus(new Point(0, 2500)), at.plus(new Point(0, 2500)), INK, 0.3, "");
    }

    private void legend(long top) {
        long y = top + LEGEND / 2;
        long x = MARGIN;
        line(new Point(x, y), new Point(x + 12_000, y), INK, 0.5, "");
        x = entry("cut", x, y);
        line(new Point(x, y), new Point(x + 12_000, y), SEW, 0.35, "2.4 1.6");
        x = entry("sew", x, y);
        line(new Point(x, y), new Point(x + 12_000, y), FOLD, 1.3, "");
        x = entry("fold", x, y);
        line(new Point(x + 6_000, y - 3_000), new Point(x + 6_000, y + 3_000), INK, 0.9, "");
        number(1, new Point(x + 10_000, y));
        x = entry("notch 1", x, y);
        corner(1, new Point(x + 10_000, y));
        x = entry("corner 1", x, y);
        arrow(new Arrow(new Segment(new Point(x, y), new Point(x + 12_000, y)), Heads.ONE), Point.ORIGIN);
        x = entry("grain, up end", x + 2_000, y);
        drillHole(new Point(x + 9_000, y));
        entry("drill hole", x, y);
    }

    private long entry(String meaning, long x, long y) {
        label(meaning, x / 1000.0 + 14, y / 1000.0 + 1.3, 3.6, "start", false);
        return x + 16_000 + StrictMath.round(meaning.length() * 3600 * LETTER) + 4_000;
    }

    private void chain(List<Point> points, Point by, String colour, String dashes) {
        List<Point> moved = points.stream().map(point -> point.plus(by)).toList();
        stroke(path(moved), colour, 0.35, dashes);
    }

    private void line(Point from, Point to, String colour, double width, String dashes) {
        stroke(path(List.of(from, to)), colour, width, dashes);
    }

    private void stroke(String data, String colour, double width, String dashes) {
        svg.empty(
                        "path",
                        "d",
                        data,
                        "stroke",
                        colour,
                        "stroke-width",
                        Double.toString(width),
                        "stroke-dasharray",
                        dashes.isEmpty() ? "none" : dashes)
                .line();
    }

    private static String path(List<Point> points) {
        StringBuilder data = new StringBuilder();
        for (Point point : points) {
            data.append(data.isEmpty() ? "M" : " L")
                    .append(Millimetres.of(point.x()))
                    .append(' ')
                    .append(Millimetres.of(point.y()));
        }
        return data.toString();
    }

    private void label(String text, double x, double y, double size, String anchor, boolean bold) {
        svg.element(
                        "text",
                        text,
                        "x",
                        Millimetres.of(x),
                        "y",
                        Millimetres.of(y),
                        "font-size",
                        Millimetres.of(size),
                        "text-anchor",
                        anchor,
                        "font-weight",
                        bold ? "bold" : "normal",
                        "fill",
                        INK)
                .line();
    }

    private static String tenths(long micrometres) {
        long tenths = Math.round(micrometres / 100.0);
        return tenths / 10 + "." + tenths % 10;
    }
}
