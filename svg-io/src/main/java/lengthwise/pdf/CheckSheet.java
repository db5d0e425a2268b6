package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;
import lengthwise.drawing.Painted.Line;

/** What is measured before anything is cut: a square of 10 cm, one of 4 in (101.6 mm), and a ruler. */
final class CheckSheet {
    static final double METRIC = 100;
    static final double INCHES = 101.6;

    private static final double BETWEEN = 5;
    private static final double RULER = 20;

    /** Wide enough for both squares beside each other, with text beside them, or for a column of text (mm). */
    private static final double ROOM_FOR_WIDE = 262;

    private static final double NARROWEST = 40;
    private static final Line FINE = Line.of(Canvas.BLACK, 0.2);

    private CheckSheet() {}

    /**
     * Paints the first page: title, squares, ruler, and how to print and measure; returns the room that is left on it.
     *
     * @param more where the text goes on if it is too long for the page
     */
    static Extent paint(Canvas canvas, Extent area, String title, String subtitle, List<String> how, Flow.NextPage more)
            throws IOException {
        canvas.words(new Painted.Words(title, area.minX(), area.minY() + 6, 6.5, 0, Anchor.START, true, Canvas.BLACK));
        canvas.words(area.minX(), area.minY() + 12, 4, subtitle);
        ruler(canvas, area.minX(), area.maxY() - 1, area.width());
        double top = area.minY() + 16;
        double bottom = area.maxY() - RULER;
        boolean beside = area.width() > ROOM_FOR_WIDE || top + tall() > bottom;
        squares(canvas, area.minX(), top, beside);
        double right = area.minX() + (beside ? INCHES + METRIC + 2 * BETWEEN : INCHES + BETWEEN);
        double under = top + (beside ? INCHES : tall()) + 3;
        Extent below = new Extent(area.minX(), under, area.maxX(), bottom);
        List<Extent> rooms = new ArrayList<>();
        if (area.maxX() - right > NARROWEST) {
            rooms.add(new Extent(right, top - 1, area.maxX(), beside ? under : bottom));
        }
        rooms.add(below);
        Flow flow = new Flow(
                new Flow.Page(canvas, rooms.remove(0)),
                () -> rooms.isEmpty() ? more.open() : new Flow.Page(canvas, rooms.remove(0)));
        for (String paragraph : how) {
            flow.paragraph(paragraph);
        }
        double from = rooms.isEmpty() ? bottom - flow.left() + 5 : under + 5;
        return new Extent(area.minX(), Math.min(from, bottom), area.maxX(), bottom);
    }

    static double tall() {
        return INCHES + BETWEEN + METRIC;
    }

    static void squares(Canvas canvas, double x, double y, boolean beside) throws IOException {
        square(
                canvas,
                x,
                y,
                INCHES,
                "4 in",
                "This square measures 4 in each way.",
                "It is not 10 cm: 4 in are 101.6 mm.");
        square(
                canvas,
                beside ? x + INCHES + BETWEEN : x,
                beside ? y : y + INCHES + BETWEEN,
                METRIC,
                "10 cm",
                "This square measures 10 cm each way.",
                "It is not 4 in.");
    }

    /** The middle of the line is what measures, so that the ruler lies on it. */
    private static void square(Canvas canvas, double x, double y, double side, String name, String... lines)
            throws IOException {
        canvas.rectangle(x, y, side, side, FINE);
        canvas.words(new Painted.Words(name, x + 6, y + 15, 11, 0, Anchor.START, true, Canvas.BLACK));
        for (int i = 0; i < lines.length; i++) {
            canvas.words(x + 6, y + 22 + i * 5, 3.6, lines[i]);
        }
    }

    /** Paints a ruler along a line, as long as there is room: inches above the line, centimetres below. */
    private static void ruler(Canvas canvas, double x, double bottom, double room) throws IOException {
        double line = bottom - 8;
        int centimetres = (int) Math.floor(Math.min(room, 1000) / 10 + 1e-9);
        canvas.line(x, line, x + centimetres * 10, line, FINE);
        for (int i = 0; i <= centimetres * 10; i++) {
            double tick = i % 10 == 0 ? 4 : i % 5 == 0 ? 2.5 : 1.5;
            canvas.line(x + i, line, x + i, line + tick, FINE);
            if (i % 10 == 0 && i > 0) {
                canvas.words(new Painted.Words(
                        Integer.toString(i / 10), x + i, line + 7.2, 2.8, 0, Anchor.MIDDLE, false, Canvas.BLACK));
            }
        }
        canvas.words(x, line + 7.2, 2.8, "cm");
        int eighths = (int) Math.floor(centimetres * 10 / 25.4 * 8);
        for (int i = 0; i <= eighths; i++) {
            double at = x + i * 25.4 / 8;
            double tick = i % 8 == 0 ? 4 : i % 4 == 0 ? 2.8 : 1.5;
            canvas.line(at, line, at, line - tick, FINE);
            if (i % 8 == 0 && i > 0) {
                canvas.words(new Painted.Words(
                        Integer.toString(i / 8), at, line - 4.8, 2.8, 0, Anchor.MIDDLE, false, Canvas.BLACK));
            }
        }
        canvas.words(x, line - 4.8, 2.8, "in");
    }
}
