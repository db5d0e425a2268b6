package lengthwise.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GrownAreaTest {
    static LongStream seeds() {
        return LongStream.range(0, 30);
    }

    /** Steiner's formula for a convex outline: area + perimeter · r + π r². */
    @Test
    void aRectangle() {
        double exact = 1e5 * 2e5 + 6e5 * 1500 + Math.PI * 1500 * 1500;
        assertThat(GrownArea.atMost(Ring.of(0, 0, 100_000, 0, 100_000, 200_000, 0, 200_000), 1500))
                .isBetween(exact * 0.9995, exact);
    }

    /** By hand: a slot 2 mm wide and 50 mm deep closes when its sides grow by 1.5 mm, so it counts once, not twice. */
    @Test
    void aNarrowSlotClosesUp() {
        Ring slotted = Ring.of(
                0, 0, 100_000, 0, 100_000, 60_000, 51_000, 60_000, 51_000, 10_000, 49_000, 10_000, 49_000, 60_000, 0,
                60_000);
        double closed = 1e5 * 6e4 + 3.2e5 * 1500 + Math.PI * 1500 * 1500;
        assertThat(GrownArea.atMost(slotted, 1500)).isBetween(closed * 0.9990, closed);
    }

    /**
     * Between the bound of Brunn and Minkowski, √ of the sum ≥ √ of the area + √π r, and area + perimeter · r + π r²,
     * which no outline exceeds.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anyOutline(long seed) {
        Ring star = RandomRings.star(new SplittableRandom(seed), 12, 20_000, 200_000);
        double area = star.doubleArea() / 2.0;
        double perimeter = 0;
        for (int i = 0; i < star.size(); i++) {
            perimeter +=
                    Math.hypot((double) star.edge(i).x(), (double) star.edge(i).y());
        }
        double least = Math.pow(Math.sqrt(area) + Math.sqrt(Math.PI) * 3000, 2);
        assertThat(GrownArea.atMost(star, 3000)).isBetween(0.999 * least, area + perimeter * 3000 + Math.PI * 9e6);
    }
}
