package lengthwise.solver.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import lengthwise.solver.exact.FewestBars.Bars;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;

/** The rectangles of a task by one of their extents: those tied to the edge first, then from the largest down. */
final class Kinds {
    private static final Comparator<Bars> BY_PATTERN = Comparator.comparing(
            group -> group.pattern().stream().mapToInt(Integer::intValue).toArray(), Arrays::compare);

    private final List<Key> keys;
    private final List<List<Integer>> members;

    private record Key(boolean atEdge, long size) {}

    private Kinds(Map<Key, List<Integer>> members) {
        this.keys = List.copyOf(members.keySet());
        this.members = List.copyOf(members.values());
    }

    static Kinds by(RectangleTask task, ToLongFunction<Item> extent) {
        Map<Key, List<Integer>> members = new TreeMap<>(
                Comparator.comparing(Key::atEdge).thenComparing(Key::size).reversed());
        for (int i = 0; i < task.items().size(); i++) {
            Item item = task.items().get(i);
            members.computeIfAbsent(new Key(item.atEdge(), extent.applyAsLong(item)), key -> new ArrayList<>())
                    .add(i);
        }
        return new Kinds(members);
    }

    int count() {
        return keys.size();
    }

    long extent(int kind) {
        return keys.get(kind).size();
    }

    List<Integer> members(int kind) {
        return members.get(kind);
    }

    /** Returns few bars of a capacity that hold all of them, each size and the capacity grown by a gap. */
    FewestBars.Cut bars(long capacity, long gap) {
        long[] sizes = keys.stream().mapToLong(key -> key.size() + gap).toArray();
        int[] counts = members.stream().mapToInt(List::size).toArray();
        boolean[] alone = new boolean[keys.size()];
        IntStream.range(0, alone.length)
                .forEach(kind -> alone[kind] = keys.get(kind).atEdge());
        return FewestBars.cut(sizes, counts, alone, capacity + gap);
    }

    /** Says where a rectangle lies by its distance along its bar and that of its bar from the first. */
    @FunctionalInterface
    interface Laying {
        Spot at(long along, long across);
    }

    /**
     * Lays all rectangles in bars beside one another. Bars cut alike are neighbours, and equal kinds in different bars
     * where they can be.
     *
     * @param breadth of every bar
     */
    List<Spot> laid(List<Bars> bars, long gap, long breadth, Laying laying) {
        int all = members.stream().mapToInt(List::size).sum();
        List<Spot> spots = new ArrayList<>(Collections.nCopies(all, new Spot(0, 0, 0)));
        int[] used = new int[count()];
        long across = 0;
        for (Bars group : bars.stream().sorted(BY_PATTERN.reversed()).toList()) {
            for (int n = 0; n < group.times(); n++) {
                long along = 0;
                for (int kind = 0; kind < used.length; kind++) {
                    for (int i = 0; i < group.pattern().get(kind); i++) {
                        spots.set(members(kind).get(used[kind]++), laying.at(along, across));
                        along += extent(kind) + gap;
                    }
                }
                across += breadth + gap;
            }
        }
        return spots;
    }
}
