package lengthwise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Strips of one kind among other pieces: one straight-cut block where that costs nothing. */
class BlocksTest {
    private static final List<Orientation> ALL = IntStream.range(0, 8)
            .mapToObj(i -> new Orientation(i >= 4, QuarterTurn.of(i % 4)))
            .toList();

    static LongStream seeds() {
        return LongStream.range(0, 8);
    }

    /**
     * A piece of 900 mm says how long the marker is at least; there is much room beside it for six strips. Scattered
     * strips do that too: but only a block has them one beside the other to the micrometre.
     */
    @Test
    void stripsComeOutAsOneBlockWhereThereIsRoom() {
        List<Demand> demands = new ArrayList<>();
        demands.add(Tasks.free(oval(900_000, 300_000), Tasks.EITHER_WAY, 3_000));
        for (int i = 0; i < 6; i++) {
            demands.add(Tasks.free(Tasks.rectangle(32_000, 250_000), Tasks.EITHER_WAY, 3_000));
            demands.add(Tasks.free(oval(120_000, 80_000), Tasks.EITHER_WAY, 3_000));
        }
        LayoutTask task = Tasks.of(700_000, demands);
        SearchResult.Solved solved = solved(task, 400, 1);
        assertThat(solved.layout().length()).isEqualTo(900_000);
        assertThat(solved.reason()).isEqualTo(SearchResult.StopReason.PROVEN_SHORTEST);
        assertThat(rows(task, solved.layout(), 32_000, 3_000)).containsExactly(6);
    }

    /**
     * By hand: on 100 mm there is room for an oval of 60 mm and one strip of 30 mm above it. Ovals cannot stand above each
     * other, so two of them with two strips take 300 + 3 + 300 mm; with the strips in one block, 300 mm more.
     */
    @Test
    void noBlockIsTakenThatCostsLength() {
        LayoutTask task = twoOvalsAndTwoStrips();
        SearchResult.Solved solved = solved(task, 4_000, 1);
        assertThat(solved.layout().length()).isBetween(598_000L, 604_000L);
        assertThat(rows(task, solved.layout(), 30_000, 3_000)).containsExactly(1, 1);
    }

