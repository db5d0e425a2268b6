package lengthwise.drawing;

import java.util.List;
import lengthwise.geometry.Point;

/**
 * Points joined by straight lines, in micrometres on the page.
 *
 * @param closed whether the file joins the last point to the first, which is then not repeated
 */
public record Chain(List<Point> points, boolean closed) {
    public Chain {
        points = List.copyOf(points);
    }

    Point first() {
        return points.get(0);
    }

    Point last() {
        return points.get(points.size() - 1);
    }

    /** Returns the length along the chain as drawn, without the joining line of a closed one. */
    double length() {
        double sum = 0;
        for (int i = 1; i < points.size(); i++) {
            sum += points.get(i - 1).distance(points.get(i));
        }
        return sum;
    }
}
