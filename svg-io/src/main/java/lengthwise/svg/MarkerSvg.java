package lengthwise.svg;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Lying;
import lengthwise.model.Marker;
import lengthwise.model.OnHand;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.SharedCut;
import lengthwise.model.Spread;
import lengthwise.model.SpreadWords;

/**
 * Writes a marker as an SVG drawing at true scale: one unit is one millimetre, x runs along the fabric, and the corner
 * of the cloth on the table lies at 0, 0. The cloth is drawn with its ends and edges; title, check squares and notes
 * stand before its start, so that the drawing is hardly wider than the cloth.
 *
 * <p>Each piece is a group {@code <g data-piece data-size data-garment data-hand data-number>}; its first path is the
 * cut line, closed, in absolute vertices with three decimals, and nothing on or above it is transformed. So
 * {@link MarkerSvgReader} gets the same micrometres back. Grain arrow, notches, drill holes, inner lines and the label
 * follow. The root names the version of this layout and what cannot be read from the drawing.
 *
 * <p>The same marker gives the same text, in every locale.
 */
public final class MarkerSvg {
    /** The version of what is said above; a reader refuses one that it does not know. */
    static final String VERSION = "1";

    static final String NAMESPACE = "http://www.w3.org/2000/svg";
    static final String INK = "#1c2a30";
    static final String FAINT = "#7d898d";
    static final String NOT_CUTTABLE = "#f0ede6";

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

    /** The cloth on the table, and the corner of the cuttable area on it. */
    private final Length clothLength;

    private final Length clothWidth;
    private final Point corner;