    private static LayoutTask twoOvalsAndTwoStrips() {
        List<Demand> demands = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            demands.add(Tasks.free(Tasks.rectangle(300_000, 30_000), Tasks.ONE_WAY, 3_000));
            demands.add(Tasks.free(oval(300_000, 60_000), Tasks.ONE_WAY, 3_000));
        }
        return Tasks.of(100_000, demands);
    }

    /** The race of two takes an eighth of the budget, whatever it finds; what comes after it ends for want of gain. */
    @Test
    void aSearchOfBlocksGivesUpToo() {
        SearchResult.Solved solved = (SearchResult.Solved) StripSearch.solve(
                twoOvalsAndTwoStrips(), Search.of(StopRule.iterations(20_000).withPatience(0.05), 1, 1));
        assertThat(solved.reason()).isEqualTo(SearchResult.StopReason.NO_GAIN);
        assertThat(solved.progress().iteration()).isBetween(2_500L, 8_000L);
    }

    /** Eight strips of 30 mm have no room in one block of 261 mm on 200 mm, but in blocks of fewer. */
    @Test
    void aBlockIsNotLongerThanTheClothIsWide() {
        Demand strip = Tasks.free(Tasks.rectangle(400_000, 30_000), Tasks.ONE_WAY, 3_000);
        LayoutTask task = Tasks.of(200_000, List.of(strip, strip, strip, strip, strip, strip, strip, strip));
        assertThat(Blocks.largest(task)).isEqualTo(6);
        assertThat(Blocks.of(task, 6).task().demands())
                .hasSize(2)
                .allSatisfy(block -> assertThat(block.outline().box().height()).isEqualTo(129_000));
    }

    /** Tabs of 40 by 160 mm fill holes between larger pieces; ties of 40 by 200 mm are strips. */
    @Test
    void shortRectanglesAreNoStrips() {
        Demand tab = Tasks.free(Tasks.rectangle(160_000, 40_000), Tasks.ONE_WAY, 3_000);
        Demand tie = Tasks.free(Tasks.rectangle(200_000, 40_000), Tasks.ONE_WAY, 3_000);
        Demand front = Tasks.free(oval(400_000, 300_000), Tasks.ONE_WAY, 3_000);
        assertThat(Blocks.largest(Tasks.of(500_000, List.of(front, tab, tab, tab))))
                .isEqualTo(1);
        assertThat(Blocks.largest(Tasks.of(500_000, List.of(front, tie, tab, tie))))
                .isEqualTo(2);
    }

    /**
     * By hand: ten bands of 400 by 200 mm on 1000 mm with a flaw from 400 to 500 mm over the whole width. Five fill the cloth
     * before it and five behind it, to the micrometre: 900 mm.
     */
    @Test
    void piecesOfOneKindFillTheClothOnBothSidesOfAFlaw() {
        Demand band = Tasks.free(Tasks.rectangle(400_000, 200_000), Tasks.EITHER_WAY, 0);
        Obstacle flaw =
                new Obstacle(Outline.of(Tasks.rectangle(100_000, 1_000_000).moved(new Point(400_000, 0))));
        LayoutTask task = new LayoutTask(1_000_000, Collections.nCopies(10, band), List.of(flaw), List.of());
        assertThat(solved(task, 20, 1).layout().length()).isEqualTo(900_000);
    }

    /** By hand: three strips of 40 mm on 200 mm cloth, a bar of 900 mm: the first layout is proven at once. */
    @Test
    void aFirstLayoutThatIsShortestHasItsStripsInABlockToo() {
        Demand bar = Tasks.free(Tasks.rectangle(900_000, 60_000), Tasks.ONE_WAY, 0);
        Demand strip = Tasks.free(Tasks.rectangle(200_000, 40_000), Tasks.ONE_WAY, 0);
        LayoutTask task = Tasks.of(400_000, List.of(strip, bar, strip, strip));
        SearchResult.Solved solved = solved(task, 400, 1);
        assertThat(solved.layout().length()).isEqualTo(900_000);
        // the bar is a rectangle too
        assertThat(rows(task, solved.layout(), 40_000, 0)).containsExactly(3, 1);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void markersWithStripsAreLegalAndComeOutTheSameAgain(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        LayoutTask mixed = Tasks.mixed(seed, 12, 2_000);
        List<Demand> demands = new ArrayList<>(mixed.demands());
        for (int kind = 0; kind < 2; kind++) {
            long width = random.nextLong(20_000, 50_000);
            long length = random.nextLong(250_000, 300_000);
            Ring strip = (kind == 0 ? Tasks.rectangle(width, length) : Tasks.rectangle(length, width))
                    .moved(new Point(random.nextLong(9_999), -random.nextLong(9_999)));
            for (int n = random.nextInt(2, 7); n > 0; n--) {
                // drawn somewhere else, and yet equal
                Ring drawn = strip.moved(new Point(random.nextLong(9_999), 0));
                demands.add(Tasks.free(drawn, seed % 2 == 0 ? ALL : Tasks.EITHER_WAY, kind * 3_000L));
            }
        }
        LayoutTask task = new LayoutTask(mixed.height(), demands, mixed.obstacles(), mixed.bonds());
        SearchResult.Solved solved = solved(task, 60, 2);
        LegalLayout.check(task, solved.layout());
        assertThat(solved(task, 60, 2).layout()).isEqualTo(solved.layout());
        for (int most = 1; most < 7; most++) {
            Blocks blocks = Blocks.of(task, most);
            PreparedTask prepared = new PreparedTask(blocks.task());
            Layout first = FirstLayout.build(
                            prepared, 64, FirstLayout.orders(prepared).get(0))
                    .orElseThrow();
            LegalLayout.check(task, blocks.apart(first));
        }
    }

    /** Tells how many strips of a width lie in each row, one beside the other and their ends level, the longest first. */
    private static List<Integer> rows(LayoutTask task, Layout layout, long width, long gap) {
        List<Box> strips = IntStream.range(0, task.demands().size())
                .filter(i -> task.demands().get(i).outline().shell().size() == 4)
                .mapToObj(i -> {
                    Pose pose = layout.poses().get(i);
                    return pose.apply(task.demands().get(i).outline()).box();
                })
                .sorted(Comparator.comparingLong(Box::minX).thenComparingLong(Box::minY))
                .toList();
        List<Box> last = new ArrayList<>();
        List<Integer> rows = new ArrayList<>();
        for (Box strip : strips) {
            Box before = strip.width() == width
                    ? strip.moved(new Point(-width - gap, 0))
                    : strip.moved(new Point(0, -width - gap));
            int row = last.indexOf(before);
            if (row < 0) {
                last.add(strip);
                rows.add(1);
            } else {
                last.set(row, strip);
                rows.set(row, rows.get(row) + 1);
            }
        }
        return rows.stream().sorted(Comparator.reverseOrder()).toList();
    }

    private static Ring oval(long width, long height) {
        long[] vertices = new long[48];
        for (int i = 0; i < 24; i++) {
            vertices[2 * i] = Math.round(width / 2.0 * StrictMath.cos(i * Math.PI / 12));
            vertices[2 * i + 1] = Math.round(height / 2.0 * StrictMath.sin(i * Math.PI / 12));
        }
        return Ring.of(vertices);
    }

    private static SearchResult.Solved solved(LayoutTask task, long iterations, int workers) {
        return (SearchResult.Solved) StripSearch.solve(task, Search.of(StopRule.iterations(iterations), 1, workers));
    }
}
