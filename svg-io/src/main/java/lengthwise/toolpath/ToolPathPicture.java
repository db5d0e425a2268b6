package lengthwise.toolpath;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.svg.Caption;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.Markup;
import lengthwise.svg.Millimetres;

/**
 * Draws the way of a tool for the eye: what is cut as full lines, the ways between dashed, pieces numbered in the order
 * in which they are cut, and above it how far and how long it goes. At true scale, but not to cut by.
 */
public final class ToolPathPicture {
    private static final String INK = "#1c2a30";
    private static final String INNER = "#a8442a";
    private static final String TRAVEL = "#5b7b74";

    private final MarkerDrawing marker;
    private final ToolPath path;

    /** One line on paper and one letter, in millimetres: larger on a large marker, which is looked at from afar. */
    private final double line;

    private final double letter;
    private final Markup svg = new Markup();

    private ToolPathPicture(MarkerDrawing marker, ToolPath path) {
        this.marker = marker;
        this.path = path;
        double largest =
                Math.max(marker.length().millimetres(), marker.cuttableWidth().millimetres());
        line = Math.max(0.3, largest / 1500);
        letter = Math.max(4, largest / 70);
    }

    /**
     * Returns the text of an SVG file, to be stored in UTF-8.
     *
     * @param speed in millimetres a second
     */
    public static String of(MarkerDrawing marker, ToolPath path, double speed) {
        return new ToolPathPicture(marker, path).draw(speed);
    }

    /** Returns how far the tool goes and how long, in a sentence. */
    public static String summary(ToolPath path, double speed) {
        Duration time = path.time(speed);
        return String.format(
                Locale.ROOT,
                "Cut %s, travel %s; %d min %02d s at %s mm/s, starts and stops not counted.",
                LengthWords.both(new Length(StrictMath.round(path.cutLength()))),
                LengthWords.both(new Length(StrictMath.round(path.travelLength()))),
                time.toMinutes(),
                time.toSecondsPart(),
                speed == Math.rint(speed) ? Long.toString((long) speed) : Double.toString(speed));
    }

    private String draw(double speed) {
        Box page = CutterSvg.page(marker, path);
        double head = 3 * letter;
        double left = page.minX() / 1000.0 - letter;
        double top = page.minY() / 1000.0 - head;
        double width = page.width() / 1000.0 + 2 * letter;
        double height = page.height() / 1000.0 + head + letter;
        svg.xmlDeclaration()
                .openDrawing(
                        left,
                        top,
                        width,
                        height,
                        "fill",
                        "none",
                        "stroke-linejoin",
                        "round",
                        "font-family",
                        "Arial, Helvetica, 'Liberation Sans', 'DejaVu Sans', sans-serif")
                .line();
        svg.empty(
                        "rect",
                        "x",
                        Millimetres.of(left),
                        "y",
                        Millimetres.of(top),
                        "width",
                        Millimetres.of(width),
                        "height",
                        Millimetres.of(height),
                        "fill",
                        "#ffffff")
                .line();
        words(page.minX() / 1000.0, top + 1.1 * letter, letter, "start", marker.fabric());
        words(page.minX() / 1000.0, top + 2.3 * letter, 0.7 * letter, "start", summary(path, speed));
        outline(page);
        lines("cut", INK, path.passes().stream().filter(pass -> !pass.kind().isInner()));
        lines("inner", INNER, path.passes().stream().filter(pass -> pass.kind().isInner()));
        travel();
        numbers();
        return svg.close().line().toString();
    }

    private void outline(Box page) {
        svg.empty(
                        "rect",
                        "x",
                        Millimetres.of(page.minX()),
                        "y",
                        Millimetres.of(page.minY()),
                        "width",
                        Millimetres.of(page.width()),
                        "height",
                        Millimetres.of(page.height()),
                        "stroke",
                        "#b9c0c2",
                        "stroke-width",
                        Millimetres.of(line / 2))
                .line();
    }

    private void lines(String id, String ink, Stream<Pass> passes) {
        List<String> data =
                passes.map(pass -> CutterSvg.data(pass.points(), Point.ORIGIN)).toList();
        if (!data.isEmpty()) {
            svg.empty(
                            "path",
                            "id",
                            id,
                            "stroke",
                            ink,
                            "stroke-width",
                            Millimetres.of(line),
                            "d",
                            String.join(" ", data))
                    .line();
        }
    }

    private void travel() {
        List<String> ways = new ArrayList<>();
        Point at = Point.ORIGIN;
        for (Pass pass : path.passes()) {
            if (!at.equals(pass.start())) {
                ways.add(CutterSvg.data(List.of(at, pass.start()), Point.ORIGIN));
            }
            at = pass.end();
        }
        if (!ways.isEmpty()) {
            svg.empty(
                            "path",
                            "id",
                            "travel",
                            "stroke",
                            TRAVEL,
                            "stroke-width",
                            Millimetres.of(line),
                            "stroke-dasharray",
                            "%s %s".formatted(Millimetres.of(6 * line), Millimetres.of(4 * line)),
                            "d",
                            String.join(" ", ways))
                    .line();
        }
    }

    /** Where its outline begins stands a dot, and in the piece its number. */
    private void numbers() {
        svg.open("g", "id", "order", "fill", INK).line();
        List<Integer> order = path.passes().stream().map(Pass::piece).distinct().toList();
        for (int i = 0; i < order.size(); i++) {
            int piece = order.get(i);
            path.passes().stream()
                    .filter(pass -> pass.piece() == piece && !pass.kind().isInner())
                    .findFirst()
                    .ifPresent(outline -> svg.empty(
                            "circle",
                            "cx",
                            Millimetres.of(outline.start().x()),
                            "cy",
                            Millimetres.of(outline.start().y()),
                            "r",
                            Millimetres.of(2.5 * line)));
            Caption number = Caption.saying(
                    Integer.toString(i + 1),
                    marker.pieces().get(piece),
                    marker.marks().get(piece));
            double size = Math.min(letter, 1.2 * number.height());
            words(
                    number.middle().x() / 1000.0,
                    number.middle().y() / 1000.0 + size / 3,
                    size,
                    "middle",
                    number.lines().get(0));
        }
        svg.close().line();
    }

    private void words(double x, double y, double size, String anchor, String words) {
        svg.element(
                        "text",
                        words,
                        "x",
                        Millimetres.of(x),
                        "y",
                        Millimetres.of(y),
                        "font-size",
                        Millimetres.of(size),
                        "text-anchor",
                        anchor,
                        "fill",
                        INK)
                .line();
    }
}
