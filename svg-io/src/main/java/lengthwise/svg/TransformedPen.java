package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;

/** Draws in user units; the transform to millimetres on the page acts before curves are flattened. */
final class TransformedPen {
    private final AffineTransform toPage;
    private final Pen pen;

    TransformedPen(AffineTransform toPage, Pen.Budget budget) {
        this.toPage = toPage;
        pen = new Pen(budget);
    }

    List<Chain> chains() {
        return pen.chains();
    }

    void moveTo(double x, double y) throws DrawingException {
        Point2D to = onPage(x, y);
        pen.moveTo(to.getX(), to.getY());
    }

    void lineTo(double x, double y) throws DrawingException {
        Point2D to = onPage(x, y);
        pen.lineTo(to.getX(), to.getY());
    }

    void cubicTo(double x1, double y1, double x2, double y2, double x, double y) throws DrawingException {
        Point2D first = onPage(x1, y1);
        Point2D second = onPage(x2, y2);
        Point2D to = onPage(x, y);
        pen.cubicTo(first.getX(), first.getY(), second.getX(), second.getY(), to.getX(), to.getY());
    }

    void quadTo(double x1, double y1, double x, double y) throws DrawingException {
        Point2D control = onPage(x1, y1);
        Point2D to = onPage(x, y);
        pen.quadTo(control.getX(), control.getY(), to.getX(), to.getY());
    }

    void close() {
        pen.close();
    }

    /** Draws a whole ellipse, quarter by quarter, so that its extreme points are vertices. */
    void ellipse(double cx, double cy, double rx, double ry) throws DrawingException {
        moveTo(cx + rx, cy);
        quarter(cx, cy, rx, ry, 0, cx, cy + ry);
        quarter(cx, cy, rx, ry, 1, cx - rx, cy);
        quarter(cx, cy, rx, ry, 2, cx, cy - ry);
        quarter(cx, cy, rx, ry, 3, cx + rx, cy);
        close();
    }

    /** Draws a quarter of an ellipse with upright axes, from the given multiple of a quarter turn on. */
    void quarter(double cx, double cy, double rx, double ry, int quarter, double x, double y) throws DrawingException {
        arc(cx, cy, rx, ry, 0, quarter * Math.PI / 2, (quarter + 1) * Math.PI / 2, x, y);
    }

    /**
     * Draws an elliptical arc to a point, from wherever the pen is.
     *
     * <p>Reference: W3C, <i>Scalable Vector Graphics 1.1</i>, appendix F.6: from end points to the centre; radii that
     * are too small are scaled up, radii of zero give a straight line.
     */
    void arcTo(
            double fromX,
            double fromY,
            double radiusX,
            double radiusY,
            double degrees,
            boolean large,
            boolean sweep,
            double x,
            double y)
            throws DrawingException {
        double rx = Math.abs(radiusX);
        double ry = Math.abs(radiusY);
        if (fromX == x && fromY == y) {
            return;
        }
        if (rx == 0 || ry == 0) {
            lineTo(x, y);
            return;
        }
        double phi = Math.toRadians(degrees % 360);
        double cos = StrictMath.cos(phi);
        double sin = StrictMath.sin(phi);
        double halfX = (fromX - x) / 2;
        double halfY = (fromY - y) / 2;
        double px = cos * halfX + sin * halfY;
        double py = -sin * halfX + cos * halfY;
        double excess = px * px / (rx * rx) + py * py / (ry * ry);
        if (excess > 1) {
            rx *= Math.sqrt(excess);
            ry *= Math.sqrt(excess);
        }
        double normal = rx * rx * py * py + ry * ry * px * px;
        double root = Math.sqrt(Math.max(0, (rx * rx * ry * ry - normal) / normal)) * (large == sweep ? -1 : 1);
        double centreX = root * rx * py / ry;
        double centreY = -root * ry * px / rx;
        double start = StrictMath.atan2((py - centreY) / ry, (px - centreX) / rx);
        double turn = StrictMath.atan2((-py - centreY) / ry, (-px - centreX) / rx) - start;
        if (sweep && turn < 0) {
            turn += 2 * Math.PI;
        } else if (!sweep && turn > 0) {
            turn -= 2 * Math.PI;
        }
        arc(
                cos * centreX - sin * centreY + (fromX + x) / 2,
                sin * centreX + cos * centreY + (fromY + y) / 2,
                rx,
                ry,
                phi,
                start,
                start + turn,
                x,
                y);
    }

    private void arc(double cx, double cy, double rx, double ry, double phi, double from, double to, double x, double y)
            throws DrawingException {
        double cos = phi == 0 ? 1 : StrictMath.cos(phi);
        double sin = phi == 0 ? 0 : StrictMath.sin(phi);
        Point2D centre = onPage(cx, cy);
        Point2D u = direction(rx * cos, rx * sin);
        Point2D v = direction(-ry * sin, ry * cos);
        Point2D end = onPage(x, y);
        pen.arcTo(
                centre.getX(), centre.getY(), u.getX(), u.getY(), v.getX(), v.getY(), from, to, end.getX(), end.getY());
    }

    private Point2D onPage(double x, double y) {
        return toPage.transform(new Point2D.Double(x, y), null);
    }

    private Point2D direction(double x, double y) {
        return toPage.deltaTransform(new Point2D.Double(x, y), null);
    }
}
