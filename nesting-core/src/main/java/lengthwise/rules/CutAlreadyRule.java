package lengthwise.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.Ring;
import lengthwise.model.CutAlready;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;

/**
 * What is cut already stays where it lies; of what is spoilt the cloth is gone, which is an obstacle, and it is laid once
 * more.
 */
final class CutAlreadyRule {
    /** How far a vertex may be off in a marker read back from a file, in µm. */
    private static final long SAME = 20;

    private CutAlreadyRule() {}

    /** Returns the same task, those demands pinned down that are cut; what is matched to them has its place in the print. */
    static LayoutTask pinned(List<Item> items, LayoutTask task, MarkerOrder order) throws RefusedException {
        Map<Integer, Pose> cut = new TreeMap<>();
        for (PlacedPiece piece : order.cutAlready().pieces()) {
            int index = IntStream.range(0, items.size())
                    .filter(i -> !cut.containsKey(i) && isOf(piece, items.get(i)))
                    .findFirst()
                    .orElseThrow(() -> new RefusedException(
                            ("%s is cut already, and this order for %s has no such piece, or fewer of them. Go on with the"
                                            + " order that it was cut for, or leave it out of what is cut.")
                                    .formatted(piece.called(), order.fabric().name())));
            Demand demand = task.demands().get(index);
            Pose pose = pose(piece, demand)
                    .orElseThrow(() -> new RefusedException(
                            ("%s is cut already, and does not lie on %s as this job wants it: its shape or its direction is"
                                            + " another. Go on with the job that it was cut for.")
                                    .formatted(piece.called(), order.fabric().name())));
            cut.put(index, pose);
        }
        LayoutTask inPhase = task.inPhaseOf(cut);
        List<Demand> pinned = new ArrayList<>(inPhase.demands());
        cut.forEach((index, pose) -> pinned.set(index, pinned.get(index).laidAt(pose)));
        return task.with(pinned, task.obstacles(), inPhase.bonds());
    }

    /** Returns the regions that are gone without use. */
    static List<Obstacle> gone(CutAlready cut) {
        return cut.spoilt().stream()
                .map(piece -> new Obstacle(Outline.of(piece.outline().shell().positive())))
                .toList();
    }

    private static boolean isOf(PlacedPiece piece, Item item) {
        return piece.isLabelledAs(PlacedPiece.of(new Placement(item, new Pose(Orientation.AS_DRAWN, Point.ORIGIN))));
    }

    /** Returns how a piece that lies as it may was laid. */
    private static Optional<Pose> pose(PlacedPiece piece, Demand demand) {
        Ring lies = piece.outline().shell();
        Point corner = new Point(lies.box().minX(), lies.box().minY());
        for (Orientation orientation : demand.domain().orientations()) {
            Ring turned = orientation.apply(demand.outline()).shell();
            Point offset =
                    corner.minus(new Point(turned.box().minX(), turned.box().minY()));
            if (isSame(lies, turned.moved(offset))) {
                return Optional.of(new Pose(orientation, offset));
            }
        }
        return Optional.empty();
    }

    /** A drawing program may begin the ring elsewhere, or turn it round. */
    private static boolean isSame(Ring one, Ring other) {
        return one.size() == other.size()
                && one.vertices().stream()
                        .allMatch(vertex -> other.vertices().stream()
                                .anyMatch(near -> Math.abs(near.x() - vertex.x()) <= SAME
                                        && Math.abs(near.y() - vertex.y()) <= SAME));
    }
}
