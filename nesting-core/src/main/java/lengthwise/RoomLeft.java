package lengthwise;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import lengthwise.geometry.Pose;
import lengthwise.model.Length;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.Layout;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * The room that laid pieces leave on some length of cloth. One set of pieces after another is tried in it, until the time
 * for all of them is over; what is laid stays.
 */
final class RoomLeft {
    /** Sweeps for each piece that is tried; it moves alone. */
    static final long SWEEPS = 12;

    private final LayoutTask task;
    private final long length;
    private final Series series;

    /** @param search its stop rule is asked for all sets together */
    RoomLeft(LayoutTask task, Length length, Search search) {
        this.task = task;
        this.length = length.micrometres();
        this.series = new Series(search);
    }

    /**
     * Adds where a set lies, if it finds room.
     *
     * @param set indices of demands that are laid together or not at all
     * @param laid poses of what is laid, by the index of its demand
     */
    boolean lay(List<Integer> set, Map<Integer, Pose> laid) {
        if (series.isOver(1)) {
            return false;
        }
        List<Integer> members = new ArrayList<>(new TreeSet<>(laid.keySet()));
        int first = members.size();
        members.addAll(set);
        Search one = series.next(StopRule.iterations(SWEEPS * set.size()));
        Optional<Layout> found = StripSearch.within(length, OnCloth.part(task, members, laid), one);
        for (int i = 0; i < set.size() && found.isPresent(); i++) {
            laid.put(set.get(i), found.get().poses().get(first + i));
        }
        return found.isPresent();
    }
}
