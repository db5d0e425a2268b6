package lengthwise.job;

import java.util.function.UnaryOperator;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Segment;

/** A direction on the page; its length does not matter. */
record Vector(long x, long y) {
    /** y runs down the page. */
    static final Vector UP_THE_PAGE = new Vector(0, -1);

    /** Returns the turn from this direction to another, from −180 to 180, positive from +x to +y. */
    double degreesTo(Vector other) {
        double cross = (double) x * other.y - (double) y * other.x;
        double dot = (double) x * other.x + (double) y * other.y;
        return StrictMath.toDegrees(StrictMath.atan2(cross, dot));
    }

    Vector quarterTurned(int quarters) {
        Point turned = QuarterTurn.of(quarters).apply(new Point(x, y));
        return new Vector(turned.x(), turned.y());
    }

    /** Returns the direction 45° from this one that goes to +x when this one goes half way from +x to +y. */
    Vector onBias() {
        return new Vector(x + y, y - x);
    }

    /** Returns the turn of the plane that takes this direction to +x; exact where it lies along an axis. */
    UnaryOperator<Point> toX() {
        for (int quarters = 0; quarters < 4; quarters++) {
            Vector turned = quarterTurned(quarters);
            if (turned.y == 0 && turned.x > 0) {
                QuarterTurn turn = QuarterTurn.of(quarters);
                return turn::apply;
            }
        }
        double length = StrictMath.hypot((double) x, (double) y);
        double cos = x / length;
        double sin = y / length;
        return point -> new Point(
                StrictMath.round(point.x() * cos + point.y() * sin),
                StrictMath.round(point.y() * cos - point.x() * sin));
    }

    /** Returns a line in this direction through the middle of a box, about two thirds of its extent. */
    Segment through(Box box) {
        double length = StrictMath.hypot((double) x, (double) y);
        double reach = (Math.abs(x) * (double) box.width() + Math.abs(y) * (double) box.height()) / length / 3;
        Point middle = new Point((box.minX() + box.maxX()) / 2, (box.minY() + box.maxY()) / 2);
        Point half = new Point(StrictMath.round(x / length * reach), StrictMath.round(y / length * reach));
        return new Segment(middle.minus(half), middle.plus(half));
    }
}
