package lengthwise.pdf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.DrawnText;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import lengthwise.geometry.Point;
import lengthwise.pdf.Letters.Letter;

/**
 * Sets the strings of a page and reads the lines that they make: what goes on along the same line, no farther away than a
 * wide blank, belongs to it.
 */
final class LetteringPen {
    private static final int MOST_LETTERS = 300_000;
    private static final int LONGEST = 10_000;

    /** Gaps in letter heights: from here on it is a blank, and from here on another line. */
    private static final double BLANK = 0.15;

    private static final double APART = 1.6;
    private static final double OFF_LINE = 0.25;

    private final String place;
    private final List<DrawnText> lines = new ArrayList<>();
    private Optional<Line> line = Optional.empty();
    private int letters;
    private int unread;

    LetteringPen(String place) {
        this.place = place;
    }

    /** A line in the making, in millimetres on the page. */
    private static final class Line {
        private final StringBuilder words = new StringBuilder();
        private final Point2D start;
        private Point2D end;
        private final double height;
        private final double radians;
        private final boolean visible;
        private final List<Group> groups;

        Line(Point2D start, double height, double radians, boolean visible, List<Group> groups) {
            this.start = start;
            this.end = start;
            this.height = height;
            this.radians = radians;
            this.visible = visible;
            this.groups = groups;
        }
    }

    /**
     * Adds one letter.
     *
     * @param toPage from the letter's own frame, in which the size is 1 and the baseline runs along x
     */
    void letter(Letter letter, AffineTransform toPage, boolean visible, List<Group> groups) {
        if (++letters > MOST_LETTERS) {
            return;
        }
        if (letter.shown().isEmpty()) {
            unread++;
            return;
        }
        Point2D from = toPage.transform(new Point2D.Double(0, 0), null);
        Point2D to = toPage.transform(new Point2D.Double(letter.width(), 0), null);
        Point2D along = toPage.deltaTransform(new Point2D.Double(1, 0), null);
        Point2D up = toPage.deltaTransform(new Point2D.Double(0, 1), null);
        double height = Math.hypot(up.getX(), up.getY());
        if (!(Math.abs(from.getX()) < 1e6
                && Math.abs(from.getY()) < 1e6
                && Math.abs(to.getX()) < 1e6
                && Math.abs(to.getY()) < 1e6
                && height > 1e-3)) {
            return;
        }
        double radians = StrictMath.atan2(along.getY(), along.getX());
        if (line.isEmpty() || !goesOn(line.get(), from, height, radians, visible, groups)) {
            finish();
            line = Optional.of(new Line(from, height, radians, visible, groups));
        }
        Line current = line.get();
        if (current.end.distance(from) > BLANK * height) {
            current.words.append(' ');
        }
        current.words.append(letter.shown().get());
        current.end = to;
    }

    private static boolean goesOn(
            Line line, Point2D from, double height, double radians, boolean visible, List<Group> groups) {
        double dx = from.getX() - line.end.getX();
        double dy = from.getY() - line.end.getY();
        double cos = StrictMath.cos(line.radians);
        double sin = StrictMath.sin(line.radians);
        double forward = dx * cos + dy * sin;
        double aside = dy * cos - dx * sin;
        return Math.abs(radians - line.radians) < 0.02
                && Math.abs(height - line.height) < 0.5 * line.height
                && forward > -0.5 * line.height
                && forward < APART * line.height
                && Math.abs(aside) < OFF_LINE * line.height
                && visible == line.visible
                && groups.equals(line.groups)
                && line.words.length() < LONGEST;
    }

    private void finish() {
        if (line.isEmpty()) {
            return;
        }
        Line done = line.get();
        line = Optional.empty();
        String words = done.words.toString().strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
        if (words.isEmpty()) {
            return;
        }
        double cos = StrictMath.cos(done.radians);
        double sin = StrictMath.sin(done.radians);
        double x = (done.start.getX() + done.end.getX()) / 2 + sin * done.height / 3;
        double y = (done.start.getY() + done.end.getY()) / 2 - cos * done.height / 3;
        lines.add(new DrawnText(
                words,
                new Point(StrictMath.round(x * 1000), StrictMath.round(y * 1000)),
                done.radians,
                Names.NONE,
                done.groups,
                done.visible,
                place));
    }

    /** Returns all lines. */
    List<DrawnText> lines() {
        finish();
        return lines;
    }

    /** Returns how many letters the document does not say the meaning of. */
    int unread() {
        return unread;
    }
}
