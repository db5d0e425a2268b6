package lengthwise.svg;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Fabric;
import lengthwise.model.Marker;
import lengthwise.model.Motif;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;

/**
 * The motifs that pieces keep off or on, wherever they come over the cuttable area; on cloth folded lengthwise those of the
 * lower layer too, as they lie under it.
 */
final class MotifShapes {
    /** More of them are no picture but a grey. */
    private static final long MOST = 3_000;

    private final Repeat repeat;
    private final Point corner;
    private final Box area;

    private MotifShapes(Marker marker, Repeat repeat, Point corner) {
        this.repeat = repeat;
        this.corner = corner;
        this.area = new Box(
                0,
                0,
                marker.length().micrometres(),
                marker.order().fabric().cuttableWidth().micrometres());
    }

    /** Draws the motifs of a marker, with the name of each once. */
    static void draw(Marker marker, Point corner, Strokes strokes) {
        Fabric fabric = marker.order().fabric();
        for (Motif motif : marker.order().motifs()) {
            MotifShapes shapes = new MotifShapes(marker, fabric.repeatOnTable().orElseThrow(), corner);
            shapes.draw(motif, Optional.of(motif.name()), "none", strokes);
            if (fabric.spread().form() == Spread.Form.FOLD_LENGTHWISE) {
                shapes.draw(shapes.below(motif), Optional.empty(), "2 1.5", strokes);
            }
        }
    }

    private Motif below(Motif motif) {
        long twice = 2 * repeat.originY().micrometres();
        Box box = motif.place();
        return new Motif(
                motif.name(), new Box(box.minX(), -twice - box.maxY(), box.maxX(), -twice - box.minY()), motif.round());
    }

    private void draw(Motif motif, Optional<String> name, String dashes, Strokes strokes) {
        List<Box> copies = copies(motif).toList();
        StringBuilder path = new StringBuilder();
        copies.forEach(copy -> path.append(motif.round() ? ellipse(copy) : rectangle(copy)));
        if (path.isEmpty()) {
            return;
        }
        strokes.path(
                path.toString(),
                "class",
                "motif",
                "fill",
                "none",
                "stroke",
                MarkerSvg.FAINT,
                "stroke-width",
                "0.4",
                "stroke-dasharray",
                dashes);
        name.ifPresent(words -> copies.stream()
                .filter(area::contains)
                .findFirst()
                .ifPresent(copy -> strokes.centred(
                        (copy.minX() + copy.maxX()) / 2000.0 + corner.x() / 1000.0,
                        (copy.minY() + copy.maxY()) / 2000.0 + corner.y() / 1000.0,
                        4,
                        words,
                        0)));
    }

    private Stream<Box> copies(Motif motif) {
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        Box first = motif.place()
                .moved(new Point(
                        repeat.originX().micrometres(), repeat.originY().micrometres()));
        if ((area.width() / Math.max(1, along) + 2) * (area.height() / Math.max(1, across) + 2) > MOST
                && along > 0
                && across > 0) {
            return Stream.empty();
        }
        Stream.Builder<Box> copies = Stream.builder();
        long firstRow = across == 0 ? 0 : Math.floorDiv(area.minY() - first.maxY(), across);
        long lastRow = across == 0 ? 0 : Math.floorDiv(area.maxY() - first.minY(), across);
        for (long row = firstRow; row <= lastRow; row++) {
            long drop = repeat.halfDrop() && Math.floorMod(row, 2) == 1 ? along / 2 : 0;
            long firstColumn = along == 0 ? 0 : Math.floorDiv(area.minX() - first.maxX() - drop, along);
            long lastColumn = along == 0 ? 0 : Math.floorDiv(area.maxX() - first.minX(), along);
            for (long column = firstColumn; column <= lastColumn; column++) {
                Box copy = first.moved(new Point(column * along + drop, row * across));
                Box there = new Box(
                        along == 0 ? area.minX() : copy.minX(),
                        across == 0 ? area.minY() : copy.minY(),
                        along == 0 ? area.maxX() : copy.maxX(),
                        across == 0 ? area.maxY() : copy.maxY());
                if (there.overlaps(area)) {
                    copies.add(there);
                }
            }
        }
        return copies.build();
    }

    private String rectangle(Box box) {
        Box part = box.common(area).orElseThrow().moved(corner);
        return "M%s %s H%s V%s H%s Z "
                .formatted(
                        Millimetres.of(part.minX()),
                        Millimetres.of(part.minY()),
                        Millimetres.of(part.maxX()),
                        Millimetres.of(part.maxY()),
                        Millimetres.of(part.minX()));
    }

    private String ellipse(Box box) {
        String halfWidth = Millimetres.of(box.width() / 2);
        String halfHeight = Millimetres.of(box.height() / 2);
        String width = Millimetres.of(box.width());
        return "M%s %s a%s %s 0 1 0 %s 0 a%s %s 0 1 0 -%s 0 Z "
                .formatted(
                        Millimetres.of(box.minX() + corner.x()),
                        Millimetres.of((box.minY() + box.maxY()) / 2 + corner.y()),
                        halfWidth,
                        halfHeight,
                        width,
                        halfWidth,
                        halfHeight,
                        width);
    }
}
