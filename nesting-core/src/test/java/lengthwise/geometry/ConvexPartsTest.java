package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ConvexPartsTest {
    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @Test
    void aConvexRingStaysWhole() {
        assertThat(ConvexParts.of(Ring.of(0, 0, 5, 0, 10, 0, 10, 10, 0, 10)).parts())
                .singleElement()
                .satisfies(part -> assertThat(part.size()).isEqualTo(4));
    }

    @Test
    void anEllMakesTwoParts() {
        assertThat(ConvexParts.of(Ring.of(0, 0, 20, 0, 20, 10, 10, 10, 10, 20, 0, 20))
                        .parts())
                .hasSize(2);
    }

    @Test
    void aRingThatCrossesItselfIsRefused() {
        assertThatThrownBy(() -> ConvexParts.of(Ring.of(0, 0, 10, 10, 20, -10, 20, 10, 10, -10, 0, 5)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void thePartsAreConvexUseTheRingsVerticesAndFillIt(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Ring ring = RandomRings.star(random, random.nextInt(4, 60), 3_000, 500_000);
        ConvexParts cut = ConvexParts.of(ring);
        assertThat(cut.parts().stream().mapToLong(Ring::doubleArea).sum()).isEqualTo(ring.doubleArea());
        for (Ring part : cut.parts()) {
            assertThat(ring.vertices()).containsAll(part.vertices());
            for (int i = 0; i < part.size(); i++) {
                assertThat(part.edge(i).cross(part.edge((i + 1) % part.size()))).isPositive();
            }
        }
        // n vertices: at most n − 2 triangles, and merging never leaves more than 4 r + 1 parts for r reflex corners
        assertThat(cut.parts().size()).isLessThanOrEqualTo(4 * reflexCorners(cut.ring()) + 1);
    }

    private static int reflexCorners(Ring ring) {
        int count = 0;
        for (int i = 0; i < ring.size(); i++) {
            count += ring.edge(i).cross(ring.edge((i + 1) % ring.size())) < 0 ? 1 : 0;
        }
        return count;
    }
}
