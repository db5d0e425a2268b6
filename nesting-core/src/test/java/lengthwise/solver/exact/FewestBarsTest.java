package lengthwise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lengthwise.solver.exact.FewestBars.Bars;
import lengthwise.solver.exact.FewestBars.Cut;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FewestBarsTest {
    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    /** Ties of a swim set, by hand: 100 + 46 fills 146; four bars hold 106, four hold the eleven 46 that are left. */
    @Test
    void tiesOnCloth() {
        Cut cut = cut(new long[] {1060, 1000, 460}, new int[] {4, 3, 14}, 1460);
        assertThat(cut.count()).isEqualTo(11);
        assertThat(cut.atLeast()).isEqualTo(11);
        assertThat(cut.bars()).hasSize(4);
    }

    /** By hand: three sizes that must lie alone take a bar each, whatever room is left; others fill it. */
    @Test
    void whatLiesAloneTakesABarEach() {
        Cut cut = FewestBars.cut(new long[] {30, 20}, new int[] {3, 9}, new boolean[] {true, false}, 100);
        assertThat(cut.count()).isEqualTo(3);
        assertThat(cut.bars()).hasSize(1);
    }

    @Test
    void manyOfOneSizeTakeAFullBarOftenAndARest() {
        Cut cut = cut(new long[] {300}, new int[] {2_000}, 1_000);
        assertThat(cut.count()).isEqualTo(667);
        assertThat(cut.bars()).hasSize(2);
    }

    /** By hand: 100 rib ties alone in their rows, with 3 mm between ties, and 200 neck ties by threes. */
    @Test
    void aHundredGarments() {
        Cut cut = cut(new long[] {1063, 1003, 463}, new int[] {50, 50, 200}, 1463);
        assertThat(cut.count()).isEqualTo(167);
        assertThat(cut.atLeast()).isEqualTo(167);
    }

    /** Sizes 10 to 120, a hundred of each: too many states; they happen to fill 60 bars without a rest. */
    @Test
    void tooManyStatesAreFilledByFirstFit() {
        int[] counts = new int[12];
        Arrays.fill(counts, 100);
        long[] sizes = LongStream.rangeClosed(1, 12).map(i -> 130 - 10 * i).toArray();
        Cut cut = cut(sizes, counts, 1_300);
        assertThat(cut.count()).isEqualTo(60);
        assertThat(cut.atLeast()).isEqualTo(60);
    }

    /** Against a search over all ways to put the sizes into bars one by one. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noSearchFindsFewer(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int kinds = random.nextInt(1, 4);
        long[] sizes = random.longs(kinds, 10, 60).sorted().toArray();
        long[] falling =
                IntStream.range(0, kinds).mapToLong(i -> sizes[kinds - 1 - i]).toArray();
        int[] counts = random.ints(kinds, 1, 4).toArray();
        boolean[] alone = new boolean[kinds];
        alone[0] = random.nextInt(3) == 0;
        Cut cut = FewestBars.cut(falling, counts, alone, 100);
        int[] held = new int[kinds];
        for (Bars group : cut.bars()) {
            long sum = 0;
            for (int kind = 0; kind < kinds; kind++) {
                held[kind] += group.times() * group.pattern().get(kind);
                sum += group.pattern().get(kind) * falling[kind];
            }
            assertThat(sum).isLessThanOrEqualTo(100);
            assertThat(alone[0] && group.pattern().get(0) > 1).isFalse();
        }
        assertThat(held).isEqualTo(counts);
        List<Integer> singles = new ArrayList<>();
        for (int kind = 0; kind < kinds; kind++) {
            for (int n = 0; n < counts[kind]; n++) {
                singles.add(kind);
            }
        }
        assertThat(cut.atLeast()).isEqualTo(cut.count());
        assertThat(cut.count()).isEqualTo(byTrying(falling, alone, singles, 0, new ArrayList<>()));
    }

    private static int byTrying(long[] sizes, boolean[] alone, List<Integer> singles, int next, List<long[]> bars) {
        if (next == singles.size()) {
            return bars.size();
        }
        int kind = singles.get(next);
        int least = Integer.MAX_VALUE;
        for (int i = 0; i <= bars.size(); i++) {
            if (i == bars.size()) {
                bars.add(new long[2]);
                bars.get(i)[0] += sizes[kind];
                bars.get(i)[1] += alone[kind] ? 1 : 0;
                least = Math.min(least, byTrying(sizes, alone, singles, next + 1, bars));
                bars.remove(i);
                break;
            }
            long[] bar = bars.get(i);
            if (bar[0] + sizes[kind] <= 100 && !(alone[kind] && bar[1] > 0)) {
                bar[0] += sizes[kind];
                bar[1] += alone[kind] ? 1 : 0;
                least = Math.min(least, byTrying(sizes, alone, singles, next + 1, bars));
                bar[0] -= sizes[kind];
                bar[1] -= alone[kind] ? 1 : 0;
            }
        }
        return least;
    }

    private static Cut cut(long[] sizes, int[] counts, long capacity) {
        return FewestBars.cut(sizes, counts, new boolean[sizes.length], capacity);
    }
}
