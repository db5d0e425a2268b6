package lengthwise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.CutAlready;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain.Positions;
import lengthwise.rules.Ruling;
import lengthwise.solver.Search;

/**
 * Which spoilt pieces can be cut again from the waste, the cloth between what is cut: tried one after another, the largest
 * first, so that all those that find room find it together. A search may miss room that there is.
 *
 * @param answers one for each spoilt piece, in the order of the order
 */
public record Recut(List<Answer> answers) {
    public Recut {
        answers = List.copyOf(answers);
    }

    /** What becomes of a spoilt piece. */
    public enum Way {
        /** There is room for it in the waste. */
        FROM_THE_WASTE,
        /** No room was found for it there. */
        FROM_WHOLE_CLOTH,
        /** The order does not want it. */
        NOT_WANTED
    }

    /**
     * What becomes of one.
     *
     * @param underFlaw whether a flaw of the cloth lies over it
     */
    public record Answer(PlacedPiece spoilt, boolean underFlaw, Way way) {}

    /**
     * Looks for room in the waste.
     *
     * @param search its stop rule is asked for all pieces together
     */
    public static Recut of(MarkerOrder order, Search search) {
        CutAlready cut = order.cutAlready();
        Ruling ruling = Ruling.of(order);
        if (cut.spoilt().isEmpty() || !(ruling instanceof Ruling.Task ruled)) {
            return new Recut(List.of());
        }
        LayoutTask task = ruled.task();
        Map<Integer, Pose> laid = new HashMap<>();
        for (int i = 0; i < task.demands().size(); i++) {
            if (task.demands().get(i).domain().positions() instanceof Positions.Laid at) {
                laid.put(
                        i,
                        new Pose(task.demands().get(i).domain().orientations().get(0), at.offset()));
            }
        }
        Map<PlacedPiece, Optional<Integer>> again = again(cut, ruled.items(), laid.keySet());
        RoomLeft waste = new RoomLeft(task, waste(order), search);
        again.values().stream()
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingLong(
                                (Integer i) -> -task.demands().get(i).outline().doubleArea())
                        .thenComparing(Comparator.naturalOrder()))
                .forEach(i -> waste.lay(List.of(i), laid));
        List<Answer> answers = new ArrayList<>();
        for (PlacedPiece spoilt : cut.spoilt()) {
            Optional<Integer> index = again.getOrDefault(spoilt, Optional.empty());
            Way way = index.map(i -> laid.containsKey(i) ? Way.FROM_THE_WASTE : Way.FROM_WHOLE_CLOTH)
                    .orElse(Way.NOT_WANTED);
            answers.add(
                    new Answer(spoilt, CutAlready.isUnder(spoilt, order.fabric().flaws()), way));
        }
        return new Recut(answers);
    }

    private static Length waste(MarkerOrder order) {
        Length upTo = order.cutAlready().upTo();
        return order.fabric().room().filter(room -> room.compareTo(upTo) < 0).orElse(upTo);
    }

    /** Returns which contour of the order takes the place of each spoilt one. */
    private static Map<PlacedPiece, Optional<Integer>> again(CutAlready cut, List<Item> items, Set<Integer> pinned) {
        Map<PlacedPiece, Optional<Integer>> again = new HashMap<>();
        Set<Integer> taken = new HashSet<>(pinned);
        for (PlacedPiece spoilt : cut.spoilt()) {
            Optional<Integer> index = IntStream.range(0, items.size())
                    .boxed()
                    .filter(i -> !taken.contains(i) && spoilt.isLabelledAs(label(items.get(i))))
                    .findFirst();
            index.ifPresent(taken::add);
            again.put(spoilt, index);
        }
        return again;
    }

    private static PlacedPiece label(Item item) {
        return PlacedPiece.of(new Placement(item, new Pose(Orientation.AS_DRAWN, Point.ORIGIN)));
    }
}
