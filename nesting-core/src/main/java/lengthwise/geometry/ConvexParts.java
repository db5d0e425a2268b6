package lengthwise.geometry;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.triangulate.polygon.ConstrainedDelaunayTriangulator;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * A simple ring cut into convex parts whose vertices are vertices of the ring, so that the cut is exact on the grid.
 * An outline with holes is cut likewise.
 *
 * <p>The ring is triangulated (JTS); then diagonals are taken out, the longest first, wherever the two parts on its sides
 * stay convex together. That is done twice, from the constrained Delaunay triangulation, which suits curved bands, and from ear
 * clipping; the fewer parts are taken. At most four times as many parts as needed: S. Hertel, K. Mehlhorn,
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
        return of(Outline.of(ring));
    }

    /**
     * Cuts an outline with its holes left open.
     *
     * @throws IllegalArgumentException if the parts do not add up to the outline, because it crosses itself
     */
    public static ConvexParts of(Outline outline) {
        Outline plain = new Outline(
                outline.shell().withoutFlatVertices(),
                outline.holes().stream().map(Ring::withoutFlatVertices).toList());
        List<Ring> few = new Merging(plain).parts(ConstrainedDelaunayTriangulator::triangulate);
        List<Ring> parts =
                few.size() == 1 ? few : fewer(few, new Merging(plain).parts(PolygonTriangulator::triangulate));
        long area = parts.stream().mapToLong(Ring::doubleArea).sum();
        if (area != plain.doubleArea()) {
            throw new IllegalArgumentException("The outline cannot be cut into convex parts: twice its area is "
                    + plain.doubleArea() + " µm² but the parts have " + area
                    + " µm². Maybe it crosses itself: " + outline);
        }
        return new ConvexParts(plain.shell(), parts);
    }

    private static List<Ring> fewer(List<Ring> some, List<Ring> others) {
        return others.size() < some.size() ? others : some;
    }

    /** Returns the ring that was cut, positive and without vertices that lie straight between their neighbours. */
    public Ring ring() {
        return ring;
    }

    /** Says whether the parts fill the ring: the outline that was cut had no holes. */
    boolean isFilled() {
        return parts.stream().mapToLong(Ring::doubleArea).sum() == ring.doubleArea();
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

    /** Triangles that grow together. Parts are lists of vertex numbers; an edge knows the part on its left. */
    private static final class Merging {
        private final Outline outline;
        private final List<Point> vertices = new ArrayList<>();
        private final List<List<Integer>> polygons = new ArrayList<>();
        private final Map<Long, Integer> partLeftOf = new HashMap<>();

        Merging(Outline outline) {
            this.outline = outline;
            vertices.addAll(outline.shell().vertices());
            outline.holes().forEach(hole -> vertices.addAll(hole.vertices()));
        }

        List<Ring> parts(UnaryOperator<Geometry> triangulator) {
            triangulate(triangulator);
            for (long diagonal : diagonalsLongestFirst()) {
                takeOut((int) (diagonal >> 32), (int) diagonal);
            }
            return polygons.stream()
                    .filter(polygon -> !polygon.isEmpty())
                    .map(polygon -> Ring.of(polygon.stream().map(vertices::get).toList())
                            .withoutFlatVertices())
                    .toList();
        }

        private void triangulate(UnaryOperator<Geometry> triangulator) {
            Map<Point, Integer> numbers = new HashMap<>();
            for (int i = 0; i < vertices.size(); i++) {
                numbers.put(vertices.get(i), i);
            }
            Geometry triangles = triangles(triangulator);
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

        private Geometry triangles(UnaryOperator<Geometry> triangulator) {
            GeometryFactory factory = new GeometryFactory();
            try {
                return triangulator.apply(factory.createPolygon(
                        factory.createLinearRing(coordinates(outline.shell())),
                        outline.holes().stream()
                                .map(hole -> factory.createLinearRing(coordinates(hole)))
                                .toArray(LinearRing[]::new)));
            } catch (IllegalStateException noEarLeft) {
                throw new IllegalArgumentException(
                        "The outline cannot be cut into convex parts. Maybe it crosses itself: " + outline, noEarLeft);
            }
        }

        private static Coordinate[] coordinates(Ring ring) {
            Coordinate[] closed = new Coordinate[ring.size() + 1];
            for (int i = 0; i <= ring.size(); i++) {
                closed[i] = new Coordinate(ring.x(i % ring.size()), ring.y(i % ring.size()));
            }
            return closed;
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
            return vertices.get((int) (key >> 32)).distance(vertices.get((int) key));
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
            return vertices.get(b).minus(vertices.get(a)).cross(vertices.get(c).minus(vertices.get(b)));
        }

        private static long edge(int from, int to) {
            return ((long) from << 32) | to;
        }
    }
}
