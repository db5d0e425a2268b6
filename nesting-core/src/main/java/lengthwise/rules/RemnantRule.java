package lengthwise.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.OnHand;

/**
 * The outside of a remnant is an obstacle. What is beyond its farther end is not: there a marker may go on as if on more
 * cloth of the full width, which shows how much is short.
 *
 * <p>The outside is cut in two at the outline's first and last vertex along the cloth, where level lines leave it without
 * meeting it again; so no vertex is made that is not on the grid.
 */
final class RemnantRule {
    /** How far the obstacle reaches beyond the strip and the remnant, in µm; any length will do. */
    private static final long MARGIN = 1_000;

    private RemnantRule() {}

    static List<Obstacle> outside(Fabric fabric) {
        return fabric.onHand()
                .flatMap(OnHand::outline)
                .map(outline -> outside(outline.shell(), frame(outline.box(), fabric)))
                .orElse(List.of());
    }

    private static Box frame(Box remnant, Fabric fabric) {
        return new Box(
                Math.min(0, remnant.minX()) - MARGIN,
                Math.min(0, remnant.minY()) - MARGIN,
                remnant.maxX() + MARGIN,
                Math.max(fabric.cuttableWidth().micrometres(), remnant.maxY()) + MARGIN);
    }

    private static List<Obstacle> outside(Ring shell, Box frame) {
        List<Point> vertices = shell.positive().vertices();
        Comparator<Integer> alongCloth = Comparator.comparingLong(
                        (Integer i) -> vertices.get(i).x())
                .thenComparingLong(i -> vertices.get(i).y());
        List<Integer> indices =
                java.util.stream.IntStream.range(0, vertices.size()).boxed().toList();
        int first = indices.stream().min(alongCloth).orElseThrow();
        int last = indices.stream().max(alongCloth).orElseThrow();
        long firstY = vertices.get(first).y();
        long lastY = vertices.get(last).y();

        // Of a ring with positive area the way from the first vertex to the last is the side of smaller y.
        List<Point> near = new ArrayList<>(chain(vertices, first, last));
        near.add(new Point(frame.maxX(), lastY));
        near.add(new Point(frame.maxX(), frame.minY()));
        near.add(new Point(frame.minX(), frame.minY()));
        near.add(new Point(frame.minX(), firstY));
        List<Point> far = new ArrayList<>(chain(vertices, last, first));
        far.add(new Point(frame.minX(), firstY));
        far.add(new Point(frame.minX(), frame.maxY()));
        far.add(new Point(frame.maxX(), frame.maxY()));
        far.add(new Point(frame.maxX(), lastY));
        return List.of(new Obstacle(Outline.of(Ring.of(near))), new Obstacle(Outline.of(Ring.of(far))));
    }

    private static List<Point> chain(List<Point> vertices, int from, int to) {
        List<Point> chain = new ArrayList<>();
        for (int i = from; i != to; i = (i + 1) % vertices.size()) {
            chain.add(vertices.get(i));
        }
        chain.add(vertices.get(to));
        return chain;
    }
}
