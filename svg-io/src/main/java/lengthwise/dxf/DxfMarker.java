package lengthwise.dxf;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Segment;
import lengthwise.svg.Caption;
import lengthwise.svg.MarkerDrawing;
import lengthwise.toolpath.Uncut;

/**
 * Writes a marker as a DXF file of release 12 (AC1009), which every reader knows: millimetres, x along the fabric, y
 * across it and up, so that the far edge of the cuttable area lies at y = 0 and the drawing looks as the marker does.
 * Curves are the polylines that the marker has.
 *
 * <p>Reference: Autodesk, <i>DXF Reference</i>; layer numbers after ASTM D6673.
 */
public final class DxfMarker {
    /** A vertex where the line turns by more than this is a corner (radians). */
    private static final double CORNER = Math.toRadians(20);

    /** A shorter line (µm) says nothing about the grain, and readers take no notice of it. */
    private static final double SHORTEST_GRAIN_LINE = 20_000;

    /** How far the fold may lie off the edge on it (µm). */
    private static final double ON_FOLD = 50;

    private static final String CUT = "CUT";
    private static final String CUT_OUT = "CUTOUT";
    private static final int WHITE = 7;
    private static final int LONGEST_NAME = 31;

    private final MarkerDrawing marker;
    private final Groups file = new Groups();

    private DxfMarker(MarkerDrawing marker) {
        this.marker = marker;
    }

    /**
     * Returns a file with one block a piece: its cut line, cut-outs, marks and texts on layers of their own; an edge on the fold
     * is a mirror line. Pieces that are cut already are not in it.
     */
    public static byte[] pieces(MarkerDrawing marker) {
        DxfMarker writer = new DxfMarker(marker);
        return writer.write(
                Arrays.stream(ApparelLayer.values()).map(ApparelLayer::number).toList(),
                writer::blocks,
                writer::placedBlocks);
    }

    /**
     * Returns a file with the cut lines and the cut-outs alone, each on a layer. Nothing is cut on a fold: there a cut line is
     * open.
     */
    public static byte[] lines(MarkerDrawing marker) {
        DxfMarker writer = new DxfMarker(marker);
        return writer.write(List.of(CUT, CUT_OUT), groups -> {}, writer::cutLines);
    }

    private byte[] write(List<String> layers, Consumer<Groups> blocks, Consumer<Groups> entities) {
        header();
        tables(layers);
        file.section("BLOCKS");
        blocks.accept(file);
        file.endSection().section("ENTITIES");
        entities.accept(file);
        return file.endSection().add(0, "EOF").toString().getBytes(StandardCharsets.US_ASCII);
    }

    private void header() {
        Point far =
                new Point(marker.length().micrometres(), marker.cuttableWidth().micrometres());
        file.section("HEADER").add(9, "$ACADVER").add(1, "AC1009");
        file.add(9, "$DWGCODEPAGE").add(3, "ANSI_1252");
        // Millimetres, said in both ways; older readers pass over them.
        file.add(9, "$INSUNITS").add(70, 4).add(9, "$MEASUREMENT").add(70, 1);
        file.add(9, "$INSBASE").point(10, Point.ORIGIN);
        file.add(9, "$EXTMIN").point(10, Point.ORIGIN).add(9, "$EXTMAX").point(10, far);
        file.add(9, "$LIMMIN").length(10, 0).length(20, 0);
        file.add(9, "$LIMMAX").length(10, far.x()).length(20, far.y()).endSection();
    }

    private void tables(List<String> layers) {
        file.section("TABLES").add(0, "TABLE").add(2, "LTYPE").add(70, 1);
        file.add(0, "LTYPE").add(2, "CONTINUOUS").add(70, 0).add(3, "Solid line");
        file.add(72, 65).add(73, 0).length(40, 0).add(0, "ENDTAB");
        file.add(0, "TABLE").add(2, "LAYER").add(70, layers.size() + 1);
        layer("0");
        layers.forEach(this::layer);
        file.add(0, "ENDTAB").add(0, "TABLE").add(2, "STYLE").add(70, 1);
        file.add(0, "STYLE").add(2, "STANDARD").add(70, 0).length(40, 0).length(41, 1000);
        file.length(50, 0).add(71, 0).length(42, 3000).add(3, "txt").add(4, "");
        file.add(0, "ENDTAB").endSection();
    }

    private void layer(String name) {
        file.add(0, "LAYER").add(2, name).add(70, 0).add(62, WHITE).add(6, "CONTINUOUS");
    }

    private void cutLines(Groups entities) {
        for (int i : toCut()) {
            Outline outline = marker.pieces().get(i).outline();
            Optional<Segment> fold = marker.states().get(i).foldEdge();
            if (fold.isEmpty()) {
                entities.polyline(CUT, turned(outline.shell().vertices()), true);
            } else {
                Uncut.of(outline.shell(), List.of(fold.get()), ON_FOLD)
                        .forEach(part -> entities.polyline(CUT, turned(part), false));
            }
            outline.holes().forEach(hole -> entities.polyline(CUT_OUT, turned(hole.vertices()), true));
        }
    }

