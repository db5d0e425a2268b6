package lengthwise.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.relateng.RelateNG;
import org.locationtech.jts.operation.relateng.RelatePredicate;

/**
 * The points of an outline as they lie, and how two such regions relate: for judging a layout, not for searching one.
 *
 * <p>Whether two regions overlap is exact: JTS decides it by signs of turns, which it computes without rounding for
 * coordinates on the grid. Regions that only touch do not overlap. Amounts (area, thickness, distance) are computed in
 * floating point and are good to about 10<sup>−6</sup> µm.
 *
 * <p>An outline read from elsewhere may cross itself; its region is then the area that JTS makes valid.
 */
public final class PlacedArea {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final String INTERIORS_MEET = "T********";
    /** A rounded distance this much (µm) below the exact one is not held against anybody. */
    private static final double ROUNDING = 1e-6;

    private final Geometry area;

    private PlacedArea(Geometry area) {
        this.area = area;
    }

    public static PlacedArea of(Outline outline) {
        LinearRing[] holes = outline.holes().stream().map(PlacedArea::closed).toArray(LinearRing[]::new);
        Polygon polygon = FACTORY.createPolygon(closed(outline.shell()), holes);
        return new PlacedArea(polygon.isValid() ? polygon : GeometryFixer.fix(polygon));
    }

    /** Returns all that an outline passes over while it is moved straight from where it lies by an offset. */
    public static PlacedArea swept(Outline outline, Point by) {
        List<Geometry> passed = new ArrayList<>(List.of(of(outline).area, of(outline.moved(by)).area));
        Ring shell = outline.shell();
        for (int i = 0; i < shell.size(); i++) {
            Point from = shell.vertex(i);
            Point to = from.plus(shell.edge(i));
            Polygon beside = FACTORY.createPolygon(new Coordinate[] {
                coordinate(from), coordinate(to), coordinate(to.plus(by)), coordinate(from.plus(by)), coordinate(from)
            });
            if (beside.getArea() > 0) {
                passed.add(beside);
            }
        }
        return new PlacedArea(OverlayNGRobust.union(passed));
    }

    private static Coordinate coordinate(Point point) {
        return new Coordinate(point.x(), point.y());
    }

    /** Says whether an outline bounds a region as it is: it neither touches nor crosses itself. */
    public static boolean isRegion(Outline outline) {
        LinearRing[] holes = outline.holes().stream().map(PlacedArea::closed).toArray(LinearRing[]::new);
        return FACTORY.createPolygon(closed(outline.shell()), holes).isValid();
    }

    private static LinearRing closed(Ring ring) {
        Coordinate[] coordinates = new Coordinate[ring.size() + 1];
        for (int i = 0; i < ring.size(); i++) {
            coordinates[i] = new Coordinate(ring.x(i), ring.y(i));
        }
        coordinates[ring.size()] = coordinates[0];
        return FACTORY.createLinearRing(coordinates);
    }

    /**
     * Says whether the two regions share more than their edges.
     *
     * @param tolerance an overlap nowhere thicker than this many micrometres does not count; 0: every overlap does
     */
    public boolean overlaps(PlacedArea other, long tolerance) {
        return overlaps(other)
                && (tolerance == 0
                        || !intersection(other).buffer(-tolerance / 2.0).isEmpty());
    }

    private boolean overlaps(PlacedArea other) {
        return isNear(other, 0) && RelateNG.relate(area, other.area, RelatePredicate.matches(INTERIORS_MEET));
    }

    /** Returns how much two overlapping regions have in common. */
    public Amount overlap(PlacedArea other) {
        Geometry common = intersection(other);
        return new Amount(common.getArea() / 1e6, thickness(common) / 1000);
    }

    /**
     * Says whether this region is not all within another one. It may touch the other's edge from inside.
     *
     * @param tolerance an overhang nowhere thicker than this many micrometres does not count; 0: every overhang does
     */
    public boolean leaves(PlacedArea other, long tolerance) {
        return !RelateNG.relate(area, other.area, RelatePredicate.coveredBy())
                && (tolerance == 0
                        || !difference(other).buffer(-tolerance / 2.0).isEmpty());
    }

    /** Returns how much of this region is outside another one. */
    public Amount outside(PlacedArea other) {
        Geometry outside = difference(other);
        return new Amount(outside.getArea() / 1e6, thickness(outside) / 1000);
    }

    /**
     * A part of a region, such as what two have in common.
     *
     * @param squareMillimetres its area
     * @param millimetres its thickness: the diameter of the largest disc that fits in it
     */
    public record Amount(double squareMillimetres, double millimetres) {}

    /** Says whether the boundaries of the two regions come nearer to each other than so many micrometres. */
    public boolean isNearerThan(PlacedArea other, long micrometres) {
        return isNear(other, (double) micrometres) && distance(other) < micrometres - ROUNDING;
    }

    /** Returns the least distance between the boundaries of the two regions in micrometres; 0 if they touch. */
    public double distance(PlacedArea other) {
        return area.isEmpty() || other.area.isEmpty()
                ? Double.POSITIVE_INFINITY
                : IndexedFacetDistance.distance(area, other.area);
    }

    private boolean isNear(PlacedArea other, double distance) {
        return area.getEnvelopeInternal().distance(other.area.getEnvelopeInternal()) <= distance;
    }

    private Geometry intersection(PlacedArea other) {
        return OverlayNGRobust.overlay(area, other.area, OverlayNG.INTERSECTION);
    }

    private Geometry difference(PlacedArea other) {
        return OverlayNGRobust.overlay(area, other.area, OverlayNG.DIFFERENCE);
    }

    /** Halves the span in which the widest inset that leaves something must lie. */
    private static double thickness(Geometry common) {
        Envelope box = common.getEnvelopeInternal();
        double fits = 0;
        double tooMuch = Math.min(box.getWidth(), box.getHeight());
        while (tooMuch - fits > Math.max(0.01, tooMuch / 1000)) {
            double middle = (fits + tooMuch) / 2;
            if (common.buffer(-middle / 2).isEmpty()) {
                tooMuch = middle;
            } else {
                fits = middle;
            }
        }
        return fits;
    }
}
