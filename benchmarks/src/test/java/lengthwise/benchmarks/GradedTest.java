package lengthwise.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.Outline;
import lengthwise.rules.Demand;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GradedTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void hasThreeHundredShapesThatDoNotCrossThemselves(long seed) {
        List<Outline> shapes = Graded.shapes(seed);
        assertThat(new HashSet<>(shapes)).hasSize(300);
        // the cut into convex parts refuses a ring that crosses itself
        assertThat(shapes)
                .allSatisfy(shape -> assertThat(ConvexParts.of(shape).parts()).isNotEmpty());
        // twelve sizes of 3 %, area by its square: 1.03^22
        assertThat((double) shapes.get(11).doubleArea() / (double) shapes.get(0).doubleArea())
                .isCloseTo(1.916, within(0.002));
    }

    @ParameterizedTest(name = "{0} pieces")
    @ValueSource(ints = {1, 7, 100, 300, 1000})
    void takesShapesEvenly(int pieces) {
        Instance order = Graded.of(pieces, 1);
        assertThat(order.task().demands()).hasSize(pieces);
        assertThat(order.task().demands().stream().map(Demand::outline).distinct())
                .hasSize(Math.min(pieces, 300));
        double mean = order.totalArea() / pieces;
        double meanOfAll = Graded.of(300, 1).totalArea() / 300;
        assertThat(mean).isCloseTo(meanOfAll, within((pieces < 100 ? 1 : 0.02) * meanOfAll));
    }
}
