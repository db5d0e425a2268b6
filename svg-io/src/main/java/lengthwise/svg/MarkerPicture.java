package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.GrainLine;
import lengthwise.model.Marker;
import lengthwise.model.OnHand;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Spread;
import lengthwise.model.SpreadWords;

/**
 * Draws a small picture of a marker into a page: the cloth, the pieces with their numbers in laying order, the grain
 * lines. Not at true scale, and not to cut from; vertices too near to be seen apart are left out.
 */
public final class MarkerPicture {
    /** The picture is drawn as if this wide on paper (mm); letters and lines are sized for that. */
    private static final double PAPER_WIDTH = 180;

    private final Marker marker;
    private final Fabric fabric;
    private final Tints tints;
    private final Markup page;

    /** Of captions, and least between two of them, in millimetres on paper. */
    private static final double CAPTION = 2.5;

    private static final double BETWEEN = 3;

    /** Cloth millimetres to one millimetre on paper. */
    private final double reduction;

    private final double length;
    private final double width;
    private final Point corner;

    private MarkerPicture(Markup page, Marker marker, double tallest) {
        this.page = page;
        this.marker = marker;
        fabric = marker.order().fabric();
        tints = new Tints(marker.order());
        length = fabric.spread().onTable(marker.length()).millimetres();
        width = fabric.laidWidth().millimetres();
        corner = new Point(
                fabric.spread().startAllowance().micrometres(),
                fabric.edgesOnTable().near().micrometres());
        // A picture of a short piece of wide cloth is made narrower on the page.
        reduction = Math.max(length / PAPER_WIDTH, width / tallest);
    }

    /**
     * Writes an {@code svg} element into a page.
     *
     * @param tallest how much of the height of the page the cloth may take, in millimetres
     */
    public static void draw(Markup page, Marker marker, double tallest) {
        new MarkerPicture(page, marker, tallest).draw();
    }

    private void draw() {
        double margin = 6 * reduction;
        double pageWidth = Math.max(length, captionsReach()) + 2 * reduction;
        double pageHeight = width + 2 * margin;
        page.open(
                "svg",
                "xmlns",
                Markup.SVG,
                "class",
                "picture",
                "role",
                "img",
                "aria-label",
                "Picture of the marker for " + fabric.name(),
                "viewBox",
                "%s %s %s %s".formatted(of(-reduction), of(-margin), of(pageWidth), of(pageHeight)),
                "style",
                "width: %smm; max-width: 100%%".formatted(of(pageWidth / reduction)),
                "font-family",
                Lettering.FACES,
                "font-size",
                of(CAPTION * reduction),
                "fill",
                MarkerSvg.INK,
                "stroke-linejoin",
                "round");
        rectangle(0, 0, length, width, MarkerSvg.NOT_CUTTABLE, MarkerSvg.INK, 0.25);
        rectangle(
                corner.x() / 1000.0,
                corner.y() / 1000.0,
                marker.length().millimetres(),
                fabric.cuttableWidth().millimetres(),
                "#ffffff",
                MarkerSvg.FAINT,
                0.12);
        fabric.join()
                .ifPresent(join -> rectangle(
                        corner.x() / 1000.0,
                        join.from().millimetres(),
                        marker.length().millimetres(),
                        join.to().minus(join.from()).millimetres(),
                        MarkerSvg.NOT_CUTTABLE,
                        MarkerSvg.FAINT,
                        0.2));
        fabric.flaws().stream()
                .map(flaw -> flaw.moved(corner))
                .forEach(flaw -> rectangle(
                        flaw.minX() / 1000.0,
                        flaw.minY() / 1000.0,
                        flaw.width() / 1000.0,
                        flaw.height() / 1000.0,
                        MarkerSvg.NOT_CUTTABLE,
                        MarkerSvg.FAINT,
                        0.2));
        marker.order()
                .cutAlready()
                .spoilt()
                .forEach(gone -> page.empty(
                        "path",
                        "d",
                        Millimetres.path(gone.outline(), corner),
                        "fill",
                        MarkerSvg.NOT_CUTTABLE,
                        "stroke",
                        MarkerSvg.FAINT,
                        "stroke-width",
                        of(0.25 * reduction)));
        fabric.onHand()
                .flatMap(OnHand::outline)
                .ifPresent(remnant -> page.empty(
                        "path",
                        "d",
                        Millimetres.path(remnant, corner),
                        "fill",
                        "none",
                        "stroke",
                        MarkerSvg.INK,
                        "stroke-width",
                        of(0.25 * reduction)));
        edges(margin);
        List<Placement> placements = marker.inLayingOrder();
        for (int i = 0; i < placements.size(); i++) {
            piece(placements.get(i), i + 1);
        }
        page.close();
    }

    private void edges(double margin) {
        Spread spread = fabric.spread();
        double beside = 0.35 * reduction;
        text(0, -margin / 3, "start", SpreadWords.nearEdge(spread));
        text(0, width + margin * 0.7, "start", startAndFarEdge());
        if (spread.isFoldedLengthwise()) {
            fold("M0 %s H%s".formatted(of(-beside), of(length)));
        }
        if (spread.isFoldedTwice()) {
            fold("M0 %s H%s".formatted(of(width + beside), of(length)));
        }
        if (spread.isFoldedCrosswise()) {
            fold("M%s 0 V%s".formatted(of(-beside), of(width)));
        }
        text(Math.max(length, topReach()), -margin / 3, "end", wayOfPrint());
    }