    private MarkerSvg(Marker marker, MarkerNotes notes) {
        this.marker = marker;
        this.fabric = marker.order().fabric();
        this.notes = notes;
        this.placements = marker.inLayingOrder();
        this.tints = new Tints(marker.order());
        clothLength = fabric.spread().onTable(marker.length());
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
        double width = clothLength.millimetres() + RIGHT - left;
        double height = bottom + TOP;
        svg.open(
                "svg",
                "xmlns",
                NAMESPACE,
                "version",
                "1.1",
                "width",
                Millimetres.of(width) + "mm",
                "height",
                Millimetres.of(height) + "mm",
                "viewBox",
                "%s %s %s %s"
                        .formatted(
                                Millimetres.of(left),
                                Millimetres.of(-TOP),
                                Millimetres.of(width),
                                Millimetres.of(height)),
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
        cloth();
        edges();
        print();
        repeatGrid();
        title.write(svg);
        svg.open("g", "id", "pieces", "stroke-linejoin", "round").line();
        for (int i = 0; i < placements.size(); i++) {
            piece(placements.get(i), labels.get(i), i + 1);
        }
        svg.close().line();
        sharedCuts();
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

    private void cloth() {
        svg.open("g", "id", "cloth").line();
        rectangle(Point.ORIGIN, clothLength, clothWidth, "fill", NOT_CUTTABLE);
        rectangle(
                corner,
                marker.length(),
                fabric.cuttableWidth(),
                "data-area",
                "cuttable",
                "fill",
                "#ffffff",
                "stroke",
                FAINT,
                "stroke-width",
                "0.25",
                "stroke-dasharray",
                "6 3");
        fabric.onHand().flatMap(OnHand::outline).ifPresent(this::remnant);
        fabric.join().ifPresent(this::join);
        ties();
        Box cloth = new Box(0, 0, clothLength.micrometres(), clothWidth.micrometres());
        for (Box flaw : fabric.flaws()) {
            flaw.moved(corner).common(cloth).ifPresent(this::flaw);
        }
        marker.order().cutAlready().spoilt().forEach(this::gone);
        rectangle(Point.ORIGIN, clothLength, clothWidth, "fill", "none", "stroke", INK, "stroke-width", "0.5");
        svg.close().line();
    }

    /** Where straight edges of two pieces coincide a light band lies over the cut line. */
    private void sharedCuts() {
        String lines = SharedCut.on(marker).stream()
                .map(SharedCut::line)
                .map(cut -> line(new Segment(cut.from().plus(corner), cut.to().plus(corner))))
                .collect(Collectors.joining(" "));
        if (!lines.isEmpty()) {
            path(
                    lines,
                    "data-mark",
                    "cut-once",
                    "fill",
                    "none",
                    "stroke",
                    FAINT,
                    "stroke-width",
                    "2.4",
                    "stroke-opacity",
                    "0.35");
        }
    }

    /** Lines along the cloth that pieces are keyed to or kept between, each once. */
    private void ties() {
        TreeMap<Length, String> lines = new TreeMap<>();
        TreeMap<String, Lying> byName = new TreeMap<>(marker.order().lying());
        byName.values().forEach(lying -> {
            lying.zone().ifPresent(zone -> {
                lines.merge(zone.band().from(), "zone " + zone.name(), (known, more) -> known);
                lines.putIfAbsent(zone.band().to(), "");
            });
            lying.border().ifPresent(border -> lines.put(border.y(), "line of the border"));
        });
        lines.forEach((y, words) -> {
            if (y.micrometres() >= 0 && y.compareTo(fabric.cuttableWidth()) <= 0) {
                double at = (corner.y() + y.micrometres()) / 1000.0;
                path(
                        "M%s %s h%s"
                                .formatted(
                                        Millimetres.of(corner.x()),
                                        Millimetres.of(at),
                                        Millimetres.of(marker.length().micrometres())),
                        "data-area",
                        "tie",
                        "fill",
                        "none",
                        "stroke",
                        FAINT,
                        "stroke-width",
                        "0.5",
                        "stroke-dasharray",
                        "12 3");
                label(corner.x() / 1000.0 + 3, at + 5, 4, words);
            }
        });
    }

    /** The two selvedges where they meet, with what is not cut of them. */
    private void join(Fabric.Band join) {
        rectangle(
                corner.plus(new Point(0, join.from().micrometres())),
                marker.length(),
                join.to().minus(join.from()),
                "data-area",
                "join",
                "fill",
                NOT_CUTTABLE,
                "stroke",
                FAINT,
                "stroke-width",
                "0.25");
        double size = Math.min(4, join.to().minus(join.from()).millimetres() / 2);
        if (size >= PieceLabel.LEAST_SIZE) {
            double middle = join.from().plus(join.to()).millimetres() / 2;
            label(corner.x() / 1000.0 + 3, middle + size / 3, size, "the two selvedges meet here");
        }
    }

    private void flaw(Box there) {
        path(
                "M%s %s H%s V%s H%s Z L%s %s M%s %s L%s %s"
                        .formatted(
                                Millimetres.of(there.minX()),
                                Millimetres.of(there.minY()),
                                Millimetres.of(there.maxX()),
                                Millimetres.of(there.maxY()),
                                Millimetres.of(there.minX()),
                                Millimetres.of(there.maxX()),
                                Millimetres.of(there.maxY()),
                                Millimetres.of(there.minX()),
                                Millimetres.of(there.maxY()),
                                Millimetres.of(there.maxX()),
                                Millimetres.of(there.minY())),
                "data-area",
                "flaw",
                "fill",
                NOT_CUTTABLE,
                "stroke",
                FAINT,
                "stroke-width",
                "0.25");
        label(there.minX() / 1000.0 + 2, there.maxY() / 1000.0 + 5, 4, "flaw");
    }

    /** Where a piece was cut that is of no use. */
    private void gone(PlacedPiece spoilt) {
        path(
                Millimetres.path(spoilt.outline(), corner),
                "data-area",
                "cut-away",
                "fill",
                NOT_CUTTABLE,
                "stroke",
                FAINT,
                "stroke-width",
                "0.25",
                "stroke-dasharray",
                "2 2");
        Box box = spoilt.outline().box().moved(corner);
        centred(
                (box.minX() + box.maxX()) / 2000.0,
                (box.minY() + box.maxY()) / 2000.0,
                4,
                "spoilt: " + spoilt.called(),
                0);
    }

    /** The edge of a remnant, as far as the marker goes. */
    private void remnant(Outline outline) {
        svg.open("clipPath", "id", "under-the-marker");
        svg.empty(
                "rect",
                "x",
                "0",
                "y",
                "0",
                "width",
                Millimetres.of(clothLength.micrometres()),
                "height",
                Millimetres.of(clothWidth.micrometres()));
        svg.close().line();
        path(
                Millimetres.path(outline, corner),
                "data-area",
                "remnant",
                "clip-path",
                "url(#under-the-marker)",
                "fill",
                "none",
                "stroke",
                INK,
                "stroke-width",
                "0.7",
                "stroke-dasharray",
                "8 2");
    }

    private void edges() {
        Spread spread = fabric.spread();
        double length = clothLength.millimetres();
        double width = clothWidth.millimetres();
        svg.open("g", "id", "edges").line();
        if (spread.isFoldedLengthwise()) {
            fold("M0 -1.2 H%s".formatted(Millimetres.of(length)));
        }
        if (spread.isFoldedTwice()) {
            fold("M0 %s H%s".formatted(Millimetres.of(width + 1.2), Millimetres.of(length)));
        }
        if (spread.isFoldedCrosswise()) {
            fold("M-1.2 0 V%s".formatted(Millimetres.of(width)));
            centred(-3.5, width / 2, 5, "FOLD · START", -90);
        }
        label(2, -4.5, 5, SpreadWords.nearEdge(spread).toUpperCase(Locale.ROOT));
        label(2, width + 15.5, 5, SpreadWords.farEdge(spread).toUpperCase(Locale.ROOT));
        StringBuilder ticks = new StringBuilder();
        for (int mark = 0; mark <= length; mark += 10) {
            ticks.append("M%s %s v%s ".formatted(mark, Millimetres.of(width), mark % 100 == 0 ? "5" : "2"));
        }
        path(ticks.toString().strip(), "fill", "none", "stroke", INK, "stroke-width", "0.25");
        for (int mark = 100; mark < length - 8; mark += 100) {
            centred(mark, width + 9, 3.2, (mark / 10) + " cm", 0);
        }
        double end = fabric.spread().endAllowance().millimetres();
        if (end >= 8) {
            String text = "end allowance " + LengthWords.both(fabric.spread().endAllowance());
            if (!spread.isFoldedCrosswise()) {
                centred(end / 2 + 1.5, width / 2, Math.min(5, end / 3), "START · " + text, -90);
            }
            centred(length - end / 2 + 1.5, width / 2, Math.min(5, end / 3), text, -90);
        }
        Fabric.UnusableEdge unusable = fabric.edgesOnTable();
        unusable(unusable.near(), unusable.near().millimetres() / 2);
        unusable(unusable.far(), width - unusable.far().millimetres() / 2);
        svg.close().line();
    }

    private void fold(String data) {
        path(data, "fill", "none", "stroke", INK, "stroke-width", "1.4", "stroke-dasharray", "14 3 2 3");
    }

    private void unusable(Length edge, double middle) {
        double size = Math.min(4, edge.millimetres() / 2);
        if (size >= PieceLabel.LEAST_SIZE) {
            label(corner.x() / 1000.0 + 3, middle + size / 3, size, "not used: " + LengthWords.both(edge));
        }
    }

    private void print() {
        String words = switch (fabric.direction()) {
            case EITHER_WAY -> "";
            case ONE_WAY -> "print up";
            case ONE_WAY_PER_GARMENT -> "print up; each garment one way";
        };
        words = fabric.pile().map(SpreadWords::pileMark).orElse(words);
        if (words.isEmpty()) {
            return;
        }
        svg.open("g", "id", "print").line();
        double length = clothLength.millimetres();
        for (double x = 60; x == 60 || x < length - 130; x += 500) {
            label(x, -4.5, 5, words);
            double from = x + Lettering.width(words) * 5 + 2;
            path(
                    "M%s -7.1 h26 v-3 l9 4.2 -9 4.2 v-3 h-26 Z".formatted(Millimetres.of(from)),
                    "fill",
                    fabric.direction() == Direction.ONE_WAY ? INK : "none",
                    "stroke",
                    INK,
                    "stroke-width",
                    "0.3");
        }
        svg.close().line();
    }

    private void repeatGrid() {
        String grid = RepeatGrid.path(marker, corner);
        if (!grid.isEmpty()) {
            path(
                    grid,
                    "class",
                    "repeat-grid",
                    "fill",
                    "none",
                    "stroke",
                    FAINT,
                    "stroke-width",
                    "0.2",
                    "stroke-opacity",
                    "0.7");
        }
    }

    private void matchPoint(Point at) {
        path(
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
                        Integer.toString(number))
                .line();
        path(
                Millimetres.path(outline, corner),
                "fill",
                tints.of(placement),
                "stroke",
                "#000000",
                "stroke-width",
                "0.25");
        path(label.arrow().path(corner), "data-mark", "grain", "fill", INK, "stroke", INK, "stroke-width", "0.3");
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

    private void marks(PieceMarks marks) {
        String notches = marks.notches().stream().map(MarkerSvg::line).collect(Collectors.joining(" "));
        if (!notches.isEmpty()) {
            path(notches, "data-mark", "notch", "fill", "none", "stroke", "#000000", "stroke-width", "0.3");
        }
        for (Point hole : marks.drillHoles()) {
            String x = Millimetres.of(hole.x());
            String y = Millimetres.of(hole.y());
            path(
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
            path(
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

    private static String line(Segment segment) {
        return "M%s %s L%s %s"
                .formatted(
                        Millimetres.of(segment.from().x()),
                        Millimetres.of(segment.from().y()),
                        Millimetres.of(segment.to().x()),
                        Millimetres.of(segment.to().y()));
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

    private void rectangle(Point at, Length length, Length width, String... attributes) {
        path(
                Millimetres.path(Outline.of(new Box(0, 0, length.micrometres(), width.micrometres()).ring()), at),
                attributes);
    }

    private void path(String data, String... attributes) {
        svg.empty("path", with(attributes, "d", data)).line();
    }

    private void label(double x, double y, double size, String text) {
        svg.element("text", text, "x", Millimetres.of(x), "y", Millimetres.of(y), "font-size", Millimetres.of(size))
                .line();
    }

    private void centred(double x, double y, double size, String text, int turn) {
        String[] attributes = {
            "x", Millimetres.of(x), "y", Millimetres.of(y), "font-size", Millimetres.of(size), "text-anchor", "middle"
        };
        svg.element(
                        "text",
                        text,
                        turn == 0
                                ? attributes
                                : with(
                                        attributes,
                                        "transform",
                                        "rotate(%s %s %s)".formatted(turn, Millimetres.of(x), Millimetres.of(y))))
                .line();
    }

    private static String[] with(String[] attributes, String name, String value) {
        String[] more = Arrays.copyOf(attributes, attributes.length + 2);
        more[attributes.length] = name;
        more[attributes.length + 1] = value;
        return more;
    }
}
