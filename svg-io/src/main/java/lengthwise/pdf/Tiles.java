package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.drawing.Painted.Line;
import lengthwise.model.Length;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * A drawing at true size on pages that are joined with tape. Each page but the first of its row has a thin line along its
 * left edge, each but those of the first row one along its upper edge: the margin beyond is cut off, and the page laid on
 * the dashed line of its neighbour. Diamonds lie across the lines, half on each page; where their corners do not meet, the
 * pages have drifted.
 */
final class Tiles {
    /** The colour of all that joins pages, so that nobody cuts cloth by it. */
    static final int JOIN = 0x1f5fbf;

    private static final double LINE = 0.2;
    private static final double RIM = 0.3;
    private static final double DIAMOND = 5;
    private static final double[] ALONG_A_JOIN = {1 / 6.0, 0.5, 5 / 6.0};

    private final PageSetup setup;
    private final Extent extent;
    private final Tiling tiling;
    private final double head;
    private final List<Tile> tiles = new ArrayList<>();

    /** One cell of the tiling, and whether something of the drawing is in it. */
    record Tile(int column, int row, boolean needed) {
        String name() {
            return Tiling.name(column, row);
        }
    }

    /**
     * Plans the pages.
     *
     * @param extent what is to be shown
     * @param shows whether something to cut by is within a rectangle
     */
    Tiles(PageSetup setup, Extent extent, Predicate<Extent> shows) {
        this.setup = setup;
        this.extent = extent;
        Paper paper = setup.paper();
        Length along = Length.ofMillimetres(extent.width());
        // A long page is a print of its own, and has its own squares to measure.
        head = paper.isRoll() ? CheckSheet.INCHES + 10 : 0;
        Length longest = setup.userUnit()
                ? Length.max(along, setup.overlap().times(2).plus(new Length(1)))
                : room(Book.LONGEST_SIDE);
        tiling = Tiling.of(
                along,
                Length.ofMillimetres(extent.height()),
                paper.isRoll() ? longest : setup.between(paper.width()),
                setup.between(paper.isRoll() ? paper.width() : paper.height()),
                setup.overlap());
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                tiles.add(new Tile(column, row, shows.test(shown(column, row))));
            }
        }
    }

    private Length room(Length side) {
        return setup.between(side).minus(Length.ofMillimetres(head));
    }

    private Extent shown(int column, int row) {
        double x = extent.minX() + tiling.x(column);
        double y = extent.minY() + tiling.y(row);
        return new Extent(
                x,
                y,
                x + tiling.cellAlong().millimetres(),
                y + tiling.cellAcross().millimetres());
    }

    Tiling tiling() {
        return tiling;
    }

    Extent extent() {
        return extent;
    }

    List<Tile> tiles() {
        return tiles;
    }

    List<Tile> needed() {
        return tiles.stream().filter(Tile::needed).toList();
    }

    List<String> blank() {
        return tiles.stream().filter(tile -> !tile.needed).map(Tile::name).toList();
    }

    /** Returns what part of the drawing a page shows. */
    Extent shown(Tile tile) {
        return shown(tile.column, tile.row);
    }

    /**
     * Adds the pages, row by row.
     *
     * @param drawing tells what is printed apart from what else is in the book
     */
    void print(Book book, PDFormXObject form, int drawing, String caption) throws IOException {
        List<Tile> needed = needed();
        for (int i = 0; i < needed.size(); i++) {
            page(
                    book,
                    form,
                    drawing,
                    needed.get(i),
                    "%s · sheet %s of %s · true size, do not scale".formatted(caption, i + 1, needed.size()));
        }
    }

    private void page(Book book, PDFormXObject form, int drawing, Tile tile, String caption) throws IOException {
        Extent shown = shown(tile.column, tile.row);
        double margin = setup.margin().millimetres();
        double wide = setup.paper().isRoll() ? Math.min(shown.width(), extent.maxX() - shown.minX()) : shown.width();
        double high = shown.height();
        Length pageWidth = setup.paper().isRoll()
                ? Length.ofMillimetres(wide + head + 2 * margin)
                : setup.paper().width();
        Length pageHeight =
                setup.paper().isRoll() ? setup.paper().width() : setup.paper().height();
        int unit = setup.userUnit()
                ? Math.toIntExact(1 + (pageWidth.micrometres() - 1) / Book.LONGEST_SIDE.micrometres())
                : 1;
        Canvas canvas = book.page(pageWidth, pageHeight, unit);
        if (head > 0) {
            canvas.furniture(() -> CheckSheet.squares(canvas, margin, margin, false));
        }
        double left = margin + head;
        book.place(drawing, shown.minX() - left, shown.minY() - margin);
        canvas.within(
                left,
                margin,
                wide,
                high,
                () -> canvas.moved(left - shown.minX(), margin - shown.minY(), 1, () -> canvas.form(form)));
        String name = tiling.pages() > 1 ? tile.name() : "";
        // A line along the rim shows whole, so that its middle can be cut and laid on.
        canvas.within(
                left - RIM,
                margin - RIM,
                wide + 2 * RIM,
                high + 2 * RIM,
                () -> canvas.moved(
                        left,
                        margin,
                        1,
                        () -> canvas.furniture(() -> {
                            joins(canvas, tile, wide, high);
                            canvas.words(
                                    new Painted.Words(name, 8, high * 0.37, 12, 0, Anchor.START, true, Canvas.GREY),
                                    0.5);
                            canvas.words(new Painted.Words(
                                    (name + " · " + caption).replaceFirst("^ · ", ""),
                                    3,
                                    high - 1.4,
                                    2.6,
                                    0,
                                    Anchor.START,
                                    false,
                                    JOIN));
                        })));
    }

    private boolean needed(int column, int row) {
        return column >= 0
                && row >= 0
                && column < tiling.columns()
                && row < tiling.rows()
                && tiles.get(row * tiling.columns() + column).needed;
    }

    /** Paints, from the upper left corner of what a page shows, its own edges and where its neighbours are laid. */
    private void joins(Canvas canvas, Tile tile, double wide, double high) throws IOException {
        double stepX = tiling.x(1);
        double stepY = tiling.y(1);
        int column = tile.column;
        int row = tile.row;
        if (needed(column - 1, row)) {
            join(canvas, true, 0, stepY, high, Tiling.name(column - 1, row), tile.name());
        }
        if (needed(column + 1, row)) {
            join(canvas, false, stepX, stepY, high, tile.name(), Tiling.name(column + 1, row));
        }
        if (needed(column, row - 1)) {
            canvas.turned(0, 0, () -> join(canvas, true, 0, -stepX, -wide, Tiling.name(column, row - 1), tile.name()));
        }
        if (needed(column, row + 1)) {
            canvas.turned(
                    0, stepY, () -> join(canvas, false, 0, -stepX, -wide, tile.name(), Tiling.name(column, row + 1)));
        }
    }

    /**
     * Paints a line across the page at {@code x}, with ticks of a centimetre and diamonds.
     *
     * @param own whether it is the page's own edge, to be cut along
     * @param step how far the diamonds are spread
     * @param length of the line; negative where it runs upwards
     */
    private static void join(
            Canvas canvas, boolean own, double x, double step, double length, String before, String after)
            throws IOException {
        Line whole = Line.of(JOIN, LINE);
        canvas.line(x, 0, x, length, own ? whole : new Line(JOIN, LINE, List.of(4.0, 2.0), 1));
        double sign = Math.signum(length);
        for (int i = 1; i * 10 < Math.abs(length); i++) {
            double tick = i % 5 == 0 ? 2 : 1;
            canvas.line(x - tick, sign * i * 10, x + tick, sign * i * 10, whole);
        }
        for (double part : ALONG_A_JOIN) {
            double y = part * step;
            canvas.line(x - DIAMOND, y, x, y - DIAMOND, whole);
            canvas.line(x, y - DIAMOND, x + DIAMOND, y, whole);
            canvas.line(x + DIAMOND, y, x, y + DIAMOND, whole);
            canvas.line(x, y + DIAMOND, x - DIAMOND, y, whole);
            canvas.words(new Painted.Words(before, x - 0.8, y + 0.9, 2.4, 0, Anchor.END, false, JOIN));
            canvas.words(new Painted.Words(after, x + 0.8, y + 0.9, 2.4, 0, Anchor.START, false, JOIN));
        }
    }
}
