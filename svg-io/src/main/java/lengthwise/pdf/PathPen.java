package lengthwise.pdf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;

/** Draws the path under construction in the units of the content, onto the page in millimetres. */
final class PathPen {
    private final Pen.Budget budget;
    private Pen pen;
    private Optional<String> tooFar = Optional.empty();
    private double startX;
    private double startY;
    private double x;
    private double y;
    private boolean begun;
    private boolean closed;

    PathPen(Pen.Budget budget) {
        this.budget = budget;
        this.pen = new Pen(budget);
    }

    /** What was drawn until the path was painted. */
    record Path(List<Chain> chains, Optional<String> tooFar) {}

    void moveTo(AffineTransform toPage, double toX, double toY) throws DrawingException {
        startX = toX;
        startY = toY;
        x = toX;
        y = toY;
        begun = true;
        closed = false;
        Point2D to = toPage.transform(new Point2D.Double(toX, toY), null);
        draw(p -> p.moveTo(to.getX(), to.getY()));
    }

    void lineTo(AffineTransform toPage, double toX, double toY) throws DrawingException {
        goOn(toPage, toX, toY);
        Point2D to = toPage.transform(new Point2D.Double(toX, toY), null);
        x = toX;
        y = toY;
        draw(p -> p.lineTo(to.getX(), to.getY()));
    }

    void curveTo(AffineTransform toPage, double x1, double y1, double x2, double y2, double toX, double toY)
            throws DrawingException {
        goOn(toPage, x1, y1);
        Point2D first = toPage.transform(new Point2D.Double(x1, y1), null);
        Point2D second = toPage.transform(new Point2D.Double(x2, y2), null);
        Point2D to = toPage.transform(new Point2D.Double(toX, toY), null);
        x = toX;
        y = toY;
        draw(p -> p.cubicTo(first.getX(), first.getY(), second.getX(), second.getY(), to.getX(), to.getY()));
    }

    void rectangle(AffineTransform toPage, double left, double low, double width, double height)
            throws DrawingException {
        moveTo(toPage, left, low);
        lineTo(toPage, left + width, low);
        lineTo(toPage, left + width, low + height);
        lineTo(toPage, left, low + height);
        close();
    }

    void close() {
        if (begun && !closed) {
            pen.close();
            closed = true;
            x = startX;
            y = startY;
        }
    }

    double x() {
        return x;
    }

    double y() {
        return y;
    }

    /** After a part is closed, or where no point was said, the next part begins where the pen is. */
    private void goOn(AffineTransform toPage, double toX, double toY) throws DrawingException {
        if (!begun) {
            moveTo(toPage, toX, toY);
        } else if (closed) {
            moveTo(toPage, startX, startY);
        }
    }

    private interface Stroke {
        void draw(Pen pen) throws DrawingException;
    }

    private void draw(Stroke stroke) throws DrawingException {
        if (tooFar.isEmpty()) {
            try {
                stroke.draw(pen);
            } catch (Pen.TooFarException e) {
                tooFar = Optional.of(String.valueOf(e.getMessage()));
            }
        }
    }

    /** Returns the path and begins a new one. */
    Path lift() {
        Path path = new Path(pen.chains(), tooFar);
        pen = new Pen(budget);
        tooFar = Optional.empty();
        begun = false;
        closed = false;
        return path;
    }
}
