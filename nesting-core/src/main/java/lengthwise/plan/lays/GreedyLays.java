package lengthwise.plan.lays;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import lengthwise.model.Length;

/**
 * A first plan: lay by lay, each the one that takes most garments off what is still wanted, cutting nothing that is not. It
 * finds a plan for every order that single garments in single plies can fill, and is rarely a good one.
 */
final class GreedyLays {
    private final CutOrder order;
    private final LayLimits limits;
    private final PlyLength lengths;
    private final int[][] left;

    private GreedyLays(CutOrder order, LayLimits limits, PlyLength lengths) {
        this.order = order;
        this.limits = limits;
        this.lengths = lengths;
        this.left = order.garments().stream()
                .map(colour -> colour.stream().mapToInt(limits::fewest).toArray())
                .toArray(int[][]::new);
    }

    /** Returns the lays; none where some of the order is left that no lay within the limits takes. */
    static List<Lay> of(CutOrder order, LayLimits limits, PlyLength lengths) {
        GreedyLays greedy = new GreedyLays(order, limits, lengths);
        List<Lay> lays = new ArrayList<>();
        while (greedy.isWanted()) {
            Lay next = greedy.best();
            if (next.allGarments() == 0 || next.allPlies() < limits.leastPlies()) {
                return List.of();
            }
            lays.add(next);
            greedy.take(next);
        }
        lays.sort(Comparator.comparingInt(Lay::allPlies).reversed());
        return lays;
    }

    private boolean isWanted() {
        return IntStream.range(0, left.length)
                .anyMatch(c -> IntStream.of(left[c]).anyMatch(count -> count > 0));
    }

    private void take(Lay lay) {
        for (int c = 0; c < left.length; c++) {
            for (int s = 0; s < left[c].length; s++) {
                left[c][s] -= lay.cut(c, s);
            }
        }
    }

    /** Tries every number of plies of every colour for the ratio, and what the other colours then can have. */
    private Lay best() {
        Lay best = new Lay(List.of(), List.of());
        long most = 0;
        for (int c = 0; c < left.length; c++) {
            int highest = Math.min(limits.plies(), IntStream.of(left[c]).max().orElse(0));
            for (int plies = 1; plies <= highest; plies++) {
                Lay lay = lay(c, plies);
                long garments = (long) lay.allGarments() * lay.allPlies();
                if (garments > most) {
                    most = garments;
                    best = lay;
                }
            }
        }
        return best;
    }

    private Lay lay(int leading, int plies) {
        int[] ratio = new int[order.sizes().size()];
        List<Integer> mostWanted = IntStream.range(0, ratio.length)
                .boxed()
                .sorted(Comparator.comparingInt((Integer s) -> -left[leading][s]))
                .toList();
        int room = limits.garments();
        for (int size : mostWanted) {
            while (room > 0 && left[leading][size] >= plies * (ratio[size] + 1) && fitsTable(ratio, size)) {
                ratio[size]++;
                room--;
            }
        }
        List<Integer> byColour = new ArrayList<>();
        int free = limits.plies() - plies;
        for (int c = 0; c < left.length; c++) {
            int can = c == leading ? plies : Math.min(free, mostPlies(c, ratio));
            free -= c == leading ? 0 : can;
            byColour.add(can);
        }
        return new Lay(IntStream.of(ratio).boxed().toList(), byColour);
    }

    private int mostPlies(int colour, int[] ratio) {
        return IntStream.range(0, ratio.length)
                .filter(size -> ratio[size] > 0)
                .map(size -> left[colour][size] / ratio[size])
                .min()
                .orElse(0);
    }

    private boolean fitsTable(int[] ratio, int more) {
        List<Integer> tried = IntStream.range(0, ratio.length)
                .map(size -> ratio[size] + (size == more ? 1 : 0))
                .boxed()
                .toList();
        Length length = lengths.of(tried);
        return limits.table().map(table -> length.compareTo(table) <= 0).orElse(true);
    }
}
