package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.model.Axis;
import lengthwise.model.Cut;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Shade;

/**
 * Where the colour of a cloth drifts along it or across it, the pieces of a garment lie within some stretch of its length,
 * left and right of a piece in a band of its width. A contour that serves two garments lies within both stretches.
 */
final class ShadeRule {
    private final MarkerOrder order;
    private final List<Item> items;
    private final List<Demand> demands;
    private final List<Bond> bonds = new ArrayList<>();

    private ShadeRule(MarkerOrder order, List<Item> items, List<Demand> demands) {
        this.order = order;
        this.items = items;
        this.demands = demands;
    }

    /**
     * Returns the bonds that keep what belongs together near to each other.
     *
     * @param demands one for each item
     */
    static List<Bond> bonds(List<Item> items, List<Demand> demands, MarkerOrder order) throws RefusedException {
        ShadeRule rule = new ShadeRule(order, items, demands);
        if (order.fabric().shade().isPresent()) {
            Shade shade = order.fabric().shade().get();
            refuseOtherStretches(order.fabric(), shade);
            if (shade.lengthwise().isPresent()) {
                rule.garments(shade.lengthwise().get());
            }
            if (shade.crosswise().isPresent()) {
                rule.mates(shade.crosswise().get());
            }
        }
        return List.copyOf(rule.bonds);
    }

    /** What lies above each other on the table need not be near to each other on the cloth. */
    private static void refuseOtherStretches(Fabric fabric, Shade shade) throws RefusedException {
        switch (fabric.spread().form()) {
            case SINGLE_LAYER -> {}
            case FOLD_LENGTHWISE, SELVEDGES_TO_MIDDLE, TUBE -> {
                if (shade.crosswise().isPresent()) {
                    throw new RefusedException(
                            "%s keeps left and right of a piece in a band across (shade: crosswise), and lies folded, so that they come from its two halves. Lay it in a single layer, or leave crosswise out of shade."
                                    .formatted(fabric.name()));
                }
            }
            case FOLD_CROSSWISE, PLIES_FACE_UP, PLIES_FACE_TO_FACE ->
                throw new RefusedException(
                        "%s keeps the pieces of a garment together (shade), and lies so that layers above each other are different stretches of it. Lay it in a single layer or folded lengthwise, or leave shade out."
                                .formatted(fabric.name()));
        }
    }

    private void garments(Length extent) throws RefusedException {
        Map<Garment, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < items.size(); i++) {
            for (Garment garment : new LinkedHashSet<>(items.get(i).garments())) {
                groups.computeIfAbsent(garment, key -> new ArrayList<>()).add(i);
            }
        }
        add(groups, Axis.LENGTHWISE, extent);
    }

    /** A piece that a garment has in pairs. */
    private record Mates(Garment garment, String piece) {}

    private void mates(Length extent) throws RefusedException {
        Set<Mates> pairs = Stream.concat(order.bundles().stream(), order.fillers().stream())
                .flatMap(bundle -> bundle.pieces().stream()
                        .filter(cut -> cut.cut().manner() == Cut.Manner.PAIR)
                        .map(cut -> new Mates(bundle.garment(), cut.piece().name())))
                .collect(Collectors.toSet());
        Map<Mates, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < items.size(); i++) {
            for (Garment garment : new LinkedHashSet<>(items.get(i).garments())) {
                Mates mates = new Mates(garment, items.get(i).piece().name());
                if (pairs.contains(mates)) {
                    groups.computeIfAbsent(mates, key -> new ArrayList<>()).add(i);
                }
            }
        }
        add(groups, Axis.CROSSWISE, extent);
    }

    private void add(Map<?, List<Integer>> groups, Axis axis, Length extent) throws RefusedException {
        for (List<Integer> group : groups.values()) {
            if (group.size() > 1) {
                for (int member : group) {
                    refuseTooLarge(member, axis, extent);
                }
                bonds.add(new Bond.Within(group, axis, extent.micrometres()));
            }
        }
    }

    private void refuseTooLarge(int member, Axis axis, Length extent) throws RefusedException {
        Piece piece = items.get(member).piece();
        long least = demands.get(member).domain().orientations().stream()
                .map(orientation -> orientation.apply(piece.outline()).box())
                .mapToLong(box -> axis == Axis.LENGTHWISE ? box.width() : box.height())
                .min()
                .orElse(0);
        if (least > extent.micrometres()) {
            String way = axis.name().toLowerCase(Locale.ROOT);
            throw new RefusedException(
                    "%s is %s mm %s as it lies, and %s keeps %s within %s mm (shade: %s). Allow more there."
                            .formatted(
                                    SpreadRule.named(piece),
                                    least / 1000.0,
                                    way,
                                    order.fabric().name(),
                                    axis == Axis.LENGTHWISE ? "the pieces of a garment" : "left and right of a piece",
                                    extent.millimetres(),
                                    way));
        }
    }
}
