package lengthwise.plan;

import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.PlacedArea;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Placement;

/**
 * Where the cloth of one marker goes, all layers together, as areas on the table (after washing, if the cloth is washed
 * first), in mm². The six kinds add up to the cloth that is bought.
 *
 * @param pieces what is cut and kept: net area of the laid pieces
 * @param betweenPieces marker length × cuttable width, less the pieces; flaws count here
 * @param edges the unusable edges along the marker, less what pieces with an edge on the selvedge use of them
 * @param ends both end allowances, over the whole width
 * @param allowances bought for squaring the ends and for flaws
 * @param leftOver what the shop's step adds: whole cloth, a remnant
 */
public record Waste(
        double pieces, double betweenPieces, double edges, double ends, double allowances, double leftOver) {
    /** Returns the split for a marker whose purchase is known. */
    public static Waste of(Marker marker, Purchase purchase) {
        Fabric fabric = marker.order().fabric();
        int layers = fabric.spread().layers();
        // the layers that are folded one on the other lie side by side in the cloth as it is bought
        int abreast = layers / fabric.spread().lengths();
        double cuttable = layers * area(marker.length(), fabric.cuttableWidth());
        double underMarker = layers * area(marker.length(), fabric.laidWidth());
        double pieces = marker.efficiency() * cuttable;
        double onSelvedge = layers * inUnusableEdge(marker);
        return new Waste(
                pieces,
                cuttable - (pieces - onSelvedge),
                underMarker - cuttable - onSelvedge,
                abreast * area(purchase.ends(), fabric.laidWidth()),
                abreast
                        * area(
                                purchase.squaring().plus(purchase.flaws()).scaled(fabric.lengthKept()),
                                fabric.laidWidth()),
                abreast * area(purchase.rounding().scaled(fabric.lengthKept()), fabric.laidWidth()));
    }

    private static double inUnusableEdge(Marker marker) {
        long width = marker.order().fabric().cuttableWidth().micrometres();
        PlacedArea cuttable =
                PlacedArea.of(Outline.of(new Box(0, 0, marker.length().micrometres(), width).ring()));
        return marker.placements().stream()
                .map(Placement::outline)
                .filter(outline -> outline.box().minY() < 0 || outline.box().maxY() > width)
                .mapToDouble(outline -> PlacedArea.of(outline).outside(cuttable).squareMillimetres())
                .sum();
    }

    /** Returns the cloth that lies on the table for this marker, without allowances and what is left over. */
    public double laid() {
        return pieces + betweenPieces + edges + ends;
    }

    /** Returns the cloth that is bought, as it measures on the table. */
    public double bought() {
        return laid() + allowances + leftOver;
    }

    /** Returns the share of the laid cloth that becomes pieces, from 0 to 1; never above the marker efficiency. */
    public double utilisation() {
        return pieces / laid();
    }

    private static double area(Length length, Length width) {
        return length.millimetres() * width.millimetres();
    }
}
