package lengthwise.hpgl;

import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * One line of a pen, from where it is let down to where it is lifted.
 *
 * @param points two or more, in micrometres
 */
record Stroke(Pen pen, List<Point> points) {
    /** The pens, by what they draw. */
    enum Pen {
        CUT_LINES(1),
        MARKS(2),
        LETTERING(3);

        private final int number;

        Pen(int number) {
            this.number = number;
        }

        int number() {
            return number;
        }
    }

    Stroke {
        points = List.copyOf(points);
    }

    Box box() {
        return Box.around(points.stream()).orElseThrow();
    }

    /** Returns the stroke as seen from another corner. */
    Stroke movedBack(Point corner) {
        return new Stroke(pen, points.stream().map(point -> point.minus(corner)).toList());
    }
}
