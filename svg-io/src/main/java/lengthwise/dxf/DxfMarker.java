package lengthwise.dxf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.Caption;
import lengthwise.svg.MarkerDrawing;

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

    private static final String CUT = "CUT";
    private static final String CUT_OUT = "CUTOUT";
    private static final int WHITE = 7;
    private static final int LONGEST_NAME = 31;

    private final MarkerDrawing marker;
    private final Groups file = new Groups();

    private DxfMarker(MarkerDrawing marker) {
        this.marker = marker;
    }

    /** Returns a file with one block a piece: its cut line, cut-outs, marks and texts on layers of their own. */
    public static byte[] pieces(MarkerDrawing marker) {
        DxfMarker writer = new DxfMarker(marker);
        return writer.write(
                Arrays.stream(ApparelLayer.values()).map(ApparelLayer::number).toList(),
                writer::blocks,
                writer::placedBlocks);
    }

    /** Returns a file with the cut lines and the cut-outs alone, each on a layer. */
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
        for (PlacedPiece piece : marker.pieces()) {
            entities.polyline(CUT, turned(piece.outline().shell()), true);
            piece.outline().holes().forEach(hole -> entities.polyline(CUT_OUT, turned(hole), true));
        }
    }

    private void blocks(Groups blocks) {
        for (int i = 0; i < marker.pieces().size(); i++) {
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
        for (int i = 0; i < marker.pieces().size(); i++) {
            entities.add(0, "INSERT")
                    .add(8, ApparelLayer.BOUNDARY.number())
                    .add(2, blockName(i))
                    .point(10, Point.ORIGIN);
        }
    }

    /** The words that stand for these things in drawings of sewn products: from memory. */
    private static void styleText(Groups groups, String keyword, String words) {
        groups.lettering(ApparelLayer.BOUNDARY.number(), Point.ORIGIN, 0, keyword + ": " + words);
    }

    private void piece(Groups block, int index) {
        PlacedPiece piece = marker.pieces().get(index);
        PieceMarks marks = marker.marks().get(index).mapped(this::turned);
        List<Point> shell = turned(piece.outline().shell());
        block.polyline(ApparelLayer.BOUNDARY.number(), shell, true);
        corners(block, shell);
        for (Ring ring : piece.outline().holes()) {
            List<Point> hole = turned(ring);
            block.polyline(ApparelLayer.INTERNAL_CUTOUTS.number(), hole, true);
            corners(block, hole);
        }
        marks.notches().forEach(notch -> block.line(ApparelLayer.NOTCHES.number(), notch.from(), notch.to()));
        marks.grainLine()
                .filter(grain -> grain.length() >= SHORTEST_GRAIN_LINE)
                .ifPresent(grain -> block.line(ApparelLayer.GRAIN_LINE.number(), grain.from(), grain.to()));
        marks.drillHoles().forEach(hole -> block.dot(ApparelLayer.DRILL_HOLES.number(), hole));
        marks.innerLines().forEach(line -> block.polyline(ApparelLayer.INTERNAL_LINES.number(), line, false));
        Caption caption =
                Caption.of(piece, marker.marks().get(index), marker.numbers().get(index));
        Point middle = turned(caption.middle());
        pieceText(block, middle, "PIECE NAME", piece.piece());
        if (!piece.size().isEmpty()) {
            pieceText(block, middle, "SIZE", piece.size());
        }
        pieceText(block, middle, "QUANTITY", "1");
        double height = caption.height() * 1000;
        double top = (caption.lines().size() - 1) / 2.0;
        for (int i = 0; i < caption.lines().size(); i++) {
            long up = StrictMath.round((top - i) * Caption.LEADING * height);
            block.lettering(
                    ApparelLayer.ANNOTATION.number(),
                    middle.plus(new Point(0, up)),
                    StrictMath.round(height),
                    caption.lines().get(i));
        }
    }

    private static void pieceText(Groups block, Point at, String keyword, String words) {
        block.lettering(ApparelLayer.BOUNDARY.number(), at, 0, keyword + ": " + words);
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

    private List<Point> turned(Ring ring) {
        List<Point> points = new ArrayList<>(ring.size());
        for (Point vertex : ring.vertices()) {
            points.add(turned(vertex));
        }
        return points;
    }

    private Point turned(Point point) {
        return new Point(point.x(), marker.cuttableWidth().micrometres() - point.y());
    }
}