    /** Returns the pieces that are not cut already, by their places. */
    private int[] toCut() {
        return IntStream.range(0, marker.pieces().size())
                .filter(i -> !marker.states().get(i).cutAlready())
                .toArray();
    }

    private void blocks(Groups blocks) {
        for (int i : toCut()) {
            String name = blockName(i);
            blocks.add(0, "BLOCK").add(8, "0").add(2, name).add(70, 0).point(10, Point.ORIGIN);
            blocks.add(3, name);
            piece(blocks, i);
            blocks.add(0, "ENDBLK").add(8, "0");
        }
    }

    private void placedBlocks(Groups entities) {
        styleText(entities, "STYLE NAME", marker.job());
        styleText(entities, "MATERIAL", marker.fabric());
        styleText(entities, "UNITS", "METRIC");
        for (int i : toCut()) {
            entities.add(0, "INSERT")
                    .add(8, ApparelLayer.BOUNDARY.number())
                    .add(2, blockName(i))
                    .point(10, Point.ORIGIN);
        }
    }

    /** The words that stand for these things in drawings of sewn products: from memory. */
    private static void styleText(Groups groups, String keyword, String words) {
        groups.lettering(ApparelLayer.BOUNDARY.number(), Point.ORIGIN, 0, keyword + ": " + words, 0);
    }

    private void piece(Groups block, int index) {
        PlacedPiece piece = marker.pieces().get(index);
        PieceMarks marks = marker.marks().get(index).mapped(this::turned);
        List<Point> shell = turned(piece.outline().shell().vertices());
        block.polyline(ApparelLayer.BOUNDARY.number(), shell, true);
        corners(block, shell);
        for (Ring ring : piece.outline().holes()) {
            List<Point> hole = turned(ring.vertices());
            block.polyline(ApparelLayer.INTERNAL_CUTOUTS.number(), hole, true);
            corners(block, hole);
        }
        marks.notches().forEach(notch -> block.line(ApparelLayer.NOTCHES.number(), notch.from(), notch.to()));
        marks.grainLine()
                .filter(grain -> grain.length() >= SHORTEST_GRAIN_LINE)
                .ifPresent(grain -> block.line(ApparelLayer.GRAIN_LINE.number(), grain.from(), grain.to()));
        marks.drillHoles().forEach(hole -> block.dot(ApparelLayer.DRILL_HOLES.number(), hole));
        marks.innerLines().forEach(line -> block.polyline(ApparelLayer.INTERNAL_LINES.number(), line, false));
        marker.states()
                .get(index)
                .foldEdge()
                .ifPresent(
                        fold -> block.line(ApparelLayer.MIRROR_LINE.number(), turned(fold.from()), turned(fold.to())));
        Caption caption = marker.captionOf(index);
        Point middle = turned(caption.middle());
        pieceText(block, middle, "PIECE NAME", piece.piece());
        if (!piece.size().isEmpty()) {
            pieceText(block, middle, "SIZE", piece.size());
        }
        pieceText(block, middle, "QUANTITY", "1");
        caption(block, caption, middle);
    }

    private static void caption(Groups block, Caption caption, Point middle) {
        double height = caption.height() * 1000;
        double top = (caption.lines().size() - 1) / 2.0;
        for (int i = 0; i < caption.lines().size(); i++) {
            long up = StrictMath.round((top - i) * Caption.LEADING * height);
            block.lettering(
                    ApparelLayer.ANNOTATION.number(),
                    middle.plus(caption.turned() ? new Point(-up, 0) : new Point(0, up)),
                    StrictMath.round(height),
                    caption.lines().get(i),
                    caption.turned() ? 90 : 0);
        }
    }

    private static void pieceText(Groups block, Point at, String keyword, String words) {
        block.lettering(ApparelLayer.BOUNDARY.number(), at, 0, keyword + ": " + words, 0);
    }

    /** Marks the corners; what lies between them is a curve, or straight. */
    private static void corners(Groups block, List<Point> ring) {
        for (int i = 0; i < ring.size(); i++) {
            Point before = ring.get((i + ring.size() - 1) % ring.size());
            Point at = ring.get(i);
            Point there = at.minus(before);
            Point on = ring.get((i + 1) % ring.size()).minus(at);
            double turn = StrictMath.abs(StrictMath.atan2((double) there.cross(on), (double) there.dot(on)));
            if (turn > CORNER) {
                block.dot(ApparelLayer.TURN_POINTS.number(), at);
            }
        }
    }

    /** Names a block after the piece, as release 12 allows: up to 31 capital letters, digits and signs. */
    private String blockName(int index) {
        PlacedPiece piece = marker.pieces().get(index);
        String words = (piece.piece() + " " + piece.size())
                .strip()
                .toUpperCase(Locale.ROOT)
                .replaceAll("[^A-Z0-9]+", "-");
        String name = String.format(Locale.ROOT, "P%03d-", index + 1) + words;
        return name.substring(0, Math.min(name.length(), LONGEST_NAME));
    }

    private List<Point> turned(List<Point> points) {
        return points.stream().map(this::turned).toList();
    }

    private Point turned(Point point) {
        return new Point(point.x(), marker.cuttableWidth().micrometres() - point.y());
    }
}
