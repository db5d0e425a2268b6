package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.Cut;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * A piece that may be off its grain by some angle may also lie tilted by it, or by half of it, either way. Left and right of
 * a piece are tilted equally and oppositely (textbook practice: Vilumsone-Nemes, Industrial Cutting of Textile Materials,
 * p. 229).
 */
final class TiltRule {
    private TiltRule() {}

    /** Returns the domain with all that the tolerance of the piece lets it lie like besides, untilted ways first. */
    static PlacementDomain domain(Item item, MarkerOrder order, PlacementDomain domain) throws RefusedException {
        Piece piece = item.piece();
        if (order.lyingOf(piece.name()).tolerance().isEmpty()) {
            return domain;
        }
        GrainTolerance tolerance = order.lyingOf(piece.name()).tolerance().get();
        refuseOthers(piece, order, domain.positions());
        int most = (int) (1e6 * tolerance.degreesOf(piece));
        List<Orientation> orientations = new ArrayList<>(domain.orientations());
        for (int tilt : new int[] {most, -most, most / 2, -most / 2}) {
            domain.orientations().forEach(way -> orientations.add(way.tilted(tilt)));
        }
        return new PlacementDomain(orientations, domain.positions());
    }

    private static void refuseOthers(Piece piece, MarkerOrder order, Positions positions) throws RefusedException {
        Fabric fabric = order.fabric();
        if (piece.turning() != Piece.Turning.ALONG_GRAIN) {
            throw refused(piece, fabric, "it is cut on the bias or runs either way");
        }
        if (piece.foldEdge().isPresent()) {
            throw refused(piece, fabric, "it lies on the fold. Lay this fabric in a single layer");
        }
        if (positions instanceof Positions.Lattice) {
            throw refused(piece, fabric, "it is matched to the print");
        }
        if (positions instanceof Positions.Cells) {
            throw refused(piece, fabric, "it minds the motifs of the print");
        }
        if (order.lyingOf(piece.name()).border().isPresent()) {
            throw refused(piece, fabric, "it is keyed to a border");
        }
        if (order.lyingOf(piece.name()).onSelvedge()) {
            throw refused(piece, fabric, "its edge may lie on the selvedge");
        }
    }

    private static RefusedException refused(Piece piece, Fabric fabric, String why) {
        return new RefusedException(
                "%s may be tilted off its grain (grain-tolerance) on %s, but %s; or leave the tolerance out."
                        .formatted(SpreadRule.named(piece), fabric.name(), why));
    }

    /** Returns the bonds that tilt left and right of a piece of a garment alike. */
    static List<Bond> bonds(List<Item> items, MarkerOrder order) {
        Map<Mates, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < items.size(); i++) {
            String name = items.get(i).piece().name();
            for (Garment garment : new LinkedHashSet<>(items.get(i).garments())) {
                if (order.lyingOf(name).tolerance().isPresent() && isPair(order, garment, name)) {
                    groups.computeIfAbsent(new Mates(garment, name), key -> new ArrayList<>())
                            .add(i);
                }
            }
        }
        return joined(groups);
    }

    private record Mates(Garment garment, String piece) {}

    private static boolean isPair(MarkerOrder order, Garment garment, String name) {
        return order.bundles().stream()
                .filter(bundle -> bundle.garment().equals(garment))
                .flatMap(bundle -> bundle.pieces().stream())
                .anyMatch(cut -> cut.piece().name().equals(name) && cut.cut().manner() == Cut.Manner.PAIR);
    }

    /** A contour that serves two garments joins what is bound for either. */
    private static List<Bond> joined(Map<Mates, List<Integer>> groups) {
        List<LinkedHashSet<Integer>> sets = new ArrayList<>();
        for (List<Integer> group : groups.values()) {
            LinkedHashSet<Integer> all = new LinkedHashSet<>(group);
            for (LinkedHashSet<Integer> set : List.copyOf(sets)) {
                if (set.stream().anyMatch(group::contains)) {
                    sets.remove(set);
                    all.addAll(set);
                }
            }
            sets.add(all);
        }
        return sets.stream()
                .filter(set -> set.size() > 1)
                .<Bond>map(set -> new Bond.SameTilt(set.stream().sorted().toList()))
                .toList();
    }

    /** Returns the task where the mates of what is laid already are tilted as that is. */
    static LayoutTask asLaid(LayoutTask task) {
        List<Demand> demands = new ArrayList<>(task.demands());
        List<Bond> bonds = new ArrayList<>();
        for (Bond bond : task.bonds()) {
            Optional<Integer> laid = bond instanceof Bond.SameTilt
                    ? bond.members().stream()
                            .filter(i -> isLaid(demands.get(i)))
                            .findFirst()
                    : Optional.empty();
            if (laid.isEmpty()) {
                bonds.add(bond);
                continue;
            }
            int tilt = demands.get(laid.get()).domain().orientations().get(0).tilt();
            bond.members().stream()
                    .filter(i -> !isLaid(demands.get(i)))
                    .forEach(i -> demands.set(i, only(demands.get(i), tilt)));
        }
        return task.with(demands, task.obstacles(), bonds);
    }

    /** Returns the task where nothing is tilted but what is laid already, and its mates. */
    static LayoutTask untilted(LayoutTask task) {
        return task.with(
                task.demands().stream().map(demand -> only(demand, 0)).toList(),
                task.obstacles(),
                task.bonds().stream()
                        .filter(bond -> !(bond instanceof Bond.SameTilt))
                        .toList());
    }

    private static boolean isLaid(Demand demand) {
        return demand.domain().positions() instanceof Positions.Laid;
    }

    /** Returns the demand at one tilt, where it may have that. */
    private static Demand only(Demand demand, int tilt) {
        List<Orientation> kept = demand.domain().orientations().stream()
                .filter(way -> way.tilt() == tilt)
                .toList();
        return kept.isEmpty()
                ? demand
                : new Demand(
                        demand.outline(),
                        new PlacementDomain(kept, demand.domain().positions()),
                        demand.gap());
    }
}
