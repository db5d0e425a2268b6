package lengthwise.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** Moves an outline outward or inward by a constant distance, corners kept: adds a seam allowance, makes room for a blade. */
public final class OutlineOffset {
    /** How far a sharp corner may reach, as a multiple of the distance; beyond that it is cut off square. */
    private static final double MITRE_LIMIT = 4;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private OutlineOffset() {}

    /**
     * Returns the outline whose edges lie {@code distance} µm outside the given ones, corners mitred up to four times
     * the distance, rounded to the grid. Holes become smaller by as much; a hole that closes is gone.
     *
     * @throws IllegalArgumentException if the distance is negative
     */
    public static Outline grow(Outline outline, long distance) {
        if (distance < 0) {
            throw new IllegalArgumentException("A seam allowance cannot be negative: " + distance + " µm.");
        }
        if (distance == 0) {
            return outline;
        }
        Geometry grown = moved(outline, distance);
        if (!(grown instanceof Polygon polygon)) {
            throw new IllegalStateException("The offset of one outline came out as " + grown.getGeometryType());
        }
        return outline(polygon);
    }

    /**
     * Returns what is left of the outline when its edges are moved {@code distance} µm inward, corners mitred, rounded to
     * the grid: one part, none, or several where it is narrow. Holes become larger by as much.
     *
     * @throws IllegalArgumentException if the distance is negative
     */
    public static List<Outline> shrink(Outline outline, long distance) {
        if (distance < 0) {
            throw new IllegalArgumentException(
                    "An outline shrinks by a distance of 0 or more, not " + distance + " µm.");
        }
        if (distance == 0) {
            return List.of(outline);
        }
        Geometry shrunk = moved(outline, -distance);
        List<Outline> parts = new ArrayList<>();
        for (int i = 0; i < shrunk.getNumGeometries(); i++) {
            if (shrunk.getGeometryN(i) instanceof Polygon part && !part.isEmpty()) {
                parts.add(outline(part));
            }
        }
        return parts;
    }

    private static Geometry moved(Outline outline, long distance) {
        BufferParameters mitred = new BufferParameters(
                BufferParameters.DEFAULT_QUADRANT_SEGMENTS,
                BufferParameters.CAP_SQUARE,
                BufferParameters.JOIN_MITRE,
                MITRE_LIMIT);
        return BufferOp.bufferOp(polygon(outline), (double) distance, mitred);
    }

    private static Outline outline(Polygon polygon) {
        List<Ring> holes = new ArrayList<>();
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            holes.add(ring(polygon.getInteriorRingN(i)));
        }
        return new Outline(ring(polygon.getExteriorRing()), holes);
    }

    private static Polygon polygon(Outline outline) {
        return FACTORY.createPolygon(
                linearRing(outline.shell()),
                outline.holes().stream().map(OutlineOffset::linearRing).toArray(LinearRing[]::new));
    }

    private static LinearRing linearRing(Ring ring) {
        Coordinate[] coordinates = new Coordinate[ring.size() + 1];
        for (int i = 0; i <= ring.size(); i++) {
            Point vertex = ring.vertex(i % ring.size());
            coordinates[i] = new Coordinate(vertex.x(), vertex.y());
        }
        return FACTORY.createLinearRing(coordinates);
    }

    private static Ring ring(LinearRing ring) {
        List<Point> vertices = new ArrayList<>();
        for (int i = 0; i + 1 < ring.getNumPoints(); i++) {
            Coordinate c = ring.getCoordinateN(i);
            Point vertex = new Point(StrictMath.round(c.x), StrictMath.round(c.y));
            if (vertices.isEmpty() || !vertices.get(vertices.size() - 1).equals(vertex)) {
                vertices.add(vertex);
            }
        }
        return Ring.of(vertices);
    }
}
