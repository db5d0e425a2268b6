package lengthwise.dxf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.dxf.Entity.Group;
import lengthwise.geometry.Point;

/** Reads the words of a text entity, line by line, and about where they stand. */
final class Lettering {
    /** Mean advance of a letter and distance of lines, in letter heights: an estimate. */
    private static final double ADVANCE = 0.7;

    private static final double LEADING = 5.0 / 3;

    /** Longer texts are no lettering of a pattern and are cut short. */
    private static final int LONGEST = 10_000;

    private Lettering() {}

    /**
     * One line.
     *
     * @param middle in micrometres on the page
     * @param radians from +x towards +y, y down
     */
    record Line(String words, Point middle, double radians) {}

    /** Reads a TEXT or ATTRIB. */
    static List<Line> single(Entity text, AffineTransform toPage) throws DrawingException {
        String words = DxfText.plain(text.text(1));
        double height = text.number(40, 1);
        double width = words.length() * ADVANCE * height * text.number(41, 1);
        int across = text.whole(72);
        int up = text.whole(73);
        boolean second = (across != 0 || up != 0) && text.has(11);
        double x = text.number(second ? 11 : 10, 0);
        double y = text.number(second ? 21 : 20, 0);
        if (second && (across == 3 || across == 5)) {
            x = (x + text.number(10, 0)) / 2;
            y = (y + text.number(20, 0)) / 2;
        }
        double right = across == 0 ? width / 2 : across == 2 ? -width / 2 : 0;
        double above = across == 4 || up == 2 ? 0 : up == 3 ? -height / 2 : height / 2;
        double turn = Math.toRadians(text.number(50, 0));
        return words.isEmpty() ? List.of() : List.of(line(words, x, y, right, above, turn, toPage));
    }

    /** Reads an MTEXT: its pieces in their order, then its lines. */
    static List<Line> several(Entity text, AffineTransform toPage) throws DrawingException {
        StringBuilder value = new StringBuilder();
        for (Group group : text.groups()) {
            if ((group.code() == 3 || group.code() == 1) && value.length() < LONGEST) {
                value.append(group.value());
            }
        }
        List<String> words = DxfText.lines(value.toString());
        double height = text.number(40, 1);
        int attachment = Math.max(1, Math.min(9, text.whole(71))) - 1;
        double turn = text.has(11)
                ? StrictMath.atan2(text.number(21, 0), text.number(11, 1))
                : Math.toRadians(text.number(50, 0));
        double room = ((words.size() - 1) * LEADING + 1) * height;
        int row = attachment / 3;
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            double width = words.get(i).length() * ADVANCE * height;
            double right = (1 - attachment % 3) * width / 2;
            double above = row * room / 2 - height / 2 - i * LEADING * height;
            lines.add(line(words.get(i), text.number(10, 0), text.number(20, 0), right, above, turn, toPage));
        }
        return lines;
    }

    private static Line line(
            String words, double x, double y, double right, double above, double turn, AffineTransform toPage) {
        double cos = StrictMath.cos(turn);
        double sin = StrictMath.sin(turn);
        Point2D middle = toPage.transform(
                new Point2D.Double(x + right * cos - above * sin, y + right * sin + above * cos), null);
        Point2D along = toPage.deltaTransform(new Point2D.Double(cos, sin), null);
        return new Line(
                words,
                new Point(within(middle.getX()), within(middle.getY())),
                StrictMath.atan2(along.getY(), along.getX()));
    }

    /** Lettering far away is on no piece, wherever exactly it is. */
    private static long within(double millimetres) {
        return StrictMath.round(Math.max(-1e6, Math.min(1e6, millimetres)) * 1000);
    }
}
