package lengthwise.dxf;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;
import lengthwise.dxf.Entity.Group;

/**
 * Draws the lines of one entity, seen from above. The transform to millimetres on the page acts before curves are
 * flattened.
 *
 * <p>An entity whose extrusion is (0, 0, −1) has its x mirrored where its coordinates are its own (arc, circle,
 * polyline); line, spline and ellipse are in those of the drawing.
 *
 * <p>Reference: Autodesk, <i>DXF Reference</i>, "ENTITIES Section" and "Object Coordinate Systems (OCS)".
 */
final class EntityPen {
    private static final int MOST_HALVINGS = 16;

    private final Pen pen;
    private final AffineTransform toPage;
    private final AffineTransform ownToPage;

    EntityPen(AffineTransform toPage, boolean mirrored, Pen.Budget budget) {
        this.pen = new Pen(budget);
        this.toPage = toPage;
        this.ownToPage = new AffineTransform(toPage);
        if (mirrored) {
            ownToPage.scale(-1, 1);
        }
    }

    List<Chain> chains() {
        return pen.chains();
    }

    void line(Entity line) throws DrawingException {
        move(toPage, line.number(10, 0), line.number(20, 0));
        straight(toPage, line.number(11, 0), line.number(21, 0));
    }

    /** A vertex, and the bulge of the line to the next: the tangent of a quarter of its angle, left if positive. */
    private record Vertex(double x, double y, double bulge) {}

    void lightPolyline(Entity polyline) throws DrawingException {
        List<Vertex> vertices = new ArrayList<>();
        for (Group group : polyline.groups()) {
            int last = vertices.size() - 1;
            if (group.code() == 10) {
                vertices.add(new Vertex(polyline.number(group), 0, 0));
            } else if (last >= 0 && group.code() == 20) {
                Vertex before = vertices.get(last);
                vertices.set(last, new Vertex(before.x, polyline.number(group), before.bulge));
            } else if (last >= 0 && group.code() == 42) {
                Vertex before = vertices.get(last);
                vertices.set(last, new Vertex(before.x, before.y, polyline.number(group)));
            }
        }
        polyline(vertices, (polyline.whole(70) & 1) != 0);
    }

    /** Draws a polyline of vertices that follow it; the frame of a spline is not drawn. */
    void polyline(Entity polyline, List<Entity> parts) throws DrawingException {
        List<Vertex> vertices = new ArrayList<>();
        for (Entity part : parts) {
            if ((part.whole(70) & 16) == 0) {
                vertices.add(new Vertex(part.number(10, 0), part.number(20, 0), part.number(42, 0)));
            }
        }
        polyline(vertices, (polyline.whole(70) & 1) != 0);
    }

    private void polyline(List<Vertex> vertices, boolean closed) throws DrawingException {
        for (int i = 0; i < vertices.size(); i++) {
            Vertex at = vertices.get(i);
            if (i == 0) {
                move(ownToPage, at.x, at.y);
            } else {
                to(vertices.get(i - 1), at);
            }
        }
        if (closed && vertices.size() > 1) {
            Vertex last = vertices.get(vertices.size() - 1);
            if (last.bulge != 0) {
                to(last, vertices.get(0));
            }
            pen.close();
        }
    }

    /**
     * Draws from one vertex to the next. With bulge b and chord c the centre lies c·(1 − b²)/(4b) to the left of the
     * chord's middle, and the arc turns by 4·arctan b.
     */
    private void to(Vertex from, Vertex to) throws DrawingException {
        double dx = to.x - from.x;
        double dy = to.y - from.y;
        double b = from.bulge;
        if (Math.abs(b) < 1e-12 || (dx == 0 && dy == 0)) {
            straight(ownToPage, to.x, to.y);
            return;
        }
        double off = (1 - b * b) / (4 * b);
        double centreX = (from.x + to.x) / 2 - off * dy;
        double centreY = (from.y + to.y) / 2 + off * dx;
        double radius = Math.hypot(from.x - centreX, from.y - centreY);
        double start = StrictMath.atan2(from.y - centreY, from.x - centreX);
        double turn = 4 * StrictMath.atan(b);
        arc(ownToPage, centreX, centreY, radius, 0, 0, radius, start, start + turn, to.x, to.y);
    }

    void circle(Entity circle) throws DrawingException {
        double radius = circle.number(40, 0);
        whole(ownToPage, circle.number(10, 0), circle.number(20, 0), radius, 0, 0, radius);
    }

    /** Draws an arc, which runs anticlockwise from its start to its end, in degrees. */
    void arc(Entity arc) throws DrawingException {
        double radius = arc.number(40, 0);
        double start = Math.toRadians(arc.number(50, 0));
        double end = onwards(start, Math.toRadians(arc.number(51, 360)));
        part(ownToPage, arc.number(10, 0), arc.number(20, 0), radius, 0, 0, radius, start, end);
    }

    /** Draws an ellipse, or a part of one: centre + major·cos t + minor·sin t. */
    void ellipse(Entity ellipse, boolean mirrored) throws DrawingException {
        double majorX = ellipse.number(11, 0);
        double majorY = ellipse.number(21, 0);
        double ratio = ellipse.number(40, 1) * (mirrored ? -1 : 1);
        double centreX = ellipse.number(10, 0);
        double centreY = ellipse.number(20, 0);
        double start = ellipse.number(41, 0);
        double end = ellipse.number(42, 2 * Math.PI);
        if (Math.abs(Math.abs(end - start) - 2 * Math.PI) < 1e-9) {
            whole(toPage, centreX, centreY, majorX, majorY, -majorY * ratio, majorX * ratio);
        } else {
            part(toPage, centreX, centreY, majorX, majorY, -majorY * ratio, majorX * ratio, start, onwards(start, end));
        }
    }

