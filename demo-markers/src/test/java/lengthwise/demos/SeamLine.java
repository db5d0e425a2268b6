package lengthwise.demos;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import lengthwise.drawing.DrawnPiece;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/** The line a piece is sewn along, cut at its corners into seams. Lengths in millimetres. */
final class SeamLine {
    /** A turn sharper than this, in degrees, is a corner; the flattened curves of the demos turn by less. */
    private static final double CORNER = 15;

    private final Box box;
    private final List<Seam> seams;

    private SeamLine(Box box, List<Seam> seams) {
        this.box = box;
        this.seams = seams;
    }

    static SeamLine of(DrawnPiece piece) {
        List<Point> line = piece.sewLines().stream()
                .max(Comparator.comparingDouble(SeamLine::length))
                .orElseThrow(() -> new AssertionError(piece.name() + " has no sew line"));
        List<Point> points = new ArrayList<>(line);
        boolean closed = piece.foldEdge().isEmpty();
        if (closed && !points.get(0).equals(points.get(points.size() - 1))) {
            points.add(points.get(0));
        }
        return new SeamLine(piece.outline().box(), seams(points, closed));
    }

    private static List<Seam> seams(List<Point> line, boolean closed) {
        List<Seam> seams = new ArrayList<>();
        List<Point> current = new ArrayList<>(List.of(line.get(0)));
        for (int i = 1; i < line.size(); i++) {
            current.add(line.get(i));
            if (i + 1 < line.size() && turn(line.get(i - 1), line.get(i), line.get(i + 1)) > CORNER) {
                seams.add(new Seam(current));
                current = new ArrayList<>(List.of(line.get(i)));
            }
        }
        boolean startsAtCorner = !closed || turn(line.get(line.size() - 2), line.get(0), line.get(1)) > CORNER;
        if (startsAtCorner || seams.isEmpty()) {
            seams.add(new Seam(current));
        } else {
            current.addAll(
                    seams.get(0).points().subList(1, seams.get(0).points().size()));
            seams.set(0, new Seam(current));
        }
        return seams;
    }

    private static double turn(Point before, Point at, Point after) {
        Point in = at.minus(before);
        Point out = after.minus(at);
        return Math.toDegrees(Math.abs(Math.atan2((double) in.cross(out), (double) in.dot(out))));
    }

    private static double length(List<Point> line) {
        double length = 0;
        for (int i = 1; i < line.size(); i++) {
            length += line.get(i - 1).distance(line.get(i));
        }
        return length / 1000;
    }

    List<Seam> seams() {
        return seams;
    }

    double length() {
        return seams.stream().mapToDouble(Seam::length).sum();
    }

    /** Returns the seam whose middle is nearest to a place in the piece's box: 0, 0 is its upper left corner, 1, 1 its lower right. */
    Seam near(double across, double down) {
        Point place =
                new Point(box.minX() + Math.round(across * box.width()), box.minY() + Math.round(down * box.height()));
        return seams.stream()
                .min(Comparator.comparingDouble(seam -> seam.middle().distance(place)))
                .orElseThrow();
    }

    /** A seam from corner to corner. */
    record Seam(List<Point> points) {
        Seam {
            points = List.copyOf(points);
        }

        double length() {
            return SeamLine.length(points);
        }

        Point middle() {
            double rest = length() * 500;
            for (int i = 1; i < points.size(); i++) {
                double step = points.get(i - 1).distance(points.get(i));
                if (step >= rest) {
                    return between(points.get(i - 1), points.get(i), step == 0 ? 0 : rest / step);
                }
                rest -= step;
            }
            return points.get(points.size() - 1);
        }

        /** Returns how far along the seam, from its first point, the place nearest to a point lies. */
        double along(Point near) {
            return nearest(near).along();
        }

        /** Returns how far from the seam a point lies. */
        double distance(Point from) {
            return nearest(from).distance();
        }

        private Place nearest(Point near) {
            Place best = new Place(0, Double.MAX_VALUE);
            double passed = 0;
            for (int i = 1; i < points.size(); i++) {
                Point from = points.get(i - 1);
                Point edge = points.get(i).minus(from);
                double step = from.distance(points.get(i));
                double share =
                        step == 0 ? 0 : Math.max(0, Math.min(1, near.minus(from).dot(edge) / (step * step)));
                double distance = near.distance(between(from, points.get(i), share)) / 1000;
                if (distance < best.distance()) {
                    best = new Place((passed + share * step) / 1000, distance);
                }
                passed += step;
            }
            return best;
        }

        private record Place(double along, double distance) {}

        /** Returns this seam from left to right. */
        Seam rightwards() {
            if (points.get(0).x() <= points.get(points.size() - 1).x()) {
                return this;
            }
            List<Point> turned = new ArrayList<>(points);
            Collections.reverse(turned);
            return new Seam(turned);
        }

        /** Returns this seam from top to bottom. */
        Seam downwards() {
            if (points.get(0).y() <= points.get(points.size() - 1).y()) {
                return this;
            }
            List<Point> turned = new ArrayList<>(points);
            Collections.reverse(turned);
            return new Seam(turned);
        }

        private static Point between(Point a, Point b, double share) {
            return new Point(Math.round(a.x() + share * (b.x() - a.x())), Math.round(a.y() + share * (b.y() - a.y())));
        }
    }
}
