package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.drawing.Painted.Line;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.MarkerPainting;

/** The second page: how the sheets lie together, which are left out, and on which of them each piece is. */
final class MapSheet {
    private static final List<String> HEADINGS = List.of("no.", "piece", "size", "garment", "hand", "on sheets");

    private final MarkerPainting painting;
    private final Tiles tiles;

    MapSheet(MarkerPainting painting, Tiles tiles) {
        this.painting = painting;
        this.tiles = tiles;
    }

    void set(Flow flow, Extent area) throws IOException {
        flow.heading("Map of the sheets");
        Extent drawn = tiles.extent();
        double rowNames = 6;
        double scale =
                Math.min((area.width() - rowNames) / drawn.width(), (area.height() * 0.45 - rowNames) / drawn.height());
        double height = drawn.height() * scale + rowNames + 2;
        Flow.Page room = flow.room(height);
        map(room.canvas(), room.area().minX() + rowNames, room.area().minY() + rowNames, scale);
        flow.paragraph(
                tiles.blank().isEmpty()
                        ? "Every sheet has something to cut on it."
                        : "Left out, because there is nothing to cut on them (grey in the map): "
                                + String.join(", ", tiles.blank()) + ".");
        flow.heading("Pieces");
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < painting.pieces().size(); i++) {
            PlacedPiece piece = painting.marker().pieces().get(i);
            rows.add(List.of(
                    number(i),
                    piece.piece(),
                    piece.size(),
                    piece.garments().stream().distinct().map(String::valueOf).collect(Collectors.joining(" + "))
                            + (piece.customers().isEmpty() ? "" : " " + piece.customers()),
                    piece.hand(),
                    sheets(i)));
        }
        flow.table(List.of(0.0, 0.09, 0.3, 0.4, 0.555, 0.655), HEADINGS, rows);
    }

    private String number(int piece) {
        int number = painting.marker().numbers().get(piece);
        return number == 0 ? "" : Integer.toString(number);
    }

    private String sheets(int piece) {
        MarkerPrint.Shape shape = MarkerPrint.Shape.of(painting.pieces().get(piece));
        return tiles.needed().stream()
                .filter(tile -> shape.meets(tiles.shown(tile)))
                .map(Tiles.Tile::name)
                .collect(Collectors.joining(" "));
    }

    private void map(Canvas canvas, double x, double y, double scale) throws IOException {
        Extent drawn = tiles.extent();
        canvas.within(x, y, drawn.width() * scale, drawn.height() * scale, () -> {
            for (Tiles.Tile tile : tiles.tiles()) {
                if (!tile.needed()) {
                    canvas.fill(
                            x + tiles.tiling().x(tile.column()) * scale,
                            y + tiles.tiling().y(tile.row()) * scale,
                            tiles.tiling().x(1) * scale,
                            tiles.tiling().y(1) * scale,
                            Canvas.PALE,
                            1);
                }
            }
            canvas.moved(x - drawn.minX() * scale, y - drawn.minY() * scale, scale, () -> outlines(canvas, scale));
        });
        Line join = Line.of(Tiles.JOIN, 0.25);
        Tiling tiling = tiles.tiling();
        double right = drawn.width() * scale;
        double bottom = drawn.height() * scale;
        for (int column = 0; column < tiling.columns(); column++) {
            double from = tiling.x(column) * scale;
            double to = Math.min(right, tiling.x(column + 1) * scale);
            canvas.line(x + from, y, x + from, y + bottom, join);
            name(canvas, x + (from + to) / 2, y - 1.5, Integer.toString(column + 1));
        }
        for (int row = 0; row < tiling.rows(); row++) {
            double from = tiling.y(row) * scale;
            double to = Math.min(bottom, tiling.y(row + 1) * scale);
            canvas.line(x, y + from, x + right, y + from, join);
            name(canvas, x - 3.5, y + (from + to) / 2 + 1.2, Tiling.rowName(row));
        }
        canvas.rectangle(x, y, right, bottom, join);
    }

    private static void name(Canvas canvas, double x, double y, String name) throws IOException {
        canvas.words(new Painted.Words(name, x, y, 3.4, 0, Anchor.MIDDLE, true, Tiles.JOIN));
    }

    private void outlines(Canvas canvas, double scale) throws IOException {
        Line line = Line.of(Canvas.BLACK, 0.12 / scale);
        List<Painted> numbers = new ArrayList<>();
        for (int i = 0; i < painting.pieces().size(); i++) {
            Painted.Path cut = painting.cutLine(i);
            canvas.path(new Painted.Path(cut.chains(), cut.fill(), Optional.of(line), List.of(), ""));
            Extent there = Extent.of(cut);
            double size = Math.min(2.2 / scale, 0.9 * Math.min(there.width(), there.height()));
            if (size * scale > 1) {
                numbers.add(new Painted.Words(
                        number(i),
                        (there.minX() + there.maxX()) / 2,
                        (there.minY() + there.maxY()) / 2 + size * 0.36,
                        size,
                        0,
                        Anchor.MIDDLE,
                        false,
                        Canvas.BLACK));
            }
        }
        canvas.paint(numbers);
    }
}
