package lengthwise.pdf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.PageGrid;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.pdf.TapedPages.Sheet;

/** Lays pages row by row as the maker says; a blank page keeps its place. */
final class TilesOnGrid {
    /** Pages may differ by this much (µm) and still be of one size. */
    private static final long SAME_SIZE = 500;

    private static final double FARTHEST = 100_000_000;

    private final String file;
    private final PageGrid grid;
    private int repeated;

    TilesOnGrid(String file, PageGrid grid) {
        this.file = file;
        this.grid = grid;
    }

    /** Returns how many shapes were left out because every page has them at the same place. */
    int repeated() {
        return repeated;
    }

    /** Leaves out frames, rulers and the like: what most pages with anything on them, and two at least, have alike. */
    private List<DrawnPage> withoutFurniture(List<DrawnPage> pages) {
        Map<List<Point>, Integer> times = new HashMap<>();
        long used = pages.stream().filter(page -> !page.shapes().isEmpty()).count();
        for (DrawnPage page : pages) {
            page.shapes().stream().map(TilesOnGrid::key).distinct().forEach(key -> times.merge(key, 1, Integer::sum));
        }
        List<DrawnPage> plain = new ArrayList<>();
        for (DrawnPage page : pages) {
            List<DrawnShape> own = page.shapes().stream()
                    .filter(shape ->
                            times.getOrDefault(key(shape), 0) < Math.max(2, used * 0.8) || goesOver(shape, page.box()))
                    .toList();
            repeated += page.shapes().size() - own.size();
            plain.add(new DrawnPage(page.box(), own, page.texts()));
        }
        return plain;
    }

    /** Says whether an open line runs to where the next page begins, as the edge of a long piece does on each page. */
    private boolean goesOver(DrawnShape shape, Box page) {
        if (shape.chains().stream().allMatch(Chain::closed)) {
            return false;
        }
        Box room = DrawnPage.room(shape).orElse(page);
        long in = grid.overlap().micrometres() / 2 + SAME_SIZE;
        boolean left = room.minX() <= page.minX() + in;
        boolean right = room.maxX() >= page.maxX() - in;
        boolean up = room.minY() <= page.minY() + in;
        boolean down = room.maxY() >= page.maxY() - in;
        // The side of a frame lies along the edge, all of it.
        boolean along = room.maxX() <= page.minX() + in
                || room.minX() >= page.maxX() - in
                || room.maxY() <= page.minY() + in
                || room.minY() >= page.maxY() - in;
        return (left || right || up || down) && !along;
    }

    private static List<Point> key(DrawnShape shape) {
        return shape.chains().stream()
                .flatMap(chain -> chain.points().stream())
                .map(point -> new Point(Math.floorDiv(point.x() + 50, 100), Math.floorDiv(point.y() + 50, 100)))
                .toList();
    }

    List<Sheet> lay(List<DrawnPage> all) throws DrawingException {
        int from = grid.firstPage() - 1;
        if (from >= all.size()) {
            throw new DrawingException("%s has %s pages, so tiles cannot begin with page %s; correct first-page."
                    .formatted(file, all.size(), grid.firstPage()));
        }
        int rows = grid.rows().orElse((all.size() - from - 1) / grid.columns() + 1);
        long wanted = (long) rows * grid.columns();
        if (grid.rows().isPresent() && wanted > all.size() - from) {
            throw new DrawingException(
                    "%s has %s pages from page %s on, and %s × %s are %s; correct the columns and rows of its tiles."
                            .formatted(file, all.size() - from, grid.firstPage(), grid.columns(), rows, wanted));
        }
        List<DrawnPage> pages = withoutFurniture(all.subList(from, (int) Math.min(all.size(), from + wanted)));
        Box size = pages.get(0).box();
        long overlap = grid.overlap().micrometres();
        if (overlap >= Math.min(size.width(), size.height())) {
            throw new DrawingException(String.format(
                    Locale.ROOT,
                    "%s: pages of %.0f × %.0f mm cannot overlap by %.0f mm; correct the overlap of its tiles.",
                    file,
                    size.width() / 1000.0,
                    size.height() / 1000.0,
                    overlap / 1000.0));
        }
        if (grid.columns() * (double) size.width() > FARTHEST || rows * (double) size.height() > FARTHEST) {
            throw new DrawingException(file + ": its tiles make more than 100 m; correct their columns and rows.");
        }
        List<Sheet> sheets = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            Box own = pages.get(i).box();
            if (Math.abs(own.width() - size.width()) > SAME_SIZE
                    || Math.abs(own.height() - size.height()) > SAME_SIZE) {
                throw new DrawingException(String.format(
                        Locale.ROOT,
                        "%s: page %s is of another size than page %s, so they do not lie in rows; correct the first-page or the"
                                + " rows of its tiles.",
                        file,
                        from + i + 1,
                        from + 1));
            }
            sheets.add(lay(pages.get(i), i % grid.columns(), i / grid.columns(), rows, size, overlap));
        }
        return sheets;
    }

    private Sheet lay(DrawnPage page, int column, int row, int rows, Box size, long overlap) {
        long x = column * (size.width() - overlap);
        long y = row * (size.height() - overlap);
        Box far = Clipping.EVERYWHERE;
        Box own = new Box(
                column == 0 ? far.minX() : x + overlap / 2,
                row == 0 ? far.minY() : y + overlap / 2,
                column == grid.columns() - 1 ? far.maxX() : x + size.width() - overlap + overlap / 2,
                row == rows - 1 ? far.maxY() : y + size.height() - overlap + overlap / 2);
        return new Sheet(page.moved(new Point(x, y)), own);
    }
}
