package lengthwise.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnText;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/** What a page shows, in micrometres, y down; the page's own box among it. */
record DrawnPage(Box box, List<DrawnShape> shapes, List<DrawnText> texts) {
    private static final long BETWEEN = 20_000;
    private static final long OVER = 1_000;
    private static final long FARTHEST = 1_000_000_000;

    /** Lays pages in rows, so that nothing drawn on one reaches another; a single page stays where it is. */
    static List<DrawnPage> apart(String file, List<DrawnPage> pages) throws DrawingException {
        if (pages.size() == 1) {
            return pages;
        }
        int columns = (int) Math.ceil(Math.sqrt(pages.size()));
        List<DrawnPage> laid = new ArrayList<>();
        long y = 0;
        for (int row = 0; row * columns < pages.size(); row++) {
            long x = 0;
            long tallest = 0;
            for (DrawnPage page : pages.subList(row * columns, Math.min((row + 1) * columns, pages.size()))) {
                Box room = page.room();
                laid.add(page.moved(new Point(x - room.minX(), y - room.minY())));
                x += room.width() + BETWEEN;
                tallest = Math.max(tallest, room.height());
                if (x > FARTHEST) {
                    throw tooFar(file);
                }
            }
            y += tallest + BETWEEN;
            if (y > FARTHEST) {
                throw tooFar(file);
            }
        }
        return laid;
    }

    private static DrawingException tooFar(String file) {
        return new DrawingException(
                file + ": what is drawn reaches more than a kilometre; move the pattern onto its pages.");
    }

    private Box room() {
        return shapes.stream().flatMap(shape -> room(shape).stream()).reduce(box, Box::union);
    }

    /** Returns the page without what lies beside it altogether, which no reader shows. */
    DrawnPage shown() {
        if (box.width() == 0 || box.height() == 0) {
            return this; // The file does not say how large its page is.
        }
        return new DrawnPage(
                box,
                shapes.stream()
                        .filter(shape ->
                                room(shape).filter(room -> meets(room, box)).isPresent())
                        .toList(),
                texts.stream().filter(text -> box.contains(text.middle())).toList());
    }

    /** Says whether something is drawn over the edge of the page. */
    boolean reachesOver() {
        Box wider = new Box(box.minX() - OVER, box.minY() - OVER, box.maxX() + OVER, box.maxY() + OVER);
        return shapes.stream()
                .filter(DrawnShape::visible)
                .flatMap(shape -> room(shape).stream())
                .anyMatch(room -> !wider.contains(room));
    }

    static Optional<Box> room(DrawnShape shape) {
        return Box.around(shape.chains().stream().flatMap(chain -> chain.points().stream()));
    }

    private static boolean meets(Box one, Box other) {
        return one.minX() <= other.maxX()
                && one.maxX() >= other.minX()
                && one.minY() <= other.maxY()
                && one.maxY() >= other.minY();
    }

    DrawnPage moved(Point by) {
        return new DrawnPage(
                box.moved(by),
                shapes.stream().map(shape -> moved(shape, by)).toList(),
                texts.stream()
                        .map(text -> new DrawnText(
                                text.words(),
                                text.middle().plus(by),
                                text.radians(),
                                text.names(),
                                text.groups(),
                                text.visible(),
                                text.place()))
                        .toList());
    }

    private static DrawnShape moved(DrawnShape shape, Point by) {
        List<Chain> chains = shape.chains().stream()
                .map(chain -> new Chain(
                        chain.points().stream().map(point -> point.plus(by)).toList(), chain.closed()))
                .toList();
        return shape.with(chains);
    }
}
