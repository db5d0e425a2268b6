package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.PieceMarks;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.SpreadWords;

/**
 * Writes a marker as an SVG drawing at true scale: one unit is one millimetre, x runs along the fabric, and the corner
 * of the cloth on the table lies at 0, 0. The cloth is drawn with its ends and edges; title, check squares and notes
 * stand before its start, so that the drawing is hardly wider than the cloth.
 *
 * <p>Each piece is a group {@code <g data-piece data-size data-garment data-customer data-hand data-number>}; its first path is the
 * cut line, closed, in absolute vertices with three decimals, and nothing on or above it is transformed. So
 * {@link MarkerSvgReader} gets the same micrometres back. Grain arrow, notches, drill holes, inner lines and the label
 * follow, and the edge on the fold, which is not cut; {@code data-cut="already"} says that the piece is. The root names the
 * version of this layout and what cannot be read from the drawing.
 *
 * <p>The same marker gives the same text, in every locale.
 */
public final class MarkerSvg {
    /** The version of what is said above; a reader refuses one that it does not know. */
    static final String VERSION = "1";

    static final String INK = "#1c2a30";
    static final String FAINT = "#7d898d";
    static final String NOT_CUTTABLE = "#f0ede6";

    /** How much of the print a piece hides, where the print is drawn. */
    private static final String SEEN_THROUGH = "0.45";

    private static final double TOP = 16;
    private static final double BOTTOM = 20;
    private static final double RIGHT = 8;
    private static final double LEAST_HEIGHT = 290;

    private final Marker marker;
    private final Fabric fabric;
    private final MarkerNotes notes;
    private final List<Placement> placements;
    private final Tints tints;
    private final Markup svg = new Markup();
    private final Strokes strokes = new Strokes(svg);

    /** The cloth on the table, and the corner of the cuttable area on it. */
    private final Length clothWidth;

    private final Point corner;

    private MarkerSvg(Marker marker, MarkerNotes notes) {
        this.marker = marker;
        this.fabric = marker.order().fabric();
        this.notes = notes;
        this.placements = marker.inLayingOrder();
        this.tints = new Tints(marker.order());
        clothWidth = fabric.laidWidth();
        corner = new Point(
                fabric.spread().startAllowance().micrometres(),
                fabric.edgesOnTable().near().micrometres());
    }

    /** Returns the text of the file, to be stored in UTF-8. */
    public static String of(Marker marker, MarkerNotes notes) {
        return new MarkerSvg(marker, notes).write();
    }

    private String write() {
        List<PieceLabel> labels = IntStream.range(0, placements.size())
                .mapToObj(i -> PieceLabel.of(placements.get(i), marker.order(), i + 1))
                .toList();
        double bottom = Math.max(clothWidth.millimetres() + BOTTOM, LEAST_HEIGHT - TOP);
        TitleColumn title = new TitleColumn(marker, notes, tints, keyLines(labels), -TOP, bottom);

        svg.xmlDeclaration();
        double left = -title.width();
        ClothDrawing cloth = new ClothDrawing(marker, corner, svg);
        double width = cloth.reach() + RIGHT - left;
        double height = bottom + TOP;
        svg.openDrawing(
                left,
                -TOP,
                width,
                height,
                "data-lengthwise-version",
                VERSION,
                "data-job",
                notes.job(),
                "data-fabric",
                fabric.name(),
                "data-spread",
                SpreadWords.key(fabric.spread()),
                "data-length",
                Millimetres.of(marker.length().micrometres()),
                "data-cuttable-width",
                Millimetres.of(fabric.cuttableWidth().micrometres()),
                "data-corner",
                Millimetres.of(corner.x()) + " " + Millimetres.of(corner.y()),
                "font-family",
                Lettering.FACES,
                "fill",
                INK);
        svg.line().element("title", notes.job() + ": " + fabric.name()).line();
        svg.empty(
                        "rect",
                        "x",
                        Millimetres.of(left),
                        "y",
                        Millimetres.of(-TOP),
                        "width",
                        Millimetres.of(width),
                        "height",
                        Millimetres.of(height),
                        "fill",
                        "#ffffff")
                .line();
        cloth.cloth();
        cloth.edges();
        cloth.print();
        cloth.repeatGrid();
        title.write(svg);
        svg.open("g", "id", "pieces", "stroke-linejoin", "round").line();
        for (int i = 0; i < placements.size(); i++) {
            piece(placements.get(i), labels.get(i), i + 1);
        }
        svg.close().line();
        cloth.sharedCuts();
        cloth.motifs();
        svg.close().line();
        return svg.toString();
    }

    private List<String> keyLines(List<PieceLabel> labels) {
        return IntStream.range(0, labels.size())
                .filter(i -> labels.get(i).keyed())
                .mapToObj(i -> {
                    Item item = placements.get(i).item();
                    return Stream.of(
                                    (i + 1) + " = " + item.piece().name(),
                                    item.piece().size().name(),
                                    "garment " + PieceLabel.garments(item),
                                    PieceLabel.hands(item, marker.order()))
                            .filter(part -> !part.isBlank())
                            .collect(Collectors.joining(" · "));
                })
                .toList();
    }

