package lengthwise;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import lengthwise.geometry.Pose;
import lengthwise.model.Length;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.Layout;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * The room that laid pieces leave on some length of cloth. One set of pieces after another is tried in it, until the time
 * for all of them is over; what is laid stays.
 */
final class RoomLeft {
    /** Sweeps for each piece that is tried; it moves alone. */
    private static final long SWEEPS = 12;

    private final LayoutTask task;
    private final long length;
    private final Search search;
    private final Instant start;
    private long sweepsBefore;
    private long sweeps;
    private boolean over;

    /** @param search its stop rule is asked for all sets together */
    RoomLeft(LayoutTask task, Length length, Search search) {
        this.task = task;
        this.length = length.micrometres();
        this.search = search;
        this.start = search.clock().instant();
    }

    /**
     * Adds where a set lies, if it finds room.
     *
     * @param set indices of demands that are laid together or not at all
     * @param laid poses of what is laid, by the index of its demand
     */
    boolean lay(List<Integer> set, Map<Integer, Pose> laid) {
        if (over || search.cancelled().getAsBoolean()) {
            return false;
        }
        List<Integer> members = new ArrayList<>(new TreeSet<>(laid.keySet()));
        int first = members.size();
        members.addAll(set);
        sweepsBefore += sweeps;
        StopRule brief = StopRule.iterations(SWEEPS * set.size()).or(this::together);
        Search one = new Search(brief, search.seed(), 1, search.clock(), search.cancelled(), event -> {});
        Optional<Layout> found = StripSearch.within(length, OnCloth.part(task, members, laid), one);
        for (int i = 0; i < set.size() && found.isPresent(); i++) {
            laid.put(set.get(i), found.get().poses().get(first + i));
        }
        return found.isPresent();
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
}
