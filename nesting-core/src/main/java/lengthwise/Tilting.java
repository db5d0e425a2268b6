package lengthwise;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import lengthwise.geometry.Pose;
import lengthwise.model.Length;
import lengthwise.rules.Bond;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Ruling;
import lengthwise.solver.Layout;
import lengthwise.solver.Search;
import lengthwise.solver.SearchResult;
import lengthwise.solver.StripSearch;

/**
 * Pieces that may be off their grain are laid on it first. Then a search goes on from there with tilts; its layout is taken
 * only where it is shorter, and of its tilts only those that are needed: each tilted piece is tried on its grain again.
 */
final class Tilting {
    /** Shares of the budget. */
    private static final double ON_GRAIN = 0.6;

    private static final double TILTED = 0.3;
    private static final double BACK_ON_GRAIN = 0.1;

    /** What is called nothing, in micrometres: less than hands can cut. */
    private static final long NOTHING = 1_000;
    /** More pieces are laid section by section, each by itself: tilts are not tried there. */
    private static final int MOST_PIECES = 199;

    private Tilting() {}

    /** Says whether tilts are tried. */
    static boolean isTried(Ruling.Task ruled) {
        return ruled.tilted().isPresent() && ruled.items().size() <= MOST_PIECES;
    }

    /** Says whether a known layout has tilts already, so that the search goes on with them. */
    static boolean isTilted(Ruling.Task ruled, Optional<Layout> known) {
        return ruled.tilted().isPresent()
                && known.isPresent()
                && known.get().poses().stream()
                        .anyMatch(pose -> pose.orientation().isTilted());
    }

    /** Returns the search for pieces on their grain. */
    static Search onGrain(Search search) {
        return search.stoppedBy(search.stop().share(ON_GRAIN));
    }

    /** Returns a layout with tilts that is shorter than one on grain, or else that one. */
    static Layout of(Ruling.Task ruled, Layout onGrain, Search search) {
        LayoutTask tilted = ruled.tilted().orElseThrow();
        Search part = search.stoppedBy(search.stop().share(TILTED));
        return StripSearch.solve(tilted, part, Optional.of(onGrain)) instanceof SearchResult.Solved solved
                        && solved.layout().length() <= onGrain.length() - NOTHING
                ? backOnGrain(ruled.task(), tilted, solved.layout(), search)
                : onGrain;
    }

    private static Layout backOnGrain(LayoutTask onGrain, LayoutTask tilted, Layout layout, Search search) {
        Map<Integer, Pose> laid = new HashMap<>();
        for (int i = 0; i < layout.poses().size(); i++) {
            laid.put(i, layout.poses().get(i));
        }
        RoomLeft room = new RoomLeft(
                onGrain,
                new Length(layout.length()),
                search.stoppedBy(search.stop().share(BACK_ON_GRAIN)));
        Set<Integer> tried = new HashSet<>();
        for (int i = 0; i < layout.poses().size(); i++) {
            if (layout.poses().get(i).orientation().isTilted() && !tried.contains(i)) {
                List<Integer> mates = mates(tilted, i);
                tried.addAll(mates);
                Map<Integer, Pose> others = new HashMap<>(laid);
                mates.forEach(others::remove);
                if (room.lay(mates, others)) {
                    laid.putAll(others);
                }
            }
        }
        List<Pose> poses = new ArrayList<>();
        for (int i = 0; i < layout.poses().size(); i++) {
            poses.add(Objects.requireNonNull(laid.get(i)));
        }
        return new Layout(poses, layout.length());
    }

    private static List<Integer> mates(LayoutTask task, int demand) {
        return task.bonds().stream()
                .filter(bond -> bond instanceof Bond.SameTilt && bond.members().contains(demand))
                .map(Bond::members)
                .findFirst()
                .orElse(List.of(demand));
    }
}
