package lengthwise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.geometry.Pose;
import lengthwise.model.Bundle;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Item;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.FillerRule;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Ruling;
import lengthwise.solver.Search;

/**
 * A marker with fillers laid into the room that its pieces leave. No piece of it moves and it gets no longer: one filler
 * after another goes where it finds room, the largest first. So it is a good choice, not always the best one.
 *
 * @param marker with the fillers behind the pieces
 * @param kinds how many of each kind lie in it, in the order of the order
 */
public record Filling(Marker marker, List<Kind> kinds) {
    public Filling {
        kinds = List.copyOf(kinds);
    }

    /**
     * How many fillers of one kind are laid.
     *
     * @param atMost how many the order allows
     */
    public record Kind(String piece, int laid, int atMost) {}

    /**
     * Lays the fillers of a marker's order into it.
     *
     * @param marker one that {@link MarkerMaking} made, so that its pieces are in the order of the rules
     * @param search its stop rule is asked for all fillers together
     * @throws IllegalStateException if the marker that comes of it does not pass the check, a fault of ours
     */
    public static Filling of(Marker marker, Search search) {
        MarkerOrder order = marker.order();
        if (order.fillers().isEmpty()) {
            return new Filling(marker, List.of());
        }
        Set<Garment> laid = new TreeSet<>(Comparator.comparingInt(Garment::number));
        List<Placement> placements = new ArrayList<>(marker.placements());
        if (FillerRule.of(order) instanceof Ruling.Task fillers
                && Ruling.of(order) instanceof Ruling.Task pieces
                && marker.length().micrometres() > 0) {
            int first = pieces.items().size();
            Map<Integer, Pose> poses =
                    laid(marker, joined(inPhase(pieces.task(), marker), fillers.task()), fillers, search);
            for (int i = 0; i < fillers.items().size(); i++) {
                Pose pose = poses.get(first + i);
                if (pose != null) {
                    Item item = fillers.items().get(i);
                    laid.addAll(item.garments());
                    placements.add(new Placement(item, pose));
                }
            }
        }
        return filled(marker, placements, laid);
    }

    private static Filling filled(Marker marker, List<Placement> placements, Set<Garment> laid) {
        MarkerOrder order = marker.order();
        Marker filled = new Marker(order, placements, marker.length());
        List<Violation> violations = MarkerCheck.violations(filled);
        if (!violations.isEmpty()) {
            throw new IllegalStateException("The marker for %s with its fillers did not pass the check: %s"
                    .formatted(order.fabric().name(), violations.get(0).sentence()));
        }
        Map<List<CutPiece>, List<Bundle>> kinds = order.fillers().stream()
                .collect(Collectors.groupingBy(Bundle::pieces, LinkedHashMap::new, Collectors.toList()));
        return new Filling(
                filled,
                kinds.entrySet().stream()
                        .map(kind -> new Kind(
                                kind.getKey().get(0).piece().name(),
                                (int) kind.getValue().stream()
                                        .filter(filler -> laid.contains(filler.garment()))
                                        .count(),
                                kind.getValue().size()))
                        .toList());
    }

    private static LayoutTask inPhase(LayoutTask pieces, Marker marker) {
        return pieces.inPhaseOf(
                marker.placements().stream().map(Placement::pose).toList());
    }

    /** Returns one task of the pieces and, after them, the fillers. */
    private static LayoutTask joined(LayoutTask pieces, LayoutTask fillers) {
        int first = pieces.demands().size();
        List<Demand> demands = new ArrayList<>(pieces.demands());
        demands.addAll(fillers.demands());
        List<Bond> bonds = new ArrayList<>(pieces.bonds());
        for (Bond bond : fillers.bonds()) {
            bond.renumbered(member -> Optional.of(first + member)).ifPresent(bonds::add);
        }
        return pieces.with(demands, pieces.obstacles(), bonds);
    }

    private static Map<Integer, Pose> laid(Marker marker, LayoutTask task, Ruling.Task fillers, Search search) {
        int first = task.demands().size() - fillers.items().size();
        Map<Integer, Pose> laid = new HashMap<>();
        for (int i = 0; i < first; i++) {
            laid.put(i, marker.placements().get(i).pose());
        }
        RoomLeft room = new RoomLeft(task, marker.length(), search);
        for (List<List<Integer>> alike : largestFirst(task, sets(fillers.items(), first))) {
            for (List<Integer> set : alike) {
                if (!room.lay(set, laid)) {
                    break;
                }
            }
        }
        return laid;
    }

    /** Returns the fillers that belong together, all that share a unit: of a pair no half is laid. */
    private static List<List<Integer>> sets(List<Item> items, int first) {
        List<List<Integer>> sets = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            Set<Garment> units = Set.copyOf(items.get(i).garments());
            List<Integer> joined = new ArrayList<>();
            for (List<Integer> set : List.copyOf(sets)) {
                if (set.stream()
                        .flatMap(other -> items.get(other - first).garments().stream())
                        .anyMatch(units::contains)) {
                    sets.remove(set);
                    joined.addAll(set);
                }
            }
            joined.add(first + i);
            sets.add(joined);
        }
        return sets;
    }

    /** Gathers sets that are alike: where one finds no room, the next does not either. */
    private static List<List<List<Integer>>> largestFirst(LayoutTask task, List<List<Integer>> sets) {
        Map<List<Demand>, List<List<Integer>>> alike = sets.stream()
                .collect(Collectors.groupingBy(
                        set -> set.stream().map(task.demands()::get).toList(),
                        LinkedHashMap::new,
                        Collectors.toList()));
        return alike.entrySet().stream()
                .sorted(Comparator.comparingLong(kind -> -kind.getKey().stream()
                        .mapToLong(demand -> demand.outline().doubleArea())
                        .max()
                        .orElse(0)))
                .map(Map.Entry::getValue)
                .toList();
    }
}
