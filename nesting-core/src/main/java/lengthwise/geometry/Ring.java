package lengthwise.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A closed chain of grid points, the last joined to the first. Immutable. Whether it crosses itself is not checked
 * here; see the drawing reader.
 */
public final class Ring {
    private final long[] xs;
    private final long[] ys;
    private final Box box;

    private Ring(long[] xs, long[] ys) {
        if (xs.length < 3) {
            throw new IllegalArgumentException("A ring needs three vertices, not " + xs.length + ".");
        }
        this.xs = xs;
        this.ys = ys;
        this.box = boxOf(xs, ys);
    }

    public static Ring of(Collection<Point> vertices) {
        long[] xs = new long[vertices.size()];
        long[] ys = new long[vertices.size()];
        int n = 0;
        for (Point vertex : vertices) {
            xs[n] = vertex.x();
            ys[n++] = vertex.y();
        }
        return new Ring(xs, ys);
    }

    /** Returns the ring of the vertices given as x, y, x, y … */
    public static Ring of(long... coordinates) {
        if (coordinates.length % 2 != 0) {
            throw new IllegalArgumentException("Coordinates come in pairs, not " + coordinates.length + ".");
        }
        int n = coordinates.length / 2;
        return new Ring(
                IntStream.range(0, n).mapToLong(i -> coordinates[2 * i]).toArray(),
                IntStream.range(0, n).mapToLong(i -> coordinates[2 * i + 1]).toArray());
    }

    public int size() {
        return xs.length;
    }

    public long x(int index) {
        return xs[index];
    }

    public long y(int index) {
        return ys[index];
    }

    public Point vertex(int index) {
        return new Point(xs[index], ys[index]);
    }

    /** Returns the displacement from a vertex to the next one, round the end of the ring. */
    public Point edge(int index) {
        int next = index + 1 == xs.length ? 0 : index + 1;
        return new Point(xs[next] - xs[index], ys[next] - ys[index]);
    }

    public List<Point> vertices() {
        Point[] vertices = new Point[xs.length];
        for (int i = 0; i < xs.length; i++) {
            vertices[i] = vertex(i);
        }
        return List.of(vertices);
    }

    /** Returns twice the signed area in µm²; the origin is moved to the first vertex, so it is exact. */
    public long doubleArea() {
        long sum = 0;
        for (int i = 1; i + 1 < xs.length; i++) {
            sum += (xs[i] - xs[0]) * (ys[i + 1] - ys[0]) - (xs[i + 1] - xs[0]) * (ys[i] - ys[0]);
        }
        return sum;
    }

    public Box box() {
        return box;
    }

    private static Box boxOf(long[] xs, long[] ys) {
        long minX = xs[0];
        long maxX = xs[0];
        long minY = ys[0];
        long maxY = ys[0];
        for (int i = 1; i < xs.length; i++) {
            minX = Math.min(minX, xs[i]);
            maxX = Math.max(maxX, xs[i]);
            minY = Math.min(minY, ys[i]);
            maxY = Math.max(maxY, ys[i]);
        }
        return new Box(minX, minY, maxX, maxY);
    }

    public Ring moved(Point by) {
        return new Ring(
                Arrays.stream(xs).map(x -> x + by.x()).toArray(),
                Arrays.stream(ys).map(y -> y + by.y()).toArray());
    }

    /** Returns the same ring run through the other way, from the same first vertex. */
    public Ring reversed() {
        int n = xs.length;
        return new Ring(
                IntStream.range(0, n).mapToLong(i -> xs[(n - i) % n]).toArray(),
                IntStream.range(0, n).mapToLong(i -> ys[(n - i) % n]).toArray());
    }

    /** Returns this ring if its area is positive, and the reversed one otherwise. */
    public Ring positive() {
        return doubleArea() < 0 ? reversed() : this;
    }

    /** Returns the ring less every vertex that lies exactly on the line through its neighbours. */
    public Ring withoutFlatVertices() {
        List<Point> kept = new ArrayList<>(vertices());
        for (int i = 0; i < kept.size() && kept.size() > 3; ) {
            Point before = kept.get(Math.floorMod(i - 1, kept.size()));
            Point after = kept.get((i + 1) % kept.size());
            if (kept.get(i).minus(before).cross(after.minus(kept.get(i))) == 0) {
                kept.remove(i);
                i = Math.max(0, i - 1);
            } else {
                i++;
            }
        }
        return of(kept);
    }

    /** Returns the image of every vertex, in the same order. */
    public Ring mapped(java.util.function.UnaryOperator<Point> map) {
        long[] mappedX = new long[xs.length];
        long[] mappedY = new long[xs.length];
        for (int i = 0; i < xs.length; i++) {
            Point image = map.apply(vertex(i));
            mappedX[i] = image.x();
            mappedY[i] = image.y();
        }
        return new Ring(mappedX, mappedY);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Ring ring && Arrays.equals(xs, ring.xs) && Arrays.equals(ys, ring.ys);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(xs) + Arrays.hashCode(ys);
    }

    @Override
    public String toString() {
        return "Ring" + vertices().stream().map(p -> p.x() + " " + p.y()).toList();
    }
}