    private String startAndFarEdge() {
        return SpreadWords.start(fabric.spread()) + " · " + SpreadWords.farEdge(fabric.spread());
    }

    /** Returns which way the print or the pile runs; nothing where that is all the same. */
    private String wayOfPrint() {
        return switch (fabric.direction()) {
            case EITHER_WAY -> "";
            case ONE_WAY ->
                fabric.pile().map(pile -> SpreadWords.pileMark(pile) + " →").orElse("print up →");
            case ONE_WAY_PER_GARMENT -> "print up →, each garment one way";
        };
    }

    /** Returns how far the captions over the cloth reach, one after the other: on short cloth, beyond its end. */
    private double topReach() {
        return wide(SpreadWords.nearEdge(fabric.spread())) + BETWEEN * reduction + wide(wayOfPrint());
    }

    private double captionsReach() {
        return Math.max(topReach(), wide(startAndFarEdge()));
    }

    private double wide(String caption) {
        return Lettering.width(caption) * CAPTION * reduction;
    }

    private void fold(String data) {
        page.empty(
                "path",
                "d",
                data,
                "stroke",
                MarkerSvg.INK,
                "stroke-width",
                of(0.7 * reduction),
                "stroke-dasharray",
                "%s %s".formatted(of(5 * reduction), of(1.2 * reduction)));
    }

    private void piece(Placement placement, int number) {
        Outline outline = placement.outline();
        page.empty(
                "path",
                "d",
                path(outline),
                "fill",
                tints.of(placement),
                "stroke",
                MarkerSvg.INK,
                "stroke-width",
                of(0.18 * reduction));
        Segment grain = GrainLine.of(placement);
        List<Segment> clearOf = new ArrayList<>();
        if (!placement.item().piece().strip()) {
            clearOf.add(grain);
            page.empty(
                    "path",
                    "d",
                    "M%s %s L%s %s"
                            .formatted(
                                    shifted(grain.from().x(), corner.x()),
                                    shifted(grain.from().y(), corner.y()),
                                    shifted(grain.to().x(), corner.x()),
                                    shifted(grain.to().y(), corner.y())),
                    "stroke",
                    MarkerSvg.FAINT,
                    "stroke-width",
                    of(0.2 * reduction));
        }
        number(Integer.toString(number), outline, clearOf);
    }

    /** Beside the grain line where that leaves it legible, else across it; turned in a narrow piece across the cloth. */
    private void number(String words, Outline outline, List<Segment> clearOf) {
        double width = Lettering.width(words);
        LabelSpot spot = LabelSpot.in(outline, clearOf, List.of(), width + 0.4, 1.2);
        if (spot.unit() / 1000 < 2 * reduction) {
            spot = LabelSpot.in(outline, List.of(), List.of(), width + 0.3, 1.1);
        }
        LabelSpot narrow = LabelSpot.in(outline, List.of(), List.of(), 1.1, width + 0.3);
        boolean turned = words.length() > 1 && spot.unit() / 1000 < 2 * reduction && narrow.unit() > 1.2 * spot.unit();
        if (turned) {
            spot = narrow;
        }
        double size = Math.max(1.4 * reduction, Math.min(3.6 * reduction, spot.unit() / 1000));
        double x = (spot.x() + corner.x()) / 1000;
        double y = (spot.y() + corner.y()) / 1000;
        double down = size * Lettering.CAPITAL / 2;
        page.element(
                "text",
                words,
                "transform",
                "translate(%s %s)%s"
                        .formatted(of(turned ? x + down : x), of(turned ? y : y + down), turned ? " rotate(-90)" : ""),
                "font-size",
                of(size),
                "font-weight",
                "bold",
                "text-anchor",
                "middle");
    }

    private String path(Outline outline) {
        StringBuilder data = new StringBuilder();
        Stream.concat(Stream.of(outline.shell()), outline.holes().stream()).forEach(ring -> append(data, ring));
        return data.toString();
    }

    private void append(StringBuilder data, Ring ring) {
        double apart = 60 * reduction;
        Point last = ring.vertex(0);
        data.append("M").append(shifted(last.x(), corner.x())).append(' ').append(shifted(last.y(), corner.y()));
        for (int i = 1; i < ring.size(); i++) {
            Point vertex = ring.vertex(i);
            if (vertex.distance(last) >= apart || i == ring.size() - 1) {
                data.append('L')
                        .append(shifted(vertex.x(), corner.x()))
                        .append(' ')
                        .append(shifted(vertex.y(), corner.y()));
                last = vertex;
            }
        }
        data.append('Z');
    }

    private void rectangle(double x, double y, double along, double across, String fill, String stroke, double line) {
        page.empty(
                "rect",
                "x",
                of(x),
                "y",
                of(y),
                "width",
                of(along),
                "height",
                of(across),
                "fill",
                fill,
                "stroke",
                stroke,
                "stroke-width",
                of(line * reduction));
    }

    private void text(double x, double y, String anchor, String words) {
        page.element("text", words, "x", of(x), "y", of(y), "text-anchor", anchor);
    }

    private static String shifted(long value, long by) {
        return of((value + by) / 1000.0);
    }

    /** One digit after the point: a tenth of a millimetre of cloth cannot be seen in a picture. */
    private static String of(double millimetres) {
        String exact = Millimetres.of(Math.round(millimetres * 100) * 10L);
        return exact.substring(0, exact.length() - 1);
    }
}
