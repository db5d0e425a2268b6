package lengthwise;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lengthwise.check.MarkerCheck;
import lengthwise.geometry.PlacedArea;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.model.Segment;
import lengthwise.model.Shade;

/**
 * A layout on wider cloth of the same kind. What lies on the far fold of a tube, or on the far selvedge, moves out with it, and
 * so does every piece in the way of one that moves; all others stay where they are.
 */
public final class WiderCloth {
    /** Pieces this much nearer than their gap (µm) still keep it: a layout is on a grid. */
    private static final long GRID = 10;

    private final Marker marker;
    private final List<Placement> placements;
    private final long width;

    private WiderCloth(Marker marker) {
        this.marker = marker;
        placements = marker.placements();
        width = marker.order().fabric().cuttableWidth().micrometres();
    }

    /**
     * Returns the same layout as a marker for another order of the same pieces, on cloth as wide or wider, if the check finds
     * nothing wrong with it there.
     */
    public static Optional<Marker> carried(Marker marker, MarkerOrder order) {
        Point out = new Point(
                0,
                order.fabric()
                        .cuttableWidth()
                        .minus(marker.order().fabric().cuttableWidth())
                        .micrometres());
        WiderCloth cloth = new WiderCloth(marker);
        return cloth.moving()
                .map(moving -> new Marker(order, cloth.movedOut(moving, out), marker.length()))
                .filter(there -> MarkerCheck.violations(there).isEmpty());
    }

    /** Says whether what ties pieces to the far edge leaves the layout as good on cloth of any greater width. */
    public static boolean canTake(Marker marker) {
        return new WiderCloth(marker).moving().isPresent();
    }

    private List<Placement> movedOut(Set<Integer> moving, Point out) {
        List<Placement> moved = new ArrayList<>();
        for (int i = 0; i < placements.size(); i++) {
            Placement placement = placements.get(i);
            Pose pose = placement.pose();
            moved.add(
                    moving.contains(i)
                            ? new Placement(
                                    placement.item(),
                                    new Pose(pose.orientation(), pose.offset().plus(out)))
                            : placement);
        }
        return moved;
    }

    /** Returns the placements that move, by their index; empty if one of them is tied to its place across the cloth. */
    private Optional<Set<Integer>> moving() {
        Set<Integer> moving = new HashSet<>();
        Deque<Integer> next = new ArrayDeque<>();
        for (int i = 0; i < placements.size(); i++) {
            if (isOnFarEdge(placements.get(i))) {
                moving.add(i);
                next.add(i);
            }
        }
        if (!moving.isEmpty() && isTiedAcross(marker.order())) {
            return Optional.empty();
        }
        while (!next.isEmpty()) {
            int pushing = next.remove();
            PlacedArea way = PlacedArea.swept(placements.get(pushing).outline(), new Point(0, width));
            for (int i = 0; i < placements.size(); i++) {
                PlacedArea area = PlacedArea.of(placements.get(i).outline());
                if (!moving.contains(i) && (way.overlaps(area, 0) || way.isNearerThan(area, gap(pushing, i) - GRID))) {
                    moving.add(i);
                    next.add(i);
                }
            }
        }
        return moving.stream().noneMatch(i -> isOnNearEdge(placements.get(i))) ? Optional.of(moving) : Optional.empty();
    }

    private long gap(int i, int j) {
        return Length.max(gap(placements.get(i)), gap(placements.get(j))).micrometres();
    }

    private Length gap(Placement placement) {
        return marker.order().gapOf(placement.item().piece().name());
    }

    private static boolean isTiedAcross(MarkerOrder order) {
        return !order.matchPoints().isEmpty()
                || !order.motifs().isEmpty()
                || order.fabric().shade().flatMap(Shade::crosswise).isPresent()
                || order.lying().values().stream()
                        .anyMatch(lying ->
                                lying.border().isPresent() || lying.zone().isPresent());
    }

    private boolean isOnFarEdge(Placement placement) {
        Fabric fabric = marker.order().fabric();
        return placement.outline().box().maxY() > width
                || (fabric.spread().isFoldedTwice()
                        && isFoldAt(placement, fabric.laidWidth().micrometres()));
    }

    private boolean isOnNearEdge(Placement placement) {
        return placement.outline().box().minY() < 0
                || (marker.order().fabric().spread().isFoldedLengthwise() && isFoldAt(placement, 0));
    }

    private static boolean isFoldAt(Placement placement, long y) {
        Optional<Segment> fold = placement.item().piece().foldEdge();
        return fold.isPresent()
                && placement.pose().apply(fold.get().from()).y() == y
                && placement.pose().apply(fold.get().to()).y() == y;
    }
}
