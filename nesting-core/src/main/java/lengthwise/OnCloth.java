package lengthwise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import lengthwise.geometry.Pose;
import lengthwise.model.Length;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.Layout;
import lengthwise.solver.Search;
import lengthwise.solver.SearchResult;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * What of a layout that is too long lies on the cloth: everything that ends before the cloth does stays where it is, and
 * the rest goes one after another, the largest first, wherever there is room left. Then what lies is laid anew, shorter,
 * and the rest is tried again. So it is a good choice, not always the best one.
 *
 * @param poses of what lies on the cloth, by the index of its demand
 * @param staysOut the other indices, in order
 */
record OnCloth(Map<Integer, Pose> poses, List<Integer> staysOut) {
    /** Sweeps for each piece that is tried; its first layout is there before any of them. */
    private static final long SWEEPS = 5;

    private static final int ROUNDS = 3;

    /** A layout anew takes one part in so many of the budget. */
    private static final double SHARE = 4;

    OnCloth {
        poses = Map.copyOf(poses);
        staysOut = List.copyOf(staysOut);
    }

    static OnCloth of(LayoutTask task, Layout layout, Length room, Search search) {
        List<Demand> demands = task.demands();
        Map<Integer, Pose> laid = new HashMap<>();
        List<Integer> waiting = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            Pose pose = layout.poses().get(i);
            if (pose.apply(demands.get(i).outline()).box().maxX() <= room.micrometres()) {
                laid.put(i, pose);
            } else {
                waiting.add(i);
            }
        }
        OnCloth best = with(task, laid, largestFirst(task, waiting), room, search);
        for (int round = 0; round < ROUNDS && !best.staysOut.isEmpty(); round++) {
            OnCloth again = with(task, best.shorter(task, search), best.largestFirst(task), room, search);
            if (again.staysOut.size() >= best.staysOut.size()) {
                break;
            }
            best = again;
        }
        return best;
    }

    private List<Integer> largestFirst(LayoutTask task) {
        return largestFirst(task, staysOut);
    }

    private static List<Integer> largestFirst(LayoutTask task, List<Integer> indices) {
        return indices.stream()
                .sorted(Comparator.comparingLong(
                                (Integer i) -> -task.demands().get(i).outline().doubleArea())
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
    }

    /** Returns a layout of what lies on the cloth that is as short as a part of the search's budget makes it. */
    private Map<Integer, Pose> shorter(LayoutTask task, Search search) {
        List<Integer> members = List.copyOf(new TreeSet<>(poses.keySet()));
        Search part = new Search(
                progress -> SHARE * search.stop().fraction(progress),
                search.seed(),
                search.workers(),
                search.clock(),
                search.cancelled(),
                event -> {});
        Map<Integer, Pose> laid = new HashMap<>();
        if (StripSearch.solve(part(task, members, Map.of()), part) instanceof SearchResult.Solved solved
                && solved.layout().length() <= end(task)) {
            for (int i = 0; i < members.size(); i++) {
                laid.put(members.get(i), solved.layout().poses().get(i));
            }
            return laid;
        }
        return poses;
    }

    private long end(LayoutTask task) {
        return poses.entrySet().stream()
                .mapToLong(laid -> laid.getValue()
                        .apply(task.demands().get(laid.getKey()).outline())
                        .box()
                        .maxX())
                .max()
                .orElse(0);
    }

    /** Lays, one after another, what finds a place beside what is laid already on cloth of some length. */
    static OnCloth with(
            LayoutTask task, Map<Integer, Pose> already, List<Integer> waiting, Length room, Search search) {
        Map<Integer, Pose> laid = new HashMap<>(already);
        List<Integer> staysOut = new ArrayList<>();
        for (int next : waiting) {
            if (search.cancelled().getAsBoolean()) {
                staysOut.add(next);
                continue;
            }
            List<Integer> members = new ArrayList<>(new TreeSet<>(laid.keySet()));
            members.add(next);
            Search brief = new Search(
                    StopRule.iterations(SWEEPS), search.seed(), 1, search.clock(), search.cancelled(), event -> {});
            SearchResult result = StripSearch.solve(part(task, members, laid), brief);
            if (result instanceof SearchResult.Solved solved && solved.layout().length() <= room.micrometres()) {
                laid.put(next, solved.layout().poses().get(members.size() - 1));
            } else {
                staysOut.add(next);
            }
        }
        staysOut.sort(Comparator.naturalOrder());
        return new OnCloth(laid, staysOut);
    }

    /** Returns the layout of the whole task, where nothing stays out. */
    Layout layout(LayoutTask task) {
        List<Pose> all = new ArrayList<>();
        for (int i = 0; i < task.demands().size(); i++) {
            all.add(Objects.requireNonNull(poses.get(i)));
        }
        return new Layout(all, end(task));
    }

    /** Returns the task of some demands, of which those that are laid stay where they are. */
    static LayoutTask part(LayoutTask task, List<Integer> members, Map<Integer, Pose> laid) {
        List<Demand> demands = members.stream()
                .map(i -> {
                    Demand demand = task.demands().get(i);
                    Pose pose = laid.get(i);
                    return pose == null ? demand : demand.laidAt(pose);
                })
                .toList();
        List<Bond> bonds = new ArrayList<>();
        for (Bond bond : task.bonds()) {
            // what is laid is bound by others only to lie at its turn, which it does
            boolean lattices = bond instanceof Bond.SamePhase;
            bond.renumbered(member -> Optional.of(members.indexOf(member))
                            .filter(i -> i >= 0 && !(lattices && laid.containsKey(member))))
                    .ifPresent(bonds::add);
        }
        return task.with(demands, task.obstacles(), bonds);
    }
}
