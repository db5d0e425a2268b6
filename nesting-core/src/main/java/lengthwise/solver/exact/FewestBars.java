package lengthwise.solver.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts sizes of a few kinds from as few bars as possible, and with few changes from bar to bar among those.
 *
 * <p>Dynamic programming over what is left of each kind. Some bar of a best solution holds the largest kind left, and
 * nothing more fits into it: other bars can only lose by giving to it. So it is enough to try, for each state, the
 * patterns of such a bar, and each number of bars cut alike; among many states, one bar or as many as can be. Where
 * there are too many, the sizes are put where they fit first, the largest first, and a lower bound is told.
 *
 * <p>Reference: one-dimensional cutting stock; P. Gilmore, R. Gomory, <i>A linear programming approach to the
 * cutting-stock problem</i>, Operations Research 9, 1961, for patterns.
 */
final class FewestBars {
    private static final int MOST_STATES = 1 << 20;
    private static final int FEW_STATES = 1 << 13;
    private static final long STEPS = 30_000_000;
    private static final int GROUP = 1;
    private static final int BAR = 1 << 15;

    private final long[] sizes;
    private final int[] counts;
    private final boolean[] alone;
    private final int[] radix;
    private final int[] cost;
    private final int[] step;
    private final int[] times;
    private final int[] left;
    private final int[] pattern;
    private long steps;

    private FewestBars(long[] sizes, int[] counts, boolean[] alone, int[] radix, int states) {
        this.sizes = sizes;
        this.counts = counts;
        this.alone = alone;
        this.radix = radix;
        this.cost = new int[states];
        this.step = new int[states];
        this.times = new int[states];
        this.left = new int[sizes.length];
        this.pattern = new int[sizes.length];
    }

    /** Some bars cut alike: how many of each kind one of them holds. */
    record Bars(List<Integer> pattern, int times) {
        static Bars of(int[] pattern, int times) {
            return new Bars(Arrays.stream(pattern).boxed().toList(), times);
        }
    }

    /** Bars that hold all, and how many there must be at least: as many, where the best was found. */
    record Cut(List<Bars> bars, int atLeast) {
        int count() {
            return bars.stream().mapToInt(Bars::times).sum();
        }
    }

    /**
     * Returns the bars, alike ones together.
     *
     * @param sizes of the kinds, none above the capacity; those that are alone first, then falling
     * @param alone kinds of which a bar holds one in all
     */
    static Cut cut(long[] sizes, int[] counts, boolean[] alone, long capacity) {
        int[] radix = new int[sizes.length];
        long states = 1;
        for (int kind = 0; kind < sizes.length; kind++) {
            radix[kind] = (int) states;
            states *= counts[kind] + 1;
            if (states > MOST_STATES) {
                return firstFit(sizes, counts, alone, capacity);
            }
        }
        FewestBars search = new FewestBars(sizes, counts, alone, radix, (int) states);
        if (!search.fill(capacity)) {
            return firstFit(sizes, counts, alone, capacity);
        }
        List<Bars> bars = search.bars();
        return new Cut(bars, search.cost[search.cost.length - 1] / BAR);
    }

    private boolean fill(long capacity) {
        for (int state = 1; state < cost.length; state++) {
            cost[state] = Integer.MAX_VALUE;
            int first = -1;
            for (int kind = 0; kind < sizes.length; kind++) {
                left[kind] = state / radix[kind] % (counts[kind] + 1);
                first = first < 0 && left[kind] > 0 ? kind : first;
            }
            Arrays.fill(pattern, 0);
            pattern[first] = 1;
            extend(state, first, capacity - sizes[first], alone[first]);
            if (steps > STEPS) {
                return false;
            }
        }
        return true;
    }

    /** Tries every way to fill the rest of a bar with this kind and those after it. */
    private void extend(int state, int kind, long rest, boolean taken) {
        if (kind == sizes.length) {
            use(state, rest, taken);
            return;
        }
        int before = pattern[kind];
        long room = alone[kind] ? (taken ? 0 : 1) : rest / sizes[kind];
        int most = before + (int) Math.min(sizes[kind] > rest ? 0 : room, left[kind] - before);
        for (int n = most; n >= before; n--) {
            pattern[kind] = n;
            extend(state, kind + 1, rest - (n - before) * sizes[kind], taken || (alone[kind] && n > 0));
        }
        pattern[kind] = before;
    }

    private void use(int state, long rest, boolean taken) {
        steps++;
        int most = Integer.MAX_VALUE;
        int one = 0;
        for (int kind = 0; kind < sizes.length; kind++) {
            if (pattern[kind] < left[kind] && sizes[kind] <= rest && !(alone[kind] && taken)) {
                return;
            }
            if (pattern[kind] > 0) {
                most = Math.min(most, left[kind] / pattern[kind]);
                one += pattern[kind] * radix[kind];
            }
        }
        for (int n = most; n >= 1; n -= cost.length <= FEW_STATES ? 1 : Math.max(1, n - 1)) {
            steps++;
            int total = cost[state - n * one] + n * BAR + GROUP;
            if (total < cost[state]) {
                cost[state] = total;
                step[state] = one;
                times[state] = n;
            }
        }
    }

    private List<Bars> bars() {
        List<Bars> bars = new ArrayList<>();
        for (int state = cost.length - 1; state > 0; state -= times[state] * step[state]) {
            int[] held = new int[sizes.length];
            for (int kind = 0; kind < sizes.length; kind++) {
                held[kind] = step[state] / radix[kind] % (counts[kind] + 1);
            }
            bars.add(Bars.of(held, times[state]));
        }
        return bars;
    }

    private static Cut firstFit(long[] sizes, int[] counts, boolean[] alone, long capacity) {
        List<int[]> patterns = new ArrayList<>();
        List<Long> rests = new ArrayList<>();
        int singles = 0;
        long total = 0;
        for (int kind = 0; kind < sizes.length; kind++) {
            singles += alone[kind] ? counts[kind] : 0;
            total += counts[kind] * sizes[kind];
            int open = 0;
            for (int n = 0; n < counts[kind]; n++) {
                while (open < rests.size() && (alone[kind] || rests.get(open) < sizes[kind])) {
                    open++;
                }
                if (open == rests.size()) {
                    patterns.add(new int[sizes.length]);
                    rests.add(capacity);
                }
                patterns.get(open)[kind]++;
                rests.set(open, rests.get(open) - sizes[kind]);
            }
        }
        int atLeast = (int) Math.max(singles, (total + capacity - 1) / capacity);
        return new Cut(patterns.stream().map(held -> Bars.of(held, 1)).toList(), atLeast);
    }
}
