package lengthwise.plan.lays;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * The fewest plies that two lays take, for an order in one colour whose fabric depends on the plies alone: every pair of
 * heights is tried, the fewest plies first, and for each pair the sizes share the markers by dynamic programming: for so
 * many garments in the one marker, the fewest in the other.
 *
 * <p>Exact, and for many sizes much quicker than the constraint model, which sees many equal ways to share.
 */
final class TwoLays {
    private final CutOrder order;
    private final LayLimits limits;

    private TwoLays(CutOrder order, LayLimits limits) {
        this.order = order;
        this.limits = limits;
    }

    /** Says whether it can tell: one colour, no table to fit, and garments that cost the same fabric in every plan. */
    static boolean suit(CutOrder order, LayLimits limits, PlyLength lengths) {
        boolean exact = limits.over() == 0 && limits.under() == 0;
        boolean free = lengths.garments().stream().allMatch(Length.ZERO::equals);
        return order.colours().size() == 1 && limits.table().isEmpty() && (exact || free);
    }

    /** Returns a plan of two lays with the fewest plies, from some number of plies on; nothing if none is possible. */
    static Optional<List<Lay>> of(CutOrder order, LayLimits limits, int leastPlies) {
        TwoLays two = new TwoLays(order, limits);
        for (int plies = Math.max(2, leastPlies); plies <= 2 * limits.plies(); plies++) {
            for (int high = (plies + 1) / 2; high <= Math.min(limits.plies(), plies - limits.leastPlies()); high++) {
                Optional<List<Lay>> found = two.at(high, plies - high);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    private Optional<List<Lay>> at(int high, int low) {
        int sizes = order.sizes().size();
        int room = limits.garments();
        int[] fewest = new int[room + 1];
        Arrays.fill(fewest, Integer.MAX_VALUE);
        fewest[0] = 0;
        int[][] chosen = new int[sizes][room + 1];
        for (int size = 0; size < sizes; size++) {
            int[] next = new int[room + 1];
            Arrays.fill(next, Integer.MAX_VALUE);
            for (int used = 0; used <= room; used++) {
                for (int more = 0; fewest[used] <= room && used + more <= room; more++) {
                    int other = other(size, more, high, low);
                    if (other >= 0 && fewest[used] + other < next[used + more]) {
                        next[used + more] = fewest[used] + other;
                        chosen[size][used + more] = more;
                    }
                }
            }
            fewest = next;
        }
        for (int used = 0; used <= room; used++) {
            if (fewest[used] <= room) {
                return Optional.of(lays(high, low, chosen, used));
            }
        }
        return Optional.empty();
    }

    /** Returns the fewest garments of a size in the lower lay beside some in the higher one, or −1 if none are right. */
    private int other(int size, int inHigh, int high, int low) {
        int wanted = order.garments(0, size);
        int left = limits.fewest(wanted) - inHigh * high;
        int inLow = left <= 0 ? 0 : (left + low - 1) / low;
        return inHigh * high + inLow * low <= limits.most(wanted) ? inLow : -1;
    }

    private List<Lay> lays(int high, int low, int[][] chosen, int used) {
        int sizes = order.sizes().size();
        List<Integer> inHigh = new ArrayList<>();
        List<Integer> inLow = new ArrayList<>();
        int left = used;
        for (int size = sizes - 1; size >= 0; size--) {
            int garments = chosen[size][left];
            left -= garments;
            inHigh.add(0, garments);
            inLow.add(0, other(size, garments, high, low));
        }
        return List.of(new Lay(inHigh, List.of(high)), new Lay(inLow, List.of(low)));
    }
}
