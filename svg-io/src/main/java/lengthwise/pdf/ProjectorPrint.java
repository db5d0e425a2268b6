package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.drawing.Painted.Line;
import lengthwise.model.Length;
import lengthwise.svg.MarkerPainting;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentGroup;

/**
 * A marker to be projected on the cloth: one page at true size, black thick lines without tints, a grid of 10 cm to set the
 * projector by, and layers to switch on and off: the grid, the cloth, the pieces of each size.
 */
public final class ProjectorPrint {
    private static final double AIR = 12;
    private static final double GRID = 100;

    /** Thin lines get lost between the picture elements of a projector (common practice, no source). */
    private static final double THICKER = 5;

    private static final double THICKEST = 3;
    private static final int DARK = 0x60;

    private ProjectorPrint() {}

    /**
     * Returns a marker as one page; as several, side by side, where it is longer than 5.08 m and no larger unit is wanted.
     */
    public static Printed of(MarkerPainting painting, boolean userUnit) throws IOException {
        try (Book book = new Book(MarkerPrint.caption(painting))) {
            Extent extent = MarkerPrint.extent(painting, book).grown(AIR);
            PDOptionalContentGroup grid = book.layer("grid of 10 cm");
            List<Layer> layers = layers(painting, book);
            double longest = userUnit ? extent.width() : Book.LONGEST_SIDE.millimetres();
            for (double from = extent.minX(); from < extent.maxX() - 2 * AIR; from += longest - GRID) {
                double width = Math.min(longest, extent.maxX() - from);
                int unit = (int) Math.ceil(width / Book.LONGEST_SIDE.millimetres() - 1e-9);
                Canvas canvas = book.page(Length.ofMillimetres(width), Length.ofMillimetres(extent.height()), unit);
                double start = from;
                book.place(0, start, extent.minY());
                canvas.moved(-start, -extent.minY(), 1, () -> {
                    canvas.layer(grid, () -> canvas.furniture(() -> grid(canvas, extent)));
                    for (Layer layer : layers) {
                        canvas.layer(layer.group, () -> layer.paint(canvas));
                    }
                });
            }
            int pages = book.pages();
            return new Printed(book.bytes(), pages, pages, 0, 0, List.of(), book.missingLetters());
        }
    }

    private record Layer(PDOptionalContentGroup group, boolean cloth, List<Painted> painted) {
        void paint(Canvas canvas) throws IOException {
            if (cloth) {
                canvas.furniture(() -> canvas.paint(painted));
            } else {
                canvas.paint(painted);
            }
        }
    }

    private static List<Layer> layers(MarkerPainting painting, Book book) {
        List<Layer> layers = new ArrayList<>();
        layers.add(new Layer(book.layer("cloth"), true, bold(painting.cloth())));
        for (String size : painting.sizes()) {
            List<Painted> painted = IntStream.range(0, painting.pieces().size())
                    .filter(i -> painting.marker().pieces().get(i).size().equals(size))
                    .mapToObj(i -> bold(painting.pieces().get(i)))
                    .flatMap(List::stream)
                    .toList();
            layers.add(new Layer(book.layer(size.isEmpty() ? "pieces" : "size " + size), false, painted));
        }
        return layers;
    }

    private static void grid(Canvas canvas, Extent extent) throws IOException {
        Line line = new Line(Canvas.GREY, 0.8, List.of(5.0, 5.0), 1);
        for (double x = Math.ceil(extent.minX() / GRID) * GRID; x <= extent.maxX(); x += GRID) {
            canvas.line(x, extent.minY(), x, extent.maxY(), line);
            canvas.words(new Painted.Words(
                    Math.round(x / 10) + " cm", x + 1.5, extent.minY() + 8, 7, 0, Anchor.START, true, Canvas.GREY));
        }
        for (double y = Math.ceil(extent.minY() / GRID) * GRID; y <= extent.maxY(); y += GRID) {
            canvas.line(extent.minX(), y, extent.maxX(), y, line);
        }
    }

    private static List<Painted> bold(List<Painted> all) {
        List<Painted> bold = new ArrayList<>();
        for (Painted one : all) {
            if (one instanceof Painted.Words words) {
                bold.add(new Painted.Words(
                        words.words(),
                        words.x(),
                        words.y(),
                        words.size(),
                        words.radians(),
                        words.anchor(),
                        true,
                        Canvas.BLACK));
            } else if (one instanceof Painted.Path path) {
                Optional<Integer> fill = path.fill()
                        .filter(colour -> (colour >> 8 & 0xff) < DARK)
                        .map(dark -> Canvas.BLACK);
                Optional<Line> line = path.line()
                        .filter(drawn -> drawn.opacity() == 1)
                        .map(drawn -> new Line(
                                Canvas.BLACK,
                                Math.min(THICKEST, drawn.width() * THICKER),
                                drawn.dashes().stream().map(dash -> dash * 2).toList(),
                                1));
                if (fill.isPresent() || line.isPresent()) {
                    bold.add(new Painted.Path(path.chains(), fill, line, path.clip(), path.mark()));
                }
            }
        }
        return bold;
    }
}
