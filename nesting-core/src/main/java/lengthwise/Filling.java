package lengthwise;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import lengthwise.solver.Layout;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * A marker with fillers laid into the room that its pieces leave. No piece of it moves and it gets no longer: one filler
 * after another goes where it finds room, the largest first. So it is a good choice, not always the best one.
 *
 * @param marker the fillers that are laid are in its order; those that found no room are left in the order's fillers
 * @param kinds how many of each kind lie in it, in the order of the order
 */
public record Filling(Marker marker, List<Kind> kinds) {
    /** Sweeps for each filler that is tried; it moves alone. */
    private static final long SWEEPS = 12;

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
            Map<Integer, Pose> poses = laid(marker, joined(pieces.task(), fillers.task()), fillers, search);
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
        List<Bundle> bundles = new ArrayList<>(order.bundles());
        List<Bundle> staysOut = new ArrayList<>();
        for (Bundle filler : order.fillers()) {
            (laid.contains(filler.garment()) ? bundles : staysOut).add(filler);
        }
        MarkerOrder filledOrder = order.withBundles(bundles).withFillers(staysOut);
        Marker filled = new Marker(filledOrder, placements, marker.length());
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

    /** Returns one task of the pieces and, after them, the fillers. */
    private static LayoutTask joined(LayoutTask pieces, LayoutTask fillers) {
        int first = pieces.demands().size();
        List<Demand> demands = new ArrayList<>(pieces.demands());
        demands.addAll(fillers.demands());
        List<Bond> bonds = new ArrayList<>(pieces.bonds());
        for (Bond bond : fillers.bonds()) {
            bonds.add(new Bond.SameTurn(((Bond.SameTurn) bond)
                    .members().stream().map(member -> first + member).toList()));
        }
        return new LayoutTask(pieces.height(), demands, pieces.obstacles(), bonds);
    }

    private static Map<Integer, Pose> laid(Marker marker, LayoutTask task, Ruling.Task fillers, Search search) {
        int first = task.demands().size() - fillers.items().size();
        Map<Integer, Pose> laid = new HashMap<>();
        for (int i = 0; i < first; i++) {
            laid.put(i, marker.placements().get(i).pose());
        }
        Trials trials = new Trials(task, marker.length().micrometres(), search);
        for (List<List<Integer>> alike : largestFirst(task, sets(fillers.items(), first))) {
            for (List<Integer> set : alike) {
                if (!trials.lay(set, laid)) {
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

    /** Tries one set of fillers after another, until the time for all of them is over. */
    private static final class Trials {
        private final LayoutTask task;
        private final long length;
        private final Search search;
        private final Instant start;
        private long sweepsBefore;
        private long sweeps;
        private boolean over;

        Trials(LayoutTask task, long length, Search search) {
            this.task = task;
            this.length = length;
            this.search = search;
            this.start = search.clock().instant();
        }

        /** Adds where a set lies, if it finds room. */
        boolean lay(List<Integer> set, Map<Integer, Pose> laid) {
            if (over || search.cancelled().getAsBoolean()) {
                return false;
            }
            List<Integer> members = new ArrayList<>(new TreeSet<>(laid.keySet()));
            members.addAll(set);
            sweepsBefore += sweeps;
            StopRule brief = StopRule.iterations(SWEEPS * set.size()).or(this::together);
            Search one = new Search(brief, search.seed(), 1, search.clock(), search.cancelled(), event -> {});
            return StripSearch.within(length, OnCloth.part(task, members, laid), one)
                    .map(layout -> add(set, members, layout, laid))
                    .orElse(false);
        }

        private double together(Progress one) {
            sweeps = one.iteration();
            double fraction = search.stop()
                    .fraction(new Progress(
                            sweepsBefore + one.iteration(),
                            sweepsBefore + one.lastImprovement(),
                            one.moves(),
                            Duration.between(start, search.clock().instant()),
                            one.sinceImprovement(),
                            one.bestLength()));
            over = fraction >= 1;
            return fraction;
        }

        private static boolean add(List<Integer> set, List<Integer> members, Layout layout, Map<Integer, Pose> laid) {
            int first = members.size() - set.size();
            for (int i = 0; i < set.size(); i++) {
                laid.put(set.get(i), layout.poses().get(first + i));
            }
            return true;
        }
    }
}
