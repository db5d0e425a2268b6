package lengthwise.svg;

import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Lying;
import lengthwise.model.Marker;
import lengthwise.model.OnHand;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import lengthwise.model.ShadeWords;
import lengthwise.model.SharedCut;
import lengthwise.model.Spread;
import lengthwise.model.SpreadWords;

/** Draws the cloth that a marker lies on: its edges and folds, its print, what cannot be cut, and what pieces are tied to. */
final class ClothDrawing {
    /** Where it first says which way the print runs, and how long the arrow is, in millimetres. */
    private static final double FIRST_PRINT = 60;

    private static final double ARROW = 35;

    private final Marker marker;
    private final Fabric fabric;
    private final Length clothLength;
    private final Length clothWidth;
    private final Point corner;
    private final Markup svg;
    private final Strokes strokes;

    /** @param corner of the cuttable area on the cloth */
    ClothDrawing(Marker marker, Point corner, Markup svg) {
        this.marker = marker;
        this.fabric = marker.order().fabric();
        this.clothLength = fabric.spread().onTable(marker.length());
        this.clothWidth = fabric.laidWidth();
        this.corner = corner;
        this.svg = svg;
        this.strokes = new Strokes(svg);
    }

    void cloth() {
        svg.open("g", "id", "cloth").line();
        strokes.rectangle(Point.ORIGIN, clothLength, clothWidth, "fill", MarkerSvg.NOT_CUTTABLE);
        strokes.rectangle(
                corner,
                marker.length(),
                fabric.cuttableWidth(),
                "data-area",
                "cuttable",
                "fill",
                "#ffffff",
                "stroke",
                MarkerSvg.FAINT,
                "stroke-width",
                "0.25",
                "stroke-dasharray",
                "6 3");
        PrintTiles.draw(marker, corner, clothLength, clothWidth, svg);
        fabric.onHand().flatMap(OnHand::outline).ifPresent(this::remnant);
        fabric.join().ifPresent(this::join);
        ties();
        Box cloth = new Box(0, 0, clothLength.micrometres(), clothWidth.micrometres());
        for (Box flaw : fabric.flaws()) {
            flaw.moved(corner).common(cloth).ifPresent(this::flaw);
        }
        marker.order().cutAlready().spoilt().forEach(this::gone);
        strokes.rectangle(
                Point.ORIGIN, clothLength, clothWidth, "fill", "none", "stroke", MarkerSvg.INK, "stroke-width", "0.5");
        svg.close().line();
    }

    /** Where straight edges of two pieces coincide a light band lies over the cut line. */
    void sharedCuts() {
        String lines = SharedCut.on(marker).stream()
                .map(SharedCut::line)
                .map(cut -> Strokes.line(
                        new Segment(cut.from().plus(corner), cut.to().plus(corner))))
                .collect(Collectors.joining(" "));
        if (!lines.isEmpty()) {
            strokes.path(
                    lines,
                    "data-mark",
                    "cut-once",
                    "fill",
                    "none",
                    "stroke",
                    MarkerSvg.FAINT,
                    "stroke-width",
                    "2.4",
                    "stroke-opacity",
                    "0.35");
        }
    }

