package lengthwise.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.relateng.RelateNG;

/** Answers by the JTS relations on whole outlines, to hold our own answers against. */
public final class JtsOracle {
    private JtsOracle() {}

    public static Polygon polygon(Ring ring) {
        Coordinate[] shell = new Coordinate[ring.size() + 1];
        for (int i = 0; i < ring.size(); i++) {
            shell[i] = new Coordinate(ring.x(i), ring.y(i));
        }
        shell[ring.size()] = shell[0];
        return new GeometryFactory().createPolygon(shell);
    }

    public static boolean interiorsMeet(Ring a, Ring b) {
        return RelateNG.relate(polygon(a), polygon(b), "T********");
    }

    public static double distance(Ring a, Ring b) {
        return polygon(a).distance(polygon(b));
    }
}
