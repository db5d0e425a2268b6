package lengthwise.svg;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Segment;

/**
 * Where a block of text fits best inside an outline: the centre of the block, and the size of one of its units.
 *
 * <p>The largest upright rectangle of a given shape inside a polygon. Both axes are scaled so that the rectangle becomes
 * a square; its centre is then the point farthest from the boundary, and from what the text should keep clear of, in
 * the maximum metric. That point is found by halving cells, most promising first, until none can hold a place better by
 * more than 2 %: the method for poles of inaccessibility, with another metric.
 *
 * @param x in micrometres
 * @param y in micrometres
 * @param unit length of one unit of the block, in micrometres; zero or less where nothing fits
 */
record LabelSpot(double x, double y, double unit) {
    private static final double PRECISION = 0.02;
    private static final int MOST_CELLS = 2000;

    /**
     * Finds the best place.
     *
     * @param blockWidth of the text, in units of any size
     * @param blockHeight likewise
     * @param clearOf lines that the text should not cross
     * @param keepOut where the text should not be
     */
    static LabelSpot in(
            Outline outline, List<Segment> clearOf, List<Box> keepOut, double blockWidth, double blockHeight) {
        return new Finder(outline, clearOf, keepOut, blockWidth, blockHeight).find();
    }

    /** Coordinates in here are scaled: micrometres along x per half block width, along y per half block height. */
    private static final class Finder {
        private final double scaleX;
        private final double scaleY;
        private final Box box;
        private final double[][] boundary;
        private final double[][] all;
        private final double[][] keepOut;

        Finder(Outline outline, List<Segment> clearOf, List<Box> keepOut, double blockWidth, double blockHeight) {
            scaleX = 2 / blockWidth;
            scaleY = 2 / blockHeight;
            box = outline.box();
            List<double[]> lines = new ArrayList<>();
            addRing(lines, outline.shell());
            outline.holes().forEach(hole -> addRing(lines, hole));
            boundary = lines.toArray(double[][]::new);
            clearOf.forEach(line -> lines.add(scaled(line.from(), line.to())));
            all = lines.toArray(double[][]::new);
            this.keepOut = keepOut.stream()
                    .map(kept -> scaled(new Point(kept.minX(), kept.minY()), new Point(kept.maxX(), kept.maxY())))
                    .toArray(double[][]::new);
        }

        private void addRing(List<double[]> lines, Ring ring) {
            for (int i = 0; i < ring.size(); i++) {
                lines.add(scaled(ring.vertex(i), ring.vertex(i).plus(ring.edge(i))));
            }
        }

        private double[] scaled(Point from, Point to) {
            return new double[] {from.x() * scaleX, from.y() * scaleY, to.x() * scaleX, to.y() * scaleY};
        }

        private record Cell(double x, double y, double half, double room) {
            /** No point of the cell has more room than this. */
            double bound() {
                return room + half;
            }
        }

        LabelSpot find() {
            double minX = box.minX() * scaleX;
            double minY = box.minY() * scaleY;
            double width = box.width() * scaleX;
            double height = box.height() * scaleY;
            double half = Math.min(width, height) / 2;
            PriorityQueue<Cell> queue =
                    new PriorityQueue<>(Comparator.comparingDouble(Cell::bound).reversed());
            int columns = (int) Math.min(64, Math.ceil(width / (2 * half)));
            int rows = (int) Math.min(64, Math.ceil(height / (2 * half)));
            half = Math.max(width / columns, height / rows) / 2;
            Cell best = cell(minX + width / 2, minY + height / 2, 0);
            for (int row = 0; row < rows; row++) {
                for (int column = 0; column < columns; column++) {
                    queue.add(cell(minX + (2 * column + 1) * half, minY + (2 * row + 1) * half, half));
                }
            }
            for (int cells = 0; cells < MOST_CELLS && !queue.isEmpty(); cells++) {
                Cell cell = queue.remove();
                if (cell.room > best.room) {
                    best = cell;
                }
                if (cell.bound() <= best.room + PRECISION * Math.abs(best.room)) {
                    break;
                }
                double quarter = cell.half / 2;
                for (int i = 0; i < 4; i++) {
                    queue.add(cell(
                            cell.x + (i % 2 == 0 ? -quarter : quarter),
                            cell.y + (i < 2 ? -quarter : quarter),
                            quarter));
                }
            }
            return new LabelSpot(best.x / scaleX, best.y / scaleY, best.room);
        }

        private Cell cell(double x, double y, double half) {
            double distance = Double.MAX_VALUE;
            for (double[] line : all) {
                distance = Math.min(distance, distance(line, x, y));
            }
            double room = isInside(x, y) ? distance : -distance;
            for (double[] kept : keepOut) {
                room = Math.min(room, outside(kept, x, y));
            }
            return new Cell(x, y, half, room);
        }

        /** How far a point is from a box; negative inside it. */
        private static double outside(double[] kept, double x, double y) {
            return Math.max(Math.max(kept[0] - x, x - kept[2]), Math.max(kept[1] - y, y - kept[3]));
        }

        private boolean isInside(double x, double y) {
            boolean inside = false;
            for (double[] line : boundary) {
                if ((line[1] > y) != (line[3] > y)
                        && x < line[0] + (y - line[1]) / (line[3] - line[1]) * (line[2] - line[0])) {
                    inside = !inside;
                }
            }
            return inside;
        }

        /** The distance is convex and piecewise linear along the line: least at an end or at a kink. */
        private static double distance(double[] line, double x, double y) {
            double fromX = line[0] - x;
            double fromY = line[1] - y;
            double dx = line[2] - line[0];
            double dy = line[3] - line[1];
            double least = Math.min(at(0, fromX, fromY, dx, dy), at(1, fromX, fromY, dx, dy));
            least = Math.min(least, at(-fromX / dx, fromX, fromY, dx, dy));
            least = Math.min(least, at(-fromY / dy, fromX, fromY, dx, dy));
            least = Math.min(least, at((fromY - fromX) / (dx - dy), fromX, fromY, dx, dy));
            return Math.min(least, at((-fromX - fromY) / (dx + dy), fromX, fromY, dx, dy));
        }

        private static double at(double t, double fromX, double fromY, double dx, double dy) {
            if (!(t >= 0 && t <= 1)) {
                return Double.MAX_VALUE;
            }
            return Math.max(Math.abs(fromX + t * dx), Math.abs(fromY + t * dy));
        }
    }
}
