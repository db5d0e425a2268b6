package lengthwise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;
import lengthwise.solver.exact.RectangleTask.Size;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SkylineTest {
    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    /** A rectangle of 150 × 100 cut straight through, again and again: no packing is shorter than 150. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aCutRectangleIsPutTogether(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Size> parts = new ArrayList<>(List.of(new Size(150, 100)));
        while (parts.size() < 14) {
            Size part = parts.remove(random.nextInt(parts.size()));
            boolean along = part.width() >= part.height();
            long side = along ? part.width() : part.height();
            long cut = random.nextLong(1, Math.max(2, side));
            if (side < 2) {
                parts.add(part);
            } else {
                parts.add(along ? new Size(cut, part.height()) : new Size(part.width(), cut));
                parts.add(along ? new Size(side - cut, part.height()) : new Size(part.width(), side - cut));
            }
        }
        RectangleTask task = new RectangleTask(
                100,
                0,
                parts.stream().map(part -> new Item(List.of(part), false)).toList());
        Packing packing = new Skyline(task).shortest(0.3, 150, seed, () -> false);
        check(task, packing);
        assertThat(packing.length()).isEqualTo(150);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gapsAndTurnsAreKept(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Item> items = new ArrayList<>();
        for (int i = random.nextInt(1, 40); i > 0; i--) {
            Size size = new Size(random.nextLong(1, 50), random.nextLong(1, 50));
            items.add(new Item(random.nextBoolean() ? List.of(size) : List.of(size, size.turned()), false));
        }
        RectangleTask task = new RectangleTask(50, random.nextLong(0, 5), items);
        Packing packing = new Skyline(task).shortest(0.01, 0, seed, () -> false);
        check(task, packing);
        assertThat(new Skyline(task).shortest(0.01, 0, seed, () -> false)).isEqualTo(packing);
    }

    private static void check(RectangleTask task, Packing packing) {
        long end = 0;
        for (int i = 0; i < task.items().size(); i++) {
            Spot a = packing.spots().get(i);
            Size sizeA = task.items().get(i).ways().get(a.way());
            assertThat(a.x()).isNotNegative();
            assertThat(a.y()).isBetween(0L, task.height() - sizeA.height());
            end = Math.max(end, a.x() + sizeA.width());
            for (int j = 0; j < i; j++) {
                Spot b = packing.spots().get(j);
                Size sizeB = task.items().get(j).ways().get(b.way());
                long alongX = Math.max(a.x() - b.x() - sizeB.width(), b.x() - a.x() - sizeA.width());
                long alongY = Math.max(a.y() - b.y() - sizeB.height(), b.y() - a.y() - sizeA.height());
                assertThat(Math.max(alongX, alongY))
                        .as("distance of %d and %d", i, j)
                        .isGreaterThanOrEqualTo(task.gap());
            }
        }
        assertThat(packing.length()).isEqualTo(end);
    }
}