    private static double onwards(double start, double end) {
        double turn = (end - start) % (2 * Math.PI);
        return start + (turn <= 1e-12 ? turn + 2 * Math.PI : turn);
    }

    /** Draws a closed ellipse quarter by quarter, so that its extreme points are vertices. */
    private void whole(AffineTransform map, double cx, double cy, double ux, double uy, double vx, double vy)
            throws DrawingException {
        move(map, cx + ux, cy + uy);
        arc(map, cx, cy, ux, uy, vx, vy, 0, Math.PI / 2, cx + vx, cy + vy);
        arc(map, cx, cy, ux, uy, vx, vy, Math.PI / 2, Math.PI, cx - ux, cy - uy);
        arc(map, cx, cy, ux, uy, vx, vy, Math.PI, 1.5 * Math.PI, cx - vx, cy - vy);
        arc(map, cx, cy, ux, uy, vx, vy, 1.5 * Math.PI, 2 * Math.PI, cx + ux, cy + uy);
        pen.close();
    }

    private void part(
            AffineTransform map,
            double cx,
            double cy,
            double ux,
            double uy,
            double vx,
            double vy,
            double start,
            double end)
            throws DrawingException {
        move(
                map,
                cx + ux * StrictMath.cos(start) + vx * StrictMath.sin(start),
                cy + uy * StrictMath.cos(start) + vy * StrictMath.sin(start));
        arc(
                map,
                cx,
                cy,
                ux,
                uy,
                vx,
                vy,
                start,
                end,
                cx + ux * StrictMath.cos(end) + vx * StrictMath.sin(end),
                cy + uy * StrictMath.cos(end) + vy * StrictMath.sin(end));
    }

    private void arc(
            AffineTransform map,
            double cx,
            double cy,
            double ux,
            double uy,
            double vx,
            double vy,
            double start,
            double end,
            double toX,
            double toY)
            throws DrawingException {
        Point2D centre = map.transform(new Point2D.Double(cx, cy), null);
        Point2D u = map.deltaTransform(new Point2D.Double(ux, uy), null);
        Point2D v = map.deltaTransform(new Point2D.Double(vx, vy), null);
        Point2D to = map.transform(new Point2D.Double(toX, toY), null);
        pen.arcTo(
                centre.getX(), centre.getY(), u.getX(), u.getY(), v.getX(), v.getY(), start, end, to.getX(), to.getY());
    }

    /** Draws a spline by its control points; says whether it has any that make a curve. */
    boolean spline(Entity spline) throws DrawingException {
        int degree = spline.whole(71);
        double[] xs = spline.numbers(10);
        double[] ys = spline.numbers(20);
        double[] weights = spline.numbers(41);
        if (xs.length != ys.length || (weights.length != 0 && weights.length != xs.length)) {
            return false;
        }
        List<double[]> points = new ArrayList<>(xs.length);
        for (int i = 0; i < xs.length; i++) {
            Point2D at = toPage.transform(new Point2D.Double(xs[i], ys[i]), null);
            points.add(new double[] {at.getX(), at.getY(), weights.length == 0 ? 1 : weights[i]});
        }
        Optional<List<double[][]>> spans = BezierSpans.of(degree, spline.numbers(40), points);
        if (spans.isEmpty()) {
            return false;
        }
        double[] first = spans.get().get(0)[0];
        pen.moveTo(first[0] / first[2], first[1] / first[2]);
        for (double[][] span : spans.get()) {
            halve(span, 0);
        }
        return true;
    }

    /** Halves a rational Bézier curve until the hull of its control points, which holds it, is narrow enough. */
    private void halve(double[][] span, int depth) throws DrawingException {
        double[] last = span[span.length - 1];
        if (depth == MOST_HALVINGS || bend(span) <= Pen.CHORD_ERROR) {
            pen.lineTo(last[0] / last[2], last[1] / last[2]);
            return;
        }
        int n = span.length;
        double[][] left = new double[n][];
        double[][] right = new double[n][];
        double[][] level = new double[n][];
        for (int i = 0; i < n; i++) {
            level[i] = span[i].clone();
        }
        for (int r = 0; r < n; r++) {
            left[r] = level[0].clone();
            right[n - 1 - r] = level[n - 1 - r].clone();
            for (int i = 0; i < n - 1 - r; i++) {
                for (int d = 0; d < 3; d++) {
                    level[i][d] = (level[i][d] + level[i + 1][d]) / 2;
                }
            }
        }
        halve(left, depth + 1);
        halve(right, depth + 1);
    }

    private static double bend(double[][] span) {
        double[] first = span[0];
        double[] last = span[span.length - 1];
        double ax = first[0] / first[2];
        double ay = first[1] / first[2];
        double dx = last[0] / last[2] - ax;
        double dy = last[1] / last[2] - ay;
        double square = dx * dx + dy * dy;
        double most = 0;
        for (int i = 1; i < span.length - 1; i++) {
            double px = span[i][0] / span[i][2] - ax;
            double py = span[i][1] / span[i][2] - ay;
            double along = square == 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / square));
            most = Math.max(most, Math.hypot(px - along * dx, py - along * dy));
        }
        return most;
    }

    private void move(AffineTransform map, double x, double y) throws DrawingException {
        Point2D at = map.transform(new Point2D.Double(x, y), null);
        pen.moveTo(at.getX(), at.getY());
    }

    private void straight(AffineTransform map, double x, double y) throws DrawingException {
        Point2D at = map.transform(new Point2D.Double(x, y), null);
        pen.lineTo(at.getX(), at.getY());
    }
}
