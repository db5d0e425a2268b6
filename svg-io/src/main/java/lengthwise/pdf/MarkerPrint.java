package lengthwise.pdf;

import java.awt.geom.Path2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Painted;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.svg.MarkerPainting;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * A marker on paper, at true size: a page to measure first, a map with the list of pieces, then the sheets. The drawing is
 * stored once, and every sheet shows its part of it; sheets without anything to cut are left out.
 */
public final class MarkerPrint {
    /** How much of a roll the pages to read take (mm). */
    private static final double ROLL_FOR_READING = 297;

    /** Less height than this, and the map gets a page of its own (mm). */
    private static final double ROOM_FOR_A_MAP = 250;

    private static final int MOST_SHEETS = 1_500;

    /** How far from cloth and pieces something may be painted (mm). */
    private static final double FARTHEST = 100;

    private final MarkerPainting painting;
    private final PageSetup setup;
    private final Book book;

    private MarkerPrint(MarkerPainting painting, PageSetup setup, Book book) {
        this.painting = painting;
        this.setup = setup;
        this.book = book;
    }

    /**
     * Returns a marker as pages.
     *
     * @throws DrawingException if it would take more sheets than anybody joins
     */
    public static Printed of(MarkerPainting painting, PageSetup setup) throws IOException, DrawingException {
        try (Book book = new Book(caption(painting))) {
            return new MarkerPrint(painting, setup, book).print();
        }
    }

    static String caption(MarkerPainting painting) {
        return painting.marker().fabric() + " · " + painting.marker().job();
    }

    /** Returns everything at the marker itself, in the order of painting. */
    static List<Painted> drawing(MarkerPainting painting) {
        List<Painted> all = new ArrayList<>(painting.cloth());
        painting.pieces().forEach(all::addAll);
        all.addAll(painting.over());
        return all;
    }

    /** Returns the room of everything at the marker, but not of what strayed far from cloth and pieces. */
    static Extent extent(MarkerPainting painting, Book book) throws IOException {
        List<Painted> near = new ArrayList<>(List.of(painting.clothEdge()));
        for (int i = 0; i < painting.pieces().size(); i++) {
            near.add(painting.cutLine(i));
        }
        return book.extent(drawing(painting))
                .common(book.extent(near).grown(FARTHEST))
                .grown(1);
    }

    private Printed print() throws IOException, DrawingException {
        Extent extent = extent(painting, book);
        PDFormXObject form = book.form(extent, canvas -> {
            canvas.furniture(() -> canvas.paint(painting.cloth()));
            for (List<Painted> piece : painting.pieces()) {
                canvas.paint(piece);
            }
            canvas.furniture(() -> canvas.paint(painting.over()));
        });
        List<Shape> shapes = painting.pieces().stream().map(Shape::of).toList();
        Tiles tiles = new Tiles(setup, extent, cell -> shapes.stream().anyMatch(shape -> shape.meets(cell)));
        if (tiles.needed().size() > MOST_SHEETS) {
            throw new DrawingException("The marker for %s would take %s sheets of %s; choose larger paper or a roll."
                    .formatted(
                            painting.marker().fabric(),
                            tiles.needed().size(),
                            setup.paper().called()));
        }
        firstPages(tiles);
        tiles.print(book, form, 0, caption(painting));
        return new Printed(
                book.bytes(),
                book.pages(),
                tiles.needed().size(),
                tiles.tiling().columns(),
                tiles.tiling().rows(),
                tiles.blank(),
                book.missingLetters());
    }

    private void firstPages(Tiles tiles) throws IOException {
        Flow.Page check = readingPage();
        Extent left = CheckSheet.paint(
                check.canvas(),
                check.area(),
                painting.marker().fabric(),
                painting.marker().job(),
                how(tiles),
                this::readingPage);
        Flow.Page map = left.height() > ROOM_FOR_A_MAP ? new Flow.Page(check.canvas(), left) : readingPage();
        Flow flow = new Flow(map, this::readingPage);
        new MapSheet(painting, tiles).set(flow, map.area());
        flow.skip(6);
        new Notes(painting).set(flow);
    }

    private Flow.Page readingPage() throws IOException {
        Paper paper = setup.paper();
        return page(
                book,
                paper.isRoll() ? Length.ofMillimetres(ROLL_FOR_READING) : paper.width(),
                paper.isRoll() ? paper.width() : paper.height(),
                setup.margin());
    }

    static Flow.Page page(Book book, Length width, Length height, Length margin) throws IOException {
        double white = margin.millimetres();
        return new Flow.Page(
                book.page(width, height),
                new Extent(white, white, width.millimetres() - white, height.millimetres() - white));
    }

    private List<String> how(Tiles tiles) {
        Tiling tiling = tiles.tiling();
        List<String> how = new ArrayList<>(measuring());
        how.add("%s; margin %s, overlap %s. %s × %s sheets%s."
                .formatted(
                        setup.paper().called(),
                        LengthWords.metric(setup.margin()),
                        LengthWords.metric(setup.overlap()),
                        tiling.columns(),
                        tiling.rows(),
                        tiles.blank().isEmpty() ? "" : ", " + tiles.blank().size() + " of them left out"));
        if (tiling.pages() > 1) {
            how.add(
                    "Rows are letters, columns numbers: A1 is at the start of the cloth, at its edge away from you as in"
                            + " the map.");
            how.add("To join: cut each sheet along its whole blue line at the left and at the top, lay it on the dashed"
                    + " blue line of its neighbour, and tape it where the corners of the diamonds meet. First the rows,"
                    + " then the rows to each other.");
            how.add("Where corners are off by more than 1 mm, the pages have drifted: loosen and lay them again.");
        }
        how.add("Cut cloth along the middle of the black line, never along a blue one.");
        how.add("Blades cut hands: fingers behind the ruler's edge, blades closed when laid down. Machines by their"
                + " manual, local rules and trained people.");
        return how;
    }

    static List<String> measuring() {
        return List.of(
                "Print at 100 % (actual size): no scaling, no fitting to the page, on one side of the paper.",
                "Print this page first, alone, and measure both squares each way. If a side is off by more than 0.5 mm"
                        + " (1/64 in), do not cut. \"lengthwise print --measured 97mm\" says which scale to set.");
    }

    /** Where a piece is to be seen: inside its cut line, and where its marks reach beyond it. */
    record Shape(Path2D outline, List<Painted.Path> marks) {
        static Shape of(List<Painted> piece) {
            Path2D outline = new Path2D.Double(Path2D.WIND_NON_ZERO);
            List<Painted.Path> marks = new ArrayList<>();
            for (Painted one : piece) {
                if (one instanceof Painted.Path path) {
                    marks.add(path);
                }
            }
            marks.remove(0);
            for (Chain chain : ((Painted.Path) piece.get(0)).chains()) {
                Point first = chain.points().get(0);
                outline.moveTo(first.x() / 1000.0, first.y() / 1000.0);
                for (Point point : chain.points()) {
                    outline.lineTo(point.x() / 1000.0, point.y() / 1000.0);
                }
                outline.closePath();
            }
            return new Shape(outline, marks);
        }

        boolean meets(Extent cell) {
            // Half of the line lies outside the cut line.
            Extent wider = cell.grown(0.2);
            return outline.intersects(wider.minX(), wider.minY(), wider.width(), wider.height())
                    || marks.stream().anyMatch(wider::meets);
        }
    }
}
