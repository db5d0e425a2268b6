package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PlacedAreaTest {
    private static final PlacedArea SQUARE = region(0, 0, 1000, 0, 1000, 1000, 0, 1000);

    static LongStream seeds() {
        return LongStream.range(0, 100);
    }

    @Test
    void touchingSquaresDoNotOverlap() {
        PlacedArea beside = region(1000, 200, 2000, 200, 2000, 1200, 1000, 1200);
        assertThat(SQUARE.overlaps(beside, 0)).isFalse();
        assertThat(SQUARE.distance(beside)).isZero();
    }

    @Test
    void oneMicrometreIsAnOverlapButForATolerance() {
        PlacedArea beside = region(999, 0, 2000, 0, 2000, 1000, 999, 1000);
        assertThat(SQUARE.overlaps(beside, 0)).isTrue();
        assertThat(SQUARE.overlaps(beside, 2)).isFalse();
        assertThat(SQUARE.overlap(beside).squareMillimetres()).isCloseTo(0.001, within(1e-9));
        assertThat(SQUARE.overlap(beside).millimetres()).isCloseTo(0.001, within(1e-5));
    }

    @Test
    void aCornerThatPokesInIsAnOverlapHoweverThin() {
        // The tip enters the square by 1 µm in 1 m: thinner than a floating-point intersection can be trusted to be.
        PlacedArea needle = region(999, 500, 1_001_000, 499, 1_001_000, 501);
        assertThat(SQUARE.overlaps(needle, 0)).isTrue();
        PlacedArea touching = region(1000, 500, 1_001_000, 499, 1_001_000, 501);
        assertThat(SQUARE.overlaps(touching, 0)).isFalse();
    }

    @Test
    void theSameRegionTwiceIsAnOverlap() {
        assertThat(SQUARE.overlaps(SQUARE, 0)).isTrue();
        assertThat(SQUARE.overlap(SQUARE).squareMillimetres()).isCloseTo(1, within(1e-9));
        // The largest disc in a square has the square's side as its diameter.
        assertThat(SQUARE.overlap(SQUARE).millimetres()).isCloseTo(1, within(2e-3));
    }

    @Test
    void aPieceFitsIntoAHoleExactly() {
        Outline frame = new Outline(
                Ring.of(0, 0, 3000, 0, 3000, 3000, 0, 3000),
                List.of(Ring.of(1000, 1000, 2000, 1000, 2000, 2000, 1000, 2000)));
        PlacedArea around = PlacedArea.of(frame);
        assertThat(around.overlaps(region(1000, 1000, 2000, 1000, 2000, 2000, 1000, 2000), 0))
                .isFalse();
        assertThat(around.overlaps(region(1000, 1000, 2001, 1000, 2001, 2000, 1000, 2000), 0))
                .isTrue();
        assertThat(around.isNearerThan(region(1300, 1300, 1700, 1300, 1700, 1700, 1300, 1700), 300))
                .isFalse();
        assertThat(around.isNearerThan(region(1299, 1300, 1700, 1300, 1700, 1700, 1299, 1700), 300))
                .isTrue();
    }

    @Test
    void aGapKeptExactlyOnASlantIsKept() {
        // 3-4-5 triangles: the two slanted edges are exactly 5 000 µm apart.
        PlacedArea lower = region(0, 0, 40_000, 0, 0, 30_000);
        PlacedArea upper = region(43_000, 4_000, 43_000, 34_000, 3_000, 34_000);
        assertThat(lower.distance(upper)).isCloseTo(5000, within(1e-9));
        assertThat(lower.isNearerThan(upper, 5000)).isFalse();
        assertThat(lower.isNearerThan(upper, 5001)).isTrue();
    }

    @Test
    void anOutlineThatCrossesItselfHasARegionAllTheSame() {
        PlacedArea bow = region(0, 0, 1000, 1000, 1000, 0, 0, 1000);
        assertThat(bow.overlaps(SQUARE, 0)).isTrue();
    }

    /** Two convex rings' interiors meet unless a line along an edge of one of them separates them. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesWithSeparatingLinesOnTriangles(long seed) {
        RandomGenerator random = random(seed);
        for (int i = 0; i < 20; i++) {
            // A small grid makes contacts common; far from the origin, rounding would show.
            Point far = new Point(random.nextLong(1 << 28), random.nextLong(1 << 28));
            Ring a = triangle(random).moved(far);
            Ring b = triangle(random).moved(far);
            assertThat(PlacedArea.of(Outline.of(a)).overlaps(PlacedArea.of(Outline.of(b)), 0))
                    .as("%s and %s", a, b)
                    .isEqualTo(!isSeparated(a, b) && !isSeparated(b, a));
        }
    }

    /** Skylines made of unit cells, sheared: their interiors meet exactly when they have a cell in common. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agreesWithCellsOnConcaveOutlines(long seed) {
        RandomGenerator random = random(seed);
        int shear = random.nextInt(-3, 4);
        for (int i = 0; i < 20; i++) {
            Skyline a = Skyline.random(random);
            Skyline b = Skyline.random(random);
            Set<Point> common = new HashSet<>(a.cells());
            common.retainAll(b.cells());
            assertThat(PlacedArea.of(a.outline(shear)).overlaps(PlacedArea.of(b.outline(shear)), 0))
                    .as("%s and %s", a, b)
                    .isEqualTo(!common.isEmpty());
        }
    }

    /** Columns of unit cells on a common base, standing or hanging. */
    private record Skyline(int left, int base, boolean hanging, List<Integer> heights) {
        static Skyline random(RandomGenerator random) {
            List<Integer> heights =
                    random.ints(random.nextInt(1, 6), 1, 6).boxed().toList();
            return new Skyline(random.nextInt(7), random.nextInt(12), random.nextBoolean(), heights);
        }

        Set<Point> cells() {
            Set<Point> cells = new HashSet<>();
            for (int column = 0; column < heights.size(); column++) {
                for (int up = 0; up < heights.get(column); up++) {
                    cells.add(new Point(left + column, hanging ? base - 1 - up : base + up));
                }
            }
            return cells;
        }

        Outline outline(int shear) {
            Set<Point> ring = new LinkedHashSet<>();
            ring.add(new Point(left, base));
            for (int column = 0; column < heights.size(); column++) {
                int top = base + (hanging ? -heights.get(column) : heights.get(column));
                ring.add(new Point(left + column, top));
                ring.add(new Point(left + column + 1, top));
            }
            ring.add(new Point(left + heights.size(), base));
            return Outline.of(Ring.of(ring).mapped(p -> new Point(p.x() + shear * p.y(), p.y())));
        }
    }

    private static Ring triangle(RandomGenerator random) {
        while (true) {
            Ring ring = Ring.of(random.longs(6, 0, 9).toArray());
            if (ring.doubleArea() != 0) {
                return ring.positive();
            }
        }
    }

    private static boolean isSeparated(Ring a, Ring b) {
        for (int i = 0; i < a.size(); i++) {
            Point from = a.vertex(i);
            Point edge = a.edge(i);
            if (b.vertices().stream().allMatch(vertex -> edge.cross(vertex.minus(from)) <= 0)) {
                return true;
            }
        }
        return false;
    }

    private static PlacedArea region(long... coordinates) {
        return PlacedArea.of(Outline.of(Ring.of(coordinates)));
    }

    private static RandomGenerator random(long seed) {
        return RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
    }
}
