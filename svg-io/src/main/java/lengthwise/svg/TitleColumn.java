package lengthwise.svg;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.model.PrintWords;
import lengthwise.model.SharedCut;
import lengthwise.model.Shrinkage;
import lengthwise.model.SpreadWords;

/**
 * What stands before the start of the cloth on a marker: title, facts, check squares, keys, assumptions, cautions. Its
 * blocks flow from top to bottom, into as many columns as they need.
 */
final class TitleColumn {
    private static final double LEFT = 12;
    private static final double GUTTER = 16;

    private final Marker marker;
    private final Fabric fabric;
    private final MarkerNotes notes;
    /** Size of plain lettering, larger on wide cloth so that it is legible when the whole marker is on a screen. */
    private final double body;

    private final double column;
    private final double top;
    private final double bottom;
    private final List<Block> blocks = new ArrayList<>();
    private final List<Spot> spots = new ArrayList<>();
    private final int columns;

    /** A thing of some height, drawn when given its upper left corner. Millimetres. */
    private record Block(double height, Drawing drawing) {}

    private interface Drawing {
        void draw(Markup svg, double x, double y);
    }

    private record Spot(int column, double y) {}

    TitleColumn(Marker marker, MarkerNotes notes, Tints tints, List<String> key, double top, double bottom) {
        this.marker = marker;
        this.fabric = marker.order().fabric();
        this.notes = notes;
        body = Math.max(5, Math.min(7.5, (bottom - top) / 160));
        column = 34 * body;
        this.top = top + 6;
        this.bottom = bottom - 6;
        title();
        facts();
        checkSquare(100, "10 cm");
        checkSquare(101.6, "4 in");
        heading(
                "How to read it",
                Stream.concat(
                                Stream.of(
                                        "If a square does not measure what stands in it, the print is not true to size: do not cut.",
                                        "A label says: piece, size, number of the garment, L or R as worn.",
                                        "Arrows lie along the grain; a single head points to the up end of the piece.",
                                        "Cut along the middle of the line."),
                                Stream.of(
                                                SharedCut.on(marker).isEmpty()
                                                        ? ""
                                                        : "Under a grey band one cut does for both pieces.",
                                                marker.order().motifs().isEmpty()
                                                        ? ""
                                                        : "Grey circles and boxes over the pieces are motifs of the print that pieces keep off or on.")
                                        .filter(line -> !line.isEmpty()))
                        .toList());
        tints(tints);
        if (!marker.order().cutAlready().isNone()) {
            heading(
                    "Cut already",
                    List.of(
                            "Grey pieces are cut already and lie where they were cut. What is marked as spoilt is gone and"
                                    + " is laid once more."));
        }
        heading("Numbers on small pieces", key);
        heading("Assumed, because it was not said", notes.assumptions());
        heading("Mind", notes.remarks());
        heading(
                "Take care",
                List.of(
                        "Blades and needles injure; powered knives and lasers also burn. The machine's manual, local rules and"
                                + " trained people go first.",
                        "A laser must never cut PVC. Elastane, nylon and polyester give off harmful fumes."));
        columns = flow();
    }

    /** Returns how far the columns reach before the start of the cloth. */
    double width() {
        return LEFT + columns * (column + GUTTER);
    }

    void write(Markup svg) {
        svg.open("g", "id", "title").line();
        for (int i = 0; i < blocks.size(); i++) {
            Spot spot = spots.get(i);
            blocks.get(i).drawing.draw(svg, LEFT - width() + spot.column * (column + GUTTER), spot.y);
        }
        svg.close().line();
    }

    private int flow() {
        int filled = 0;
        double y = top;
        for (Block block : blocks) {
            if (y > top && y + block.height > bottom) {
                filled++;
                y = top;
            }
            spots.add(new Spot(filled, y));
            y += block.height;
        }
        return filled + 1;
    }

    private void title() {
        paragraph(fabric.name(), 2.6 * body, true);
        paragraph(notes.job(), 1.4 * body, false);
        gap(4);
    }

    private void facts() {
        fact("Marker", LengthWords.both(marker.length()));
        fact("Cuttable width", LengthWords.both(fabric.cuttableWidth()) + SpreadWords.afterWidth(fabric.spread()));
        fact("Fabric width", LengthWords.both(fabric.width()) + (washed() ? " before washing" : ""));
        fact("Efficiency", percent(marker.efficiency()));
        if (!notes.buy().isEmpty()) {
            fact("Buy", notes.buy());
        }
        fabric.onHand().ifPresent(there -> fact("On hand", LengthWords.both(there.length())));
        fact("For", "%s · %s".formatted(fabric.role(), garments()));
        fact("Contours", Integer.toString(marker.placements().size()));
        gap(body);
        paragraph(SpreadWords.heading(fabric.spread()), 1.4 * body, true);
        paragraph(SpreadWords.layers(fabric.spread()), body, false);
        paragraph(
                switch (fabric.direction()) {
                    case EITHER_WAY -> "Print and pile: either way.";
                    case ONE_WAY -> "One way: the print's up end points to the end of the marker, as the arrows show.";
                    case ONE_WAY_PER_GARMENT ->
                        "One way per garment: all pieces of a garment lie the same way; the next may be turned.";
                },
                body,
                false);
        fabric.pile().ifPresent(pile -> paragraph(SpreadWords.pile(pile), body, false));
        PrintWords.howToLay(marker).forEach(text -> paragraph(text, body, false));
        shrinkage().ifPresent(text -> paragraph(text, body, false));
        gap(5);
    }

