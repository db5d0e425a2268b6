package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.Painted;
import lengthwise.svg.MarkerPainting;

/** What stands beside a marker, set in lines on paper: facts, keys, assumptions, cautions; squares are left out. */
final class Notes {
    private final List<Painted> lines;
    /** Size of plain lettering on the marker, and how much smaller it is set. */
    private final double body;

    private final double scale;

    Notes(MarkerPainting painting) {
        List<Extent> squares = painting.beside().stream()
                .filter(one -> one instanceof Painted.Path path && path.mark().equals(MarkerPainting.CHECK_SQUARE))
                .map(one -> Extent.of((Painted.Path) one))
                .toList();
        lines = painting.beside().stream()
                .filter(one -> one instanceof Painted.Words words
                        ? squares.stream().noneMatch(square -> holds(square, words))
                        : one instanceof Painted.Path path && !path.mark().equals(MarkerPainting.CHECK_SQUARE))
                .toList();
        body = lines.stream()
                .filter(Painted.Words.class::isInstance)
                .mapToDouble(one -> ((Painted.Words) one).size())
                .min()
                .orElse(Flow.BODY);
        scale = Flow.BODY / body;
    }

    private static boolean holds(Extent square, Painted.Words words) {
        return words.x() > square.minX()
                && words.x() < square.maxX()
                && words.y() > square.minY()
                && words.y() < square.maxY();
    }

    /** Sets the lines as they follow one another on the marker, with the gaps between them. */
    void set(Flow flow) throws IOException {
        double left = 0;
        double before = Double.POSITIVE_INFINITY;
        List<Painted> row = new ArrayList<>();
        List<Painted.Path> swatches = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i) instanceof Painted.Path path) {
                swatches.add(path);
                continue;
            }
            Painted.Words words = (Painted.Words) lines.get(i);
            if (!row.isEmpty() && Math.abs(words.y() - before) > 0.01) {
                row(flow, row, left, before);
                row.clear();
            }
            boolean newColumn = words.y() < before - 0.01;
            if (row.isEmpty()) {
                double gap = newColumn ? 2 * body : words.y() - before;
                flow.skip(Math.max(0, Math.min(gap, 3 * body) - 1.35 * words.size()) * scale);
                left = newColumn ? words.x() : Math.min(left, words.x());
            }
            for (Painted.Path swatch : swatches) {
                left = Math.min(left, Extent.of(swatch).minX());
            }
            row.addAll(swatches);
            swatches.clear();
            row.add(words);
            before = words.y();
        }
        if (!row.isEmpty()) {
            row(flow, row, left, before);
        }
    }

    private void row(Flow flow, List<Painted> row, double left, double baseline) throws IOException {
        double size = row.stream()
                .filter(Painted.Words.class::isInstance)
                .mapToDouble(one -> ((Painted.Words) one).size())
                .max()
                .orElse(body);
        if (row.stream().allMatch(one -> one instanceof Painted.Words words && words.bold())) {
            flow.keep(1.35 * size * scale);
        }
        Flow.Page room = flow.room(1.35 * size * scale);
        Extent there = room.area();
        room.canvas()
                .moved(
                        there.minX() - left * scale,
                        there.minY() + (size - baseline) * scale,
                        scale,
                        () -> room.canvas().paint(row));
    }
}