    private void piece(Placement placement, PieceLabel label, int number) {
        Item item = placement.item();
        Outline outline = placement.outline();
        svg.open(
                        "g",
                        "id",
                        "piece-" + number,
                        "data-piece",
                        item.piece().name(),
                        "data-size",
                        item.piece().size().name(),
                        "data-garment",
                        item.garments().stream()
                                .map(garment -> Integer.toString(garment.number()))
                                .collect(Collectors.joining(" ")),
                        "data-hand",
                        item.hand().letter(),
                        "data-number",
                        Integer.toString(number),
                        "data-cut",
                        marker.order().cutAlready().holds(placement) ? "already" : "now")
                .attributeIfAny("data-customer", Garment.customers(item.garments()))
                .line();
        List<String> paint = new ArrayList<>(List.of("fill", tints.of(placement)));
        if (PrintTiles.isShown(fabric)) {
            paint.addAll(List.of("fill-opacity", SEEN_THROUGH));
        }
        paint.addAll(List.of("stroke", "#000000", "stroke-width", "0.25"));
        strokes.path(Millimetres.path(outline, corner), paint.toArray(String[]::new));
        item.piece().foldEdge().ifPresent(edge -> fold(placement, edge));
        strokes.path(
                label.arrow().path(corner), "data-mark", "grain", "fill", INK, "stroke", INK, "stroke-width", "0.3");
        marks(placement
                .item()
                .piece()
                .marks()
                .mapped(point -> placement.pose().apply(point).plus(corner)));
        if (fabric.repeat().isPresent()) {
            item.piece()
                    .matchPoint()
                    .ifPresent(match ->
                            matchPoint(placement.pose().apply(match.at()).plus(corner)));
        }
        lettering(label);
        svg.close().line();
    }

    /** The edge on the fold is a part of the cut line that is not cut. */
    private void fold(Placement placement, Segment edge) {
        strokes.path(
                Strokes.line(new Segment(
                        placement.pose().apply(edge.from()).plus(corner),
                        placement.pose().apply(edge.to()).plus(corner))),
                "data-mark",
                "fold",
                "fill",
                "none",
                "stroke",
                INK,
                "stroke-width",
                "1",
                "stroke-dasharray",
                "14 3 2 3");
    }

    private void matchPoint(Point at) {
        strokes.path(
                "M%s %s m0 -3 l3 3 -3 3 -3 -3 Z".formatted(Millimetres.of(at.x()), Millimetres.of(at.y())),
                "data-mark",
                "match-point",
                "fill",
                "none",
                "stroke",
                "#000000",
                "stroke-width",
                "0.3");
    }

    private void marks(PieceMarks marks) {
        String notches = marks.notches().stream().map(Strokes::line).collect(Collectors.joining(" "));
        if (!notches.isEmpty()) {
            strokes.path(notches, "data-mark", "notch", "fill", "none", "stroke", "#000000", "stroke-width", "0.3");
        }
        for (Point hole : marks.drillHoles()) {
            String x = Millimetres.of(hole.x());
            String y = Millimetres.of(hole.y());
            strokes.path(
                    "M%s %s m-1.5 0 a1.5 1.5 0 1 0 3 0 a1.5 1.5 0 1 0 -3 0 M%s %s m-3 0 h6 m-3 -3 v6"
                            .formatted(x, y, x, y),
                    "data-mark",
                    "drill-hole",
                    "fill",
                    "none",
                    "stroke",
                    "#000000",
                    "stroke-width",
                    "0.2");
        }
        String inner = marks.innerLines().stream()
                .map(line -> line.stream()
                        .map(point -> Millimetres.of(point.x()) + " " + Millimetres.of(point.y()))
                        .collect(Collectors.joining(" L", "M", "")))
                .collect(Collectors.joining(" "));
        if (!inner.isEmpty()) {
            strokes.path(
                    inner,
                    "data-mark",
                    "inner-line",
                    "fill",
                    "none",
                    "stroke",
                    FAINT,
                    "stroke-width",
                    "0.25",
                    "stroke-dasharray",
                    "3 2");
        }
    }

    private void lettering(PieceLabel label) {
        double x = (label.x() + corner.x()) / 1000;
        double y = (label.y() + corner.y()) / 1000;
        String size = Millimetres.of(label.size());
        if (label.turned()) {
            svg.open(
                    "text",
                    "text-anchor",
                    "middle",
                    "font-size",
                    size,
                    "transform",
                    "rotate(-90 %s %s)".formatted(Millimetres.of(x), Millimetres.of(y)));
        } else {
            svg.open("text", "text-anchor", "middle", "font-size", size);
        }
        for (int i = 0; i < label.lines().size(); i++) {
            svg.element(
                    "tspan", label.lines().get(i), "x", Millimetres.of(x), "y", Millimetres.of(y + label.baseline(i)));
        }
        svg.close().line();
    }
}