    /** What of the print pieces keep off or on is drawn over them, where it can be compared. */
    void motifs() {
        MotifShapes.draw(marker, corner, strokes);
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
                strokes.path(
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
                        MarkerSvg.FAINT,
                        "stroke-width",
                        "0.5",
                        "stroke-dasharray",
                        "12 3");
                strokes.label(corner.x() / 1000.0 + 3, at + 5, 4, words);
            }
        });
    }

    /** The two selvedges where they meet, with what is not cut of them. */
    private void join(Fabric.Band join) {
        strokes.rectangle(
                corner.plus(new Point(0, join.from().micrometres())),
                marker.length(),
                join.to().minus(join.from()),
                "data-area",
                "join",
                "fill",
                MarkerSvg.NOT_CUTTABLE,
                "stroke",
                MarkerSvg.FAINT,
                "stroke-width",
                "0.25");
        double size = Math.min(4, join.to().minus(join.from()).millimetres() / 2);
        if (size >= PieceLabel.LEAST_SIZE) {
            double middle = join.from().plus(join.to()).millimetres() / 2;
            strokes.label(corner.x() / 1000.0 + 3, middle + size / 3, size, "the two selvedges meet here");
        }
    }

    private void flaw(Box there) {
        strokes.path(
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
                MarkerSvg.NOT_CUTTABLE,
                "stroke",
                MarkerSvg.FAINT,
                "stroke-width",
                "0.25");
        strokes.label(there.minX() / 1000.0 + 2, there.maxY() / 1000.0 + 5, 4, "flaw");
    }

    /** Where a piece was cut that is of no use. */
    private void gone(PlacedPiece spoilt) {
        strokes.path(
                Millimetres.path(spoilt.outline(), corner),
                "data-area",
                "cut-away",
                "fill",
                MarkerSvg.NOT_CUTTABLE,
                "stroke",
                MarkerSvg.FAINT,
                "stroke-width",
                "0.25",
                "stroke-dasharray",
                "2 2");
        Box box = spoilt.outline().box().moved(corner);
        strokes.centred(
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
        strokes.path(
                Millimetres.path(outline, corner),
                "data-area",
                "remnant",
                "clip-path",
                "url(#under-the-marker)",
                "fill",
                "none",
                "stroke",
                MarkerSvg.INK,
                "stroke-width",
                "0.7",
                "stroke-dasharray",
                "8 2");
    }

    void edges() {
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
            strokes.centred(-3.5, width / 2, 5, "FOLD · START", -90);
        }
        strokes.label(2, -4.5, 5, SpreadWords.nearEdge(spread).toUpperCase(Locale.ROOT));
        String farEdge = SpreadWords.farEdge(spread).toUpperCase(Locale.ROOT);
        strokes.label(2, width + 15.5, 5, farEdge);
        fabric.shade()
                .ifPresent(shade -> strokes.label(
                        10 + 5 * Lettering.width(farEdge), width + 15.5, 5, ShadeWords.onTheMarker(shade)));
        StringBuilder ticks = new StringBuilder();
        for (int mark = 0; mark <= length; mark += 10) {
            ticks.append("M%s %s v%s ".formatted(mark, Millimetres.of(width), mark % 100 == 0 ? "5" : "2"));
        }
        strokes.path(ticks.toString().strip(), "fill", "none", "stroke", MarkerSvg.INK, "stroke-width", "0.25");
        for (int mark = 100; mark < length - 8; mark += 100) {
            strokes.centred(mark, width + 9, 3.2, (mark / 10) + " cm", 0);
        }
        double end = fabric.spread().endAllowance().millimetres();
        if (end >= 8) {
            String text = "end allowance " + LengthWords.both(fabric.spread().endAllowance());
            if (!spread.isFoldedCrosswise()) {
                strokes.centred(end / 2 + 1.5, width / 2, Math.min(5, end / 3), "START · " + text, -90);
            }
            strokes.centred(length - end / 2 + 1.5, width / 2, Math.min(5, end / 3), text, -90);
        }
        Fabric.UnusableEdge unusable = fabric.edgesOnTable();
        unusable(unusable.near(), unusable.near().millimetres() / 2);
        unusable(unusable.far(), width - unusable.far().millimetres() / 2);
        svg.close().line();
    }

    private void fold(String data) {
        strokes.path(
                data, "fill", "none", "stroke", MarkerSvg.INK, "stroke-width", "1.4", "stroke-dasharray", "14 3 2 3");
    }

    private void unusable(Length edge, double middle) {
        double size = Math.min(4, edge.millimetres() / 2);
        if (size >= PieceLabel.LEAST_SIZE) {
            strokes.label(corner.x() / 1000.0 + 3, middle + size / 3, size, "not used: " + LengthWords.both(edge));
        }
    }

    /** Returns how far the cloth and what is written along it reach, in millimetres from its start. */
    double reach() {
        String words = wayOfPrint();
        return Math.max(clothLength.millimetres(), words.isEmpty() ? 0 : arrowOf(words, FIRST_PRINT) + ARROW);
    }

    private String wayOfPrint() {
        String words = switch (fabric.direction()) {
            case EITHER_WAY -> "";
            case ONE_WAY -> "print up";
            case ONE_WAY_PER_GARMENT -> "print up; each garment one way";
        };
        return fabric.pile().map(SpreadWords::pileMark).orElse(words);
    }

    /** Returns where the arrow after some words begins. */
    private static double arrowOf(String words, double x) {
        return x + Lettering.width(words) * 5 + 2;
    }

    void print() {
        String words = wayOfPrint();
        if (words.isEmpty()) {
            return;
        }
        svg.open("g", "id", "print").line();
        double length = clothLength.millimetres();
        for (double x = FIRST_PRINT; x == FIRST_PRINT || x < length - 130; x += 500) {
            strokes.label(x, -4.5, 5, words);
            strokes.path(
                    "M%s -7.1 h26 v-3 l9 4.2 -9 4.2 v-3 h-26 Z".formatted(Millimetres.of(arrowOf(words, x))),
                    "fill",
                    fabric.direction() == Direction.ONE_WAY ? MarkerSvg.INK : "none",
                    "stroke",
                    MarkerSvg.INK,
                    "stroke-width",
                    "0.3");
        }
        svg.close().line();
    }

    void repeatGrid() {
        String grid = RepeatGrid.path(marker, corner);
        if (!grid.isEmpty()) {
            strokes.path(
                    grid,
                    "class",
                    "repeat-grid",
                    "fill",
                    "none",
                    "stroke",
                    MarkerSvg.FAINT,
                    "stroke-width",
                    "0.2",
                    "stroke-opacity",
                    "0.7");
        }
    }
}
