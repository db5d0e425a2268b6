package lengthwise.drawing;

import java.util.ArrayList;
import java.util.List;
import lengthwise.geometry.Point;

/**
 * Draws lines and curves and keeps them as chains of grid points. Coordinates are millimetres on the page, in double
 * precision; each point is rounded to the nearest micrometre once.
 *
 * <p>Flattening guarantee: no point of a curve lies farther than {@value #CHORD_ERROR} mm from its chord. A cubic lies
 * within 3/4 of the distance of its farther control point from the chord; it is halved (de Casteljau) until that
 * suffices. An arc of an ellipse with half axes a ≥ b deviates at most a·(1 − cos(δ/2)) at a step of δ.
 *
 * <p>Reference: G. Farin, <i>Curves and Surfaces for CAGD</i>, 5th ed., Morgan Kaufmann 2002, chapters 4 and 5.
 */
public final class Pen {
    /** Greatest distance of a curve from its chord, in millimetres. */
    public static final double CHORD_ERROR = 0.005;

    /** Coordinates stay below this (mm), so that a cross product of grid points fits a long. */
    private static final double FARTHEST = 1_000_000;

    private static final int MOST_HALVINGS = 14;

    private final Budget budget;
    private final List<Chain> chains = new ArrayList<>();
    private List<Point> points = new ArrayList<>();
    private double x;
    private double y;

    public Pen(Budget budget) {
        this.budget = budget;
    }

    /** How many points a whole drawing may have; shared between its pens. */
    public static final class Budget {
        private final String file;
        private int left;

        public Budget(String file, int points) {
            this.file = file;
            left = points;
        }

        private void take() throws DrawingException {
            if (--left < 0) {
                throw new DrawingException(file + ": the drawing has too many points to be a pattern; "
                        + "remove pictures and textures from it and try again.");
            }
        }
    }

    public void moveTo(double toX, double toY) throws DrawingException {
        lift(false);
        add(toX, toY);
    }

    public void lineTo(double toX, double toY) throws DrawingException {
        add(toX, toY);
    }

    public void quadTo(double x1, double y1, double toX, double toY) throws DrawingException {
        cubicTo(
                x + (x1 - x) * 2 / 3,
                y + (y1 - y) * 2 / 3,
                toX + (x1 - toX) * 2 / 3,
                toY + (y1 - toY) * 2 / 3,
                toX,
                toY);
    }

    public void cubicTo(double x1, double y1, double x2, double y2, double toX, double toY) throws DrawingException {
        checkNear(x1, y1);
        checkNear(x2, y2);
        checkNear(toX, toY);
        halve(x, y, x1, y1, x2, y2, toX, toY, 0);
    }

    /** Draws the points centre + u·cos t + v·sin t for t from {@code from} to {@code to}, beginning where the pen is. */
    public void arcTo(
            double centreX,
            double centreY,
            double ux,
            double uy,
            double vx,
            double vy,
            double from,
            double to,
            double toX,
            double toY)
            throws DrawingException {
        double radius = Math.hypot(Math.hypot(ux, uy), Math.hypot(vx, vy));
        checkNear(centreX, centreY);
        checkNear(radius, radius);
        double step = radius <= CHORD_ERROR ? Math.PI / 2 : 2 * StrictMath.acos(1 - CHORD_ERROR / radius);
        int steps = (int) Math.max(1, Math.ceil(Math.abs(to - from) / Math.min(step, Math.PI / 2)));
        for (int i = 1; i < steps; i++) {
            double t = from + (to - from) * i / steps;
            double cos = StrictMath.cos(t);
            double sin = StrictMath.sin(t);
            add(centreX + ux * cos + vx * sin, centreY + uy * cos + vy * sin);
        }
        add(toX, toY);
    }

    /** Joins the chain to its start. */
    public void close() {
        lift(true);
    }

    /** Returns everything drawn. */
    public List<Chain> chains() {
        lift(false);
        return List.copyOf(chains);
    }

    private void lift(boolean closed) {
        if (!points.isEmpty()) {
            chains.add(new Chain(points, closed));
            points = new ArrayList<>();
        }
    }

    private void halve(
            double x0, double y0, double x1, double y1, double x2, double y2, double x3, double y3, int depth)
            throws DrawingException {
        double bend = 0.75 * Math.max(offChord(x1, y1, x0, y0, x3, y3), offChord(x2, y2, x0, y0, x3, y3));
        if (bend <= CHORD_ERROR || depth == MOST_HALVINGS) {
            add(x3, y3);
            return;
        }
        double ax = (x0 + x1) / 2;
        double ay = (y0 + y1) / 2;
        double bx = (x1 + x2) / 2;
        double by = (y1 + y2) / 2;
        double cx = (x2 + x3) / 2;
        double cy = (y2 + y3) / 2;
        double abx = (ax + bx) / 2;
        double aby = (ay + by) / 2;
        double bcx = (bx + cx) / 2;
        double bcy = (by + cy) / 2;
        double middleX = (abx + bcx) / 2;
        double middleY = (aby + bcy) / 2;
        halve(x0, y0, ax, ay, abx, aby, middleX, middleY, depth + 1);
        halve(middleX, middleY, bcx, bcy, cx, cy, x3, y3, depth + 1);
    }

    /** Returns the distance of a point from the line between two others, ends included. */
    private static double offChord(double px, double py, double ax, double ay, double bx, double by) {
        double dx = bx - ax;
        double dy = by - ay;
        double square = dx * dx + dy * dy;
        double along = square == 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / square;
        double inside = Math.max(0, Math.min(1, along));
        return Math.hypot(px - ax - inside * dx, py - ay - inside * dy);
    }

    private void add(double toX, double toY) throws DrawingException {
        checkNear(toX, toY);
        budget.take();
        x = toX;
        y = toY;
        points.add(new Point(StrictMath.round(toX * 1000), StrictMath.round(toY * 1000)));
    }

    private void checkNear(double atX, double atY) throws DrawingException {
        if (!(Math.abs(atX) <= FARTHEST && Math.abs(atY) <= FARTHEST)) {
            throw new TooFarException(atX, atY);
        }
    }

    /** A shape that leaves the range of the grid. */
    public static final class TooFarException extends DrawingException {
        private static final long serialVersionUID = 1;

        private TooFarException(double x, double y) {
            super("it reaches to %.3g, %.3g mm, more than a kilometre from the page".formatted(x, y));
        }
    }
}
