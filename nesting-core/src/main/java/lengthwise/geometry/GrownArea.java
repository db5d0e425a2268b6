package lengthwise.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/** The area of all points inside a ring or near it: its Minkowski sum with a disc. */
public final class GrownArea {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** What is taken off the radius, so that the snapping of nearly equal vertices cannot make the area too large. */
    private static final double LESS = 0.998;

    private GrownArea() {}

    /**
     * Returns an area in µm² that is at most, and nearly, that of the points inside a ring or less than {@code radius} µm
     * away from it. Arcs are replaced by chords, and no vertex is simplified away, which could add to it.
     */
    public static double atMost(Ring ring, double radius) {
        Coordinate[] closed = new Coordinate[ring.size() + 1];
        for (int i = 0; i <= ring.size(); i++) {
            Point vertex = ring.vertex(i % ring.size());
            closed[i] = new Coordinate(vertex.x(), vertex.y());
        }
        BufferParameters round = new BufferParameters(BufferParameters.DEFAULT_QUADRANT_SEGMENTS);
        round.setSimplifyFactor(0);
        return BufferOp.bufferOp(FACTORY.createPolygon(closed), LESS * radius, round)
                .getArea();
    }
}
