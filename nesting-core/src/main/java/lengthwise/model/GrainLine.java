package lengthwise.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/** The line on a laid piece that is measured from the selvedge: equal distances mean that it lies on grain. */
public final class GrainLine {
    /** Share of the chord that a grain line takes where none was drawn. */
    private static final double SHARE = 0.6;

    private GrainLine() {}

    /**
     * Returns the grain line of a laid piece in marker coordinates, from its tail to its head: the drawn one, else one
     * of our own along the fabric, well inside the piece. The line of a piece on the bias is no grain line.
     */
    public static Segment of(Placement placement) {
        Piece piece = placement.item().piece();
        if (piece.turning() == Piece.Turning.ON_BIAS) {
            return along(placement.outline(), /* strip= */ false);
        }
        Optional<Segment> drawn = piece.marks().grainLine();
        return drawn.map(line -> new Segment(
                        placement.pose().apply(line.from()), placement.pose().apply(line.to())))
                .orElseGet(() -> along(placement.outline(), piece.strip()));
    }

    /**
     * Returns the line from the middle of one end of a laid strip to the middle of the other, in marker coordinates;
     * empty for what is not a plain strip of four corners.
     */
    public static Optional<Segment> middleOfStrip(Placement placement) {
        Ring ring = placement.outline().shell();
        if (!placement.item().piece().strip() || ring.size() != 4) {
            return Optional.empty();
        }
        int end = ring.edge(0).distance(Point.ORIGIN) <= ring.edge(1).distance(Point.ORIGIN) ? 0 : 1;
        return Optional.of(new Segment(middleOfEdge(ring, end), middleOfEdge(ring, end + 2)));
    }

    private static Point middleOfEdge(Ring ring, int index) {
        Point from = ring.vertex(index);
        Point to = from.plus(ring.edge(index));
        return new Point((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
    }

    /** A strip keeps its middle free for its label: its line lies near one end. */
    private static Segment along(Outline outline, boolean strip) {
        Box box = outline.box();
        boolean across = box.height() > box.width();
        long y =
                strip && across ? box.maxY() - Math.min(box.height() / 4, box.width()) : middle(box.minY(), box.maxY());
        Segment chord = longestChord(outline, y);
        long from = chord.from().x();
        long length = chord.to().x() - from;
        if (strip && !across) {
            return new Segment(new Point(from + length - length / 4, y), new Point(from + length - length / 20, y));
        }
        long inset = Math.round(length * (1 - SHARE) / 2);
        return new Segment(new Point(from + inset, y), new Point(from + length - inset, y));
    }

    private static Segment longestChord(Outline outline, long y) {
        // Half a micrometre off the grid no vertex is met.
        double height = y + 0.5;
        List<Ring> rings = new ArrayList<>(outline.holes());
        rings.add(outline.shell());
        double[] crossings = rings.stream()
                .flatMapToDouble(ring -> IntStream.range(0, ring.size())
                        .filter(i -> (ring.y(i) > height) != (ring.y((i + 1) % ring.size()) > height))
                        .mapToDouble(i -> ring.x(i)
                                + (height - ring.y(i))
                                        * ring.edge(i).x()
                                        / (double) ring.edge(i).y()))
                .sorted()
                .toArray();
        return IntStream.range(0, crossings.length / 2)
                .mapToObj(i -> new Segment(
                        new Point(Math.round(crossings[2 * i]), y), new Point(Math.round(crossings[2 * i + 1]), y)))
                .max(Comparator.comparingDouble(Segment::length))
                .orElseGet(() -> new Segment(
                        new Point(outline.box().minX(), y),
                        new Point(outline.box().maxX(), y)));
    }

    private static long middle(long a, long b) {
        return a + (b - a) / 2;
    }
}
