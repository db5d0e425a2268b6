package lengthwise.toolpath;

import java.util.List;
import java.util.stream.Collectors;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.Markup;
import lengthwise.svg.Millimetres;

/**
 * Writes the way of a tool as an SVG drawing for cutting machines: one unit is one millimetre, hairlines without fill,
 * one path a pass, in the order of cutting. Inner cuts are red, outlines black; lettering, where it is asked for, is
 * blue, stands first, and is of single strokes.
 *
 * <p>The corner of the cuttable area lies at 0, 0, unless the kerf carries the path beyond it: the drawing is then moved
 * into the page.
 */
public final class CutterSvg {
    /** In millimetres, a thousandth of an inch: lines this thin are cut, not engraved (common practice, no source). */
    private static final String HAIRLINE = "0.025";

    private static final String INNER = "#ff0000";
    private static final String OUTER = "#000000";
    private static final String LETTERING = "#0000ff";

    private CutterSvg() {}

    /**
     * Returns the text of the file, to be stored in UTF-8.
     *
     * @param kerf that the path allows for
     * @param lettered whether pieces bear their names, to be drawn or engraved
     */
    public static String of(MarkerDrawing marker, ToolPath path, Kerf kerf, boolean lettered) {
        Box page = page(marker, path);
        Point shift = new Point(-page.minX(), -page.minY());
        Markup svg = new Markup().xmlDeclaration();
        svg.comment("Cut lines for %s. One unit is one millimetre. %s".formatted(marker.fabric(), kerfWords(kerf)));
        Cautions.forCutting().forEach(svg::comment);
        svg.openDrawing(0, 0, page.width() / 1000.0, page.height() / 1000.0, "fill", "none", "stroke-width", HAIRLINE)
                .line();
        if (lettered) {
            lettering(marker, path, shift, svg);
        }
        int open = -1;
        for (Pass pass : path.passes()) {
            if (pass.piece() != open) {
                if (open >= 0) {
                    svg.close().line();
                }
                open = pass.piece();
                svg.open("g", "data-piece", marker.pieces().get(open).called()).line();
            }
            svg.empty(
                            "path",
                            "data-cut",
                            word(pass.kind()),
                            "stroke",
                            pass.kind().isInner() ? INNER : OUTER,
                            "d",
                            data(pass.points(), shift))
                    .line();
        }
        return svg.close().line().close().line().toString();
    }

    static String word(Pass.Kind kind) {
        return switch (kind) {
            case SLIT -> "slit";
            case DRILL_HOLE -> "drill-hole";
            case HOLE -> "hole";
            case OUTLINE -> "outline";
        };
    }

    static String kerfWords(Kerf kerf) {
        String width = Millimetres.of(kerf.width().micrometres());
        return kerf.width().equals(Length.ZERO)
                ? "No kerf is allowed for."
                : "The path lies half of a kerf of %s mm %s the cut line."
                        .formatted(width, kerf.side() == Kerf.Side.OUTWARD ? "outside" : "inside");
    }

    /** Returns path data in millimetres. */
    static String data(List<Point> points, Point shift) {
        boolean closed = points.get(0).equals(points.get(points.size() - 1));
        return points.subList(0, closed ? points.size() - 1 : points.size()).stream()
                .map(point -> Millimetres.of(point.x() + shift.x()) + " " + Millimetres.of(point.y() + shift.y()))
                .collect(Collectors.joining(" L", "M", closed ? " Z" : ""));
    }

    /** Returns the cuttable area, and all of the path. */
    static Box page(MarkerDrawing marker, ToolPath path) {
        Box cuttable = new Box(
                0, 0, marker.length().micrometres(), marker.cuttableWidth().micrometres());
        return Box.around(path.passes().stream().flatMap(pass -> pass.points().stream()))
                .map(cuttable::union)
                .orElse(cuttable);
    }

    private static void lettering(MarkerDrawing marker, ToolPath path, Point shift, Markup svg) {
        svg.open("g", "id", "lettering", "stroke", LETTERING).line();
        List<Integer> pieces =
                path.passes().stream().map(Pass::piece).distinct().toList();
        for (int piece : pieces) {
            List<List<Point>> strokes = marker.captionOf(piece).strokes();
            if (!strokes.isEmpty()) {
                svg.empty(
                                "path",
                                "d",
                                strokes.stream()
                                        .map(stroke -> data(stroke, shift))
                                        .collect(Collectors.joining(" ")))
                        .line();
            }
        }
        svg.close().line();
    }
}
