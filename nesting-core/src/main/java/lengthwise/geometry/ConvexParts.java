package lengthwise.geometry;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * A simple ring cut into convex parts whose vertices are vertices of the ring, so that the cut is exact on the grid.
 *
 * <p>The ring is triangulated by ear clipping (JTS); then diagonals are taken out, the longest first, wherever the two
 * parts on its sides stay convex together. At most four times as many parts as needed: S. Hertel, K. Mehlhorn,
 * <i>Fast triangulation of simple polygons</i>, FCT 1983.
 */
public final class ConvexParts {
    private final Ring ring;
    private final List<Ring> parts;
    private final Box[] boxes;

    private ConvexParts(Ring ring, List<Ring> parts) {
        this.ring = ring;
        this.parts = parts;
        this.boxes = parts.stream().map(Ring::box).toArray(Box[]::new);
    }

    /**
     * Cuts a ring.
     *
     * @throws IllegalArgumentException if the parts do not add up to the ring, because it crosses itself
     */
    public static ConvexParts of(Ring ring) {
        Ring shell = withoutFlatVertices(ring.positive());
        List<Ring> parts = new Merging(shell).parts();
        long area = parts.stream().mapToLong(Ring::doubleArea).sum();
        if (area != shell.doubleArea()) {
            throw new IllegalArgumentException("The ring cannot be cut into convex parts: twice its area is "
                    + shell.doubleArea() + " µm² but the parts have " + area
                    + " µm². Maybe it crosses itself: " + ring);
        }
        return new ConvexParts(shell, parts);
    }

    /** Returns the ring that was cut, positive and without vertices that lie straight between their neighbours. */
    public Ring ring() {
        return ring;
    }

    /** Returns the parts, each positive and strictly convex. */
    public List<Ring> parts() {
        return parts;
    }

    /** Returns the box of a part. */
    Box box(int part) {
        return boxes[part];
    }

    /** Returns the image of the ring and of its parts. */
    public ConvexParts oriented(Orientation orientation) {
        return new ConvexParts(
                ring.mapped(orientation::apply).positive(),
                parts.stream()
                        .map(part -> part.mapped(orientation::apply).positive())
                        .toList());
    }

    /** Returns the ring less every vertex that lies exactly on the line through its neighbours. */
    static Ring withoutFlatVertices(Ring ring) {
        List<Point> kept = new ArrayList<>(ring.vertices());
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
        return Ring.of(kept);
    }

    /** Triangles that grow together. Parts are lists of vertex numbers; an edge knows the part on its left. */
    private static final class Merging {
        private final Ring ring;
        private final List<List<Integer>> polygons = new ArrayList<>();
        private final Map<Long, Integer> partLeftOf = new HashMap<>();

        Merging(Ring ring) {
            this.ring = ring;
        }

        List<Ring> parts() {
            triangulate();
            for (long diagonal : diagonalsLongestFirst()) {
                takeOut((int) (diagonal >> 32), (int) diagonal);
            }
            return polygons.stream()
                    .filter(polygon -> !polygon.isEmpty())
                    .map(polygon -> withoutFlatVertices(
                            Ring.of(polygon.stream().map(ring::vertex).toList())))
                    .toList();
        }

        private void triangulate() {
            Map<Point, Integer> numbers = new HashMap<>();
            Coordinate[] shell = new Coordinate[ring.size() + 1];
            for (int i = 0; i < ring.size(); i++) {
                numbers.put(ring.vertex(i), i);
                shell[i] = new Coordinate(ring.x(i), ring.y(i));
            }
            shell[ring.size()] = shell[0];
            Geometry triangles = triangles(shell);
            for (int t = 0; t < triangles.getNumGeometries(); t++) {
                Coordinate[] corners = triangles.getGeometryN(t).getCoordinates();
                List<Integer> triangle = new ArrayList<>(IntStream.range(0, 3)
                        .mapToObj(c -> numbers.get(new Point((long) corners[c].x, (long) corners[c].y)))
                        .toList());
                long area = turn(triangle.get(0), triangle.get(1), triangle.get(2));
                if (area != 0) {
                    add(area > 0 ? triangle : List.of(triangle.get(2), triangle.get(1), triangle.get(0)));
                }
            }
        }

        private Geometry triangles(Coordinate[] shell) {
            try {
                return PolygonTriangulator.triangulate(new GeometryFactory().createPolygon(shell));
            } catch (IllegalStateException noEarLeft) {
                throw new IllegalArgumentException(
                        "The ring cannot be cut into convex parts. Maybe it crosses itself: " + ring, noEarLeft);
            }
        }

        private void add(List<Integer> polygon) {
            int number = polygons.size();
            polygons.add(polygon);
            for (int i = 0; i < polygon.size(); i++) {
                partLeftOf.put(edge(polygon.get(i), polygon.get((i + 1) % polygon.size())), number);
            }
        }

        private List<Long> diagonalsLongestFirst() {
            return partLeftOf.keySet().stream()
                    .filter(key -> (int) (key >> 32) < (int) (long) key)
                    .filter(key -> partLeftOf.containsKey(edge((int) (long) key, (int) (key >> 32))))
                    .sorted((a, b) -> {
                        int byLength = Double.compare(length(b), length(a));
                        return byLength != 0 ? byLength : Long.compare(a, b);
                    })
                    .toList();
        }

        private double length(long key) {
            return ring.vertex((int) (key >> 32)).distance(ring.vertex((int) key));
        }

        private void takeOut(int from, int to) {
            int left = partLeftOf.getOrDefault(edge(from, to), -1);
            int right = partLeftOf.getOrDefault(edge(to, from), -1);
            if (left == right || left < 0 || right < 0) {
                return;
            }
            List<Integer> a = startingWith(polygons.get(left), to);
            List<Integer> b = startingWith(polygons.get(right), from);
            // a runs to … from, b runs from … to
            boolean convexAtFrom = turn(a.get(a.size() - 2), from, b.get(1)) >= 0;
            boolean convexAtTo = turn(b.get(b.size() - 2), to, a.get(1)) >= 0;
            if (convexAtFrom && convexAtTo) {
                List<Integer> merged = new ArrayList<>(a);
                merged.addAll(b.subList(1, b.size() - 1));
                polygons.set(left, List.of());
                polygons.set(right, List.of());
                partLeftOf.remove(edge(from, to));
                partLeftOf.remove(edge(to, from));
                add(merged);
            }
        }

        private static List<Integer> startingWith(List<Integer> polygon, int vertex) {
            int at = polygon.indexOf(vertex);
            List<Integer> rotated = new ArrayList<>(polygon.subList(at, polygon.size()));
            rotated.addAll(polygon.subList(0, at));
            return rotated;
        }

        private long turn(int a, int b, int c) {
            return ring.vertex(b).minus(ring.vertex(a)).cross(ring.vertex(c).minus(ring.vertex(b)));
        }

        private static long edge(int from, int to) {
            return ((long) from << 32) | to;
        }
    }
}
