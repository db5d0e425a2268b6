package lengthwise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;
import lengthwise.solver.exact.RectangleTask.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against all positions tried one by one, on a grid so small that this ends. */
class ExactPackingTest {
    private static final long HEIGHT = 7;

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingShorterExists(long seed) {
        RectangleTask task = task(seed);
        long shortest = 1;
        while (!fits(task, shortest, new ArrayList<>())) {
            shortest++;
        }
        long[] found = {0, 0};
        ExactPacking.atOnce(task)
                .ifPresentOrElse(
                        proof -> {
                            assertThat(isLegal(task, proof.packing())).isTrue();
                            found[0] = proof.packing().length();
                            found[1] = proof.lowerBound();
                        },
                        () -> {
                            assertThat(ExactPacking.canSearch(task)).isTrue();
                            found[0] = 1_000;
                            found[1] = ExactPacking.search(task, 1_000, 1, 20, seed, () -> false, packing -> {
                                        if (isLegal(task, packing)) {
                                            found[0] = Math.min(found[0], packing.length());
                                        }
                                    })
                                    .lowerBound();
                        });
        assertThat(found[0]).isGreaterThanOrEqualTo(shortest);
        assertThat(found[1]).isLessThanOrEqualTo(shortest);
        if (task.gap() == 0) {
            assertThat(found).containsExactly(shortest, shortest);
        }
    }

    @Test
    void gapsByDefinition() {
        for (long gap = 1; gap < 40; gap++) {
            for (long across = 1; across <= gap; across++) {
                long least = 0;
                while (least * least + (across - 1) * (across - 1) < gap * gap) {
                    least++;
                }
                assertThat(Gaps.along(gap, across))
                        .as("gap %d, %d across", gap, across)
                        .isEqualTo(least);
            }
            long below = Gaps.cornered(gap) - 1;
            assertThat(2 * below * below).isLessThan(gap * gap);
            assertThat(2 * (below + 1) * (below + 1)).isGreaterThanOrEqualTo(gap * gap);
        }
    }

    private static RectangleTask task(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Item> items = new ArrayList<>();
        boolean oneWidth = random.nextInt(4) == 0;
        boolean oneHeight = !oneWidth && random.nextInt(4) == 0;
        boolean turns = random.nextInt(3) == 0;
        for (int i = random.nextInt(2, 5); i > 0; i--) {
            Size size = new Size(oneWidth ? 3 : random.nextLong(1, 5), oneHeight ? 2 : random.nextLong(1, 5));
            boolean square = size.width() == size.height();
            boolean atEdge = random.nextInt(5) == 0;
            items.add(new Item(turns && !square && !atEdge ? List.of(size, size.turned()) : List.of(size), atEdge));
        }
        return new RectangleTask(HEIGHT, random.nextInt(3), items);
    }

    private static boolean fits(RectangleTask task, long length, List<Spot> placed) {
        int next = placed.size();
        if (next == task.items().size()) {
            return true;
        }
        Item item = task.items().get(next);
        for (int way = 0; way < item.ways().size(); way++) {
            Size size = item.ways().get(way);
            for (long x = 0; x + size.width() <= length; x++) {
                for (long y = 0; y + size.height() <= HEIGHT && (y == 0 || !item.atEdge()); y++) {
                    Spot spot = new Spot(way, x, y);
                    if (clear(task, placed, spot)) {
                        placed.add(spot);
                        boolean all = fits(task, length, placed);
                        placed.remove(next);
                        if (all) {
                            return true;
                        }
                    }
                }
            }
        }
        return false;
    }

    private static boolean isLegal(RectangleTask task, Packing packing) {
        List<Spot> placed = new ArrayList<>();
        for (int i = 0; i < packing.spots().size(); i++) {
            Spot spot = packing.spots().get(i);
            Size size = task.items().get(i).ways().get(spot.way());
            if (spot.x() + size.width() > packing.length()
                    || spot.y() + size.height() > HEIGHT
                    || (task.items().get(i).atEdge() && spot.y() > 0)
                    || !clear(task, placed, spot)) {
                return false;
            }
            placed.add(spot);
        }
        return true;
    }

    private static boolean clear(RectangleTask task, List<Spot> placed, Spot spot) {
        Size size = task.items().get(placed.size()).ways().get(spot.way());
        for (int i = 0; i < placed.size(); i++) {
            Spot other = placed.get(i);
            Size otherSize = task.items().get(i).ways().get(other.way());
            long dx = Math.max(other.x() - spot.x() - size.width(), spot.x() - other.x() - otherSize.width());
            long dy = Math.max(other.y() - spot.y() - size.height(), spot.y() - other.y() - otherSize.height());
            long apartX = Math.max(0, dx);
            long apartY = Math.max(0, dy);
            if ((dx < 0 && dy < 0) || apartX * apartX + apartY * apartY < task.gap() * task.gap()) {
                return false;
            }
        }
        return true;
    }
}