    private Optional<String> shrinkage() {
        Shrinkage shrinkage = fabric.shrinkage();
        if (shrinkage.lengthwise() == 0 && shrinkage.crosswise() == 0) {
            return Optional.empty();
        }
        String amount = "%s lengthwise, %s crosswise"
                .formatted(percent(shrinkage.lengthwise()), percent(shrinkage.crosswise()));
        return Optional.of(
                switch (shrinkage.handled()) {
                    case PRE_WASH -> "Wash the cloth before cutting (" + amount + "): it is drawn as washed.";
                    case ADD_TO_PIECES -> "The pieces are drawn larger by the shrinkage (" + amount + ").";
                    case IN_PATTERN -> "The pattern already allows for shrinkage (" + amount + ").";
                });
    }

    private boolean washed() {
        return fabric.widthKept() != 1;
    }

    private String garments() {
        List<Garment> all = marker.order().bundles().stream()
                .map(bundle -> bundle.garment())
                .distinct()
                .toList();
        String sizes = all.stream()
                .collect(Collectors.groupingBy(
                        garment -> garment.size().name(), LinkedHashMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .filter(entry -> !entry.getKey().isEmpty())
                .map(entry -> entry.getValue() + " " + entry.getKey())
                .collect(Collectors.joining(", "));
        return "%s garment%s%s".formatted(all.size(), all.size() == 1 ? "" : "s", sizes.isEmpty() ? "" : ": " + sizes);
    }

    private static String percent(double fraction) {
        long hundredths = StrictMath.round(fraction * 10_000);
        return "%s.%s%s %%".formatted(hundredths / 100, hundredths / 10 % 10, hundredths % 10);
    }

    private void checkSquare(double side, String words) {
        blocks.add(new Block(side + 6, (svg, x, y) -> {
            svg.empty(
                    "path",
                    "data-measures",
                    Millimetres.of(side),
                    "d",
                    "M%s %s h%s v%s h-%s Z"
                            .formatted(
                                    Millimetres.of(x),
                                    Millimetres.of(y),
                                    Millimetres.of(side),
                                    Millimetres.of(side),
                                    Millimetres.of(side)),
                    "fill",
                    "none",
                    "stroke",
                    "#000000",
                    "stroke-width",
                    "0.25");
            text(svg, x + 5, y + 4 + 1.4 * body, 1.4 * body, true, words);
            text(svg, x + 5, y + 4 + 2.9 * body, body, false, "Measure it each way");
            text(svg, x + 5, y + 4 + 4.1 * body, body, false, "before you cut.");
            svg.line();
        }));
    }

    private void tints(Tints tints) {
        List<Tints.Entry> key = tints.key(marker.order());
        for (Tints.Entry entry : key) {
            List<String> lines = Lettering.wrap(entry.meaning(), (column - 14) / body);
            blocks.add(new Block(lines.size() * body * Lettering.LEADING + 3, (svg, x, y) -> {
                svg.empty(
                        "rect",
                        "x",
                        Millimetres.of(x),
                        "y",
                        Millimetres.of(y),
                        "width",
                        "9",
                        "height",
                        "6",
                        "fill",
                        entry.tint(),
                        "stroke",
                        "#000000",
                        "stroke-width",
                        "0.25");
                for (int i = 0; i < lines.size(); i++) {
                    text(svg, x + 13, y + 5 + i * body * Lettering.LEADING, body, false, lines.get(i));
                }
            }));
        }
        if (!key.isEmpty()) {
            gap(4);
        }
    }

    private void heading(String heading, List<String> paragraphs) {
        if (paragraphs.isEmpty()) {
            return;
        }
        paragraph(heading, body, true);
        paragraphs.forEach(text -> paragraph(text, body, false));
        gap(4);
    }

    private void fact(String name, String value) {
        List<String> lines = Lettering.wrap(value, (column - 9 * body) / body);
        double leading = body * 1.4;
        blocks.add(new Block(lines.size() * leading, (svg, x, y) -> {
            text(svg, x, y + body, body, false, name);
            for (int i = 0; i < lines.size(); i++) {
                text(svg, x + 9 * body, y + body + i * leading, body, true, lines.get(i));
            }
            svg.line();
        }));
    }

    private void paragraph(String words, double size, boolean bold) {
        double bolder = bold ? 1.12 : 1;
        List<String> lines = Lettering.wrap(words, column / size / bolder);
        double leading = size * Lettering.LEADING;
        blocks.add(new Block(lines.size() * leading + size * 0.35, (svg, x, y) -> {
            for (int i = 0; i < lines.size(); i++) {
                text(svg, x, y + size * 0.9 + i * leading, size, bold, lines.get(i));
            }
            svg.line();
        }));
    }

    private void gap(double height) {
        blocks.add(new Block(height, (svg, x, y) -> {}));
    }

    private static void text(Markup svg, double x, double y, double size, boolean bold, String words) {
        svg.element(
                "text",
                words,
                "x",
                Millimetres.of(x),
                "y",
                Millimetres.of(y),
                "font-size",
                Millimetres.of(size),
                "font-weight",
                bold ? "bold" : "normal");
    }
}
