package lengthwise.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import java.util.function.Function;
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
public final class CutAlreadyRule {
    /** How far a vertex may be off in a marker read back from a file, in µm. */
    private static final long SAME = 20;

    private CutAlreadyRule() {}

    /** Which contour a piece is, and how it was laid. */
    private record Found(int index, Pose pose) {}

    /** Returns the same task, those demands pinned down that are cut; what is matched to them has its place in the print. */
    static LayoutTask pinned(List<Item> items, LayoutTask task, MarkerOrder order) throws RefusedException {
        List<Demand> demands = new ArrayList<>(task.demands());
        Map<Integer, Pose> cut = new TreeMap<>();
        for (PlacedPiece piece : order.cutAlready().pieces()) {
            Found found = find(piece, items, demands)
                    .orElseThrow(() -> new RefusedException(whyNot(piece, items, demands, order)));
            demands.set(found.index(), demands.get(found.index()).laidAt(found.pose()));
            cut.put(found.index(), found.pose());
        }
        return laid(task, cut);
    }

    private static LayoutTask laid(LayoutTask task, Map<Integer, Pose> poses) {
        LayoutTask inPhase = task.inPhaseOf(poses);
        List<Demand> demands = new ArrayList<>(inPhase.demands());
        poses.forEach((index, pose) -> demands.set(index, demands.get(index).laidAt(pose)));
        return task.with(demands, task.obstacles(), inPhase.bonds());
    }

    private static String whyNot(PlacedPiece piece, List<Item> items, List<Demand> demands, MarkerOrder order) {
        boolean known =
                IntStream.range(0, items.size()).anyMatch(i -> !isLaid(demands.get(i)) && isOf(piece, items.get(i)));
        return (known
                        ? "%s is cut already, and does not lie on %s as this job wants it: its shape or its direction is"
                                + " another. Go on with the job that it was cut for."
                        : "%s is cut already, and this order for %s has no such piece, or fewer of them. Go on with the"
                                + " order that it was cut for, or leave it out of what is cut.")
                .formatted(piece.called(), order.fabric().name());
    }

    /** Returns a task with those of its contours pinned down too that are to lie where they were planned. */
    public static LayoutTask asPlanned(Ruling.Task ruled, MarkerOrder order) {
        List<Demand> demands = new ArrayList<>(ruled.task().demands());
        Map<Integer, Pose> planned = new TreeMap<>();
        for (PlacedPiece piece : order.cutAlready().planned()) {
            find(piece, ruled.items(), demands).ifPresent(found -> {
                demands.set(found.index(), demands.get(found.index()).laidAt(found.pose()));
                planned.put(found.index(), found.pose());
            });
        }
        return laid(ruled.task(), planned);
    }

    /**
     * Finds a piece among the contours that are not laid yet. Of a symmetric outline several ways to lie are the same, and one
     * as drawn and one mirrored may bear the same label; the order of the vertices, which our own files keep, tells them
     * apart.
     */
    private static Optional<Found> find(PlacedPiece piece, List<Item> items, List<Demand> demands) {
        Ring lies = piece.outline().shell();
        return find(piece, items, demands, demand -> pose(lies, demand, CutAlreadyRule::isSameInOrder))
                .or(() -> find(piece, items, demands, demand -> pose(lies, demand, CutAlreadyRule::isSame)));
    }

    private static Optional<Found> find(
            PlacedPiece piece, List<Item> items, List<Demand> demands, Function<Demand, Optional<Pose>> pose) {
        return IntStream.range(0, items.size())
                .filter(i -> !isLaid(demands.get(i)) && isOf(piece, items.get(i)))
                .boxed()
                .flatMap(i -> pose.apply(demands.get(i)).map(at -> new Found(i, at)).stream())
                .findFirst();
    }

    private static boolean isLaid(Demand demand) {
        return demand.domain().positions() instanceof PlacementDomain.Positions.Laid;
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

    private static Optional<Pose> pose(Ring lies, Demand demand, BiPredicate<Ring, Ring> same) {
        Point corner = new Point(lies.box().minX(), lies.box().minY());
        for (Orientation orientation : demand.domain().orientations()) {
            Ring turned = orientation.apply(demand.outline()).shell();
            Point offset =
                    corner.minus(new Point(turned.box().minX(), turned.box().minY()));
            if (same.test(lies, turned.moved(offset))) {
                return Optional.of(new Pose(orientation, offset));
            }
        }
        return Optional.empty();
    }

    private static boolean isSameInOrder(Ring one, Ring other) {
        return one.size() == other.size()
                && IntStream.range(0, one.size()).allMatch(i -> isNear(one.vertex(i), other.vertex(i)));
    }

    /** A drawing program may begin the ring elsewhere, or turn it round. */
    private static boolean isSame(Ring one, Ring other) {
        return one.size() == other.size()
                && one.vertices().stream()
                        .allMatch(vertex -> other.vertices().stream().anyMatch(near -> isNear(near, vertex)));
    }

    private static boolean isNear(Point one, Point other) {
        return Math.abs(one.x() - other.x()) <= SAME && Math.abs(one.y() - other.y()) <= SAME;
    }
}
