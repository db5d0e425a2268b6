package lengthwise.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.Ring;
import lengthwise.solver.Layout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JigsawTest {
    @ParameterizedTest(name = "{0} pieces, seed {1}")
    @CsvSource({"2, 1", "5, 2", "12, 3", "12, 4", "25, 5", "25, 6", "50, 7", "50, 8", "100, 9", "200, 10"})
    void fillsItsSquareWithoutALossOrAnOverlap(int pieces, long seed) {
        List<Ring> cut = Jigsaw.uncut(pieces, seed);
        Instance instance = Jigsaw.of(pieces, seed);
        assertThat(cut).hasSize(pieces);
        assertThat(cut.stream().mapToLong(Ring::doubleArea).map(Math::abs).sum())
                .isEqualTo(2L * 1_500_000 * 1_500_000);
        List<Pose> back = cut.stream()
                .map(ring -> new Pose(
                        Orientation.AS_DRAWN,
                        new Point(ring.box().minX(), ring.box().minY())))
                .toList();
        assertThat(Judge.isLegal(instance.task(), new Layout(back, 1_500_000))).isTrue();
        assertThat(instance.density(1_500_000)).isEqualTo(100);
    }

    @ParameterizedTest
    @CsvSource({"12, 3"})
    void theJudgeSeesOneMicrometre(int pieces, long seed) {
        Instance instance = Jigsaw.of(pieces, seed);
        List<Pose> moved = Jigsaw.uncut(pieces, seed).stream()
                .map(ring -> new Point(ring.box().minX(), ring.box().minY()))
                .map(at -> new Pose(Orientation.AS_DRAWN, at.x() == 0 ? at.plus(new Point(1, 0)) : at))
                .toList();
        assertThat(Judge.isLegal(instance.task(), new Layout(moved, 1_500_000))).isFalse();
        assertThat(Judge.isLegal(instance.task(), new Layout(moved.subList(1, pieces), 1_500_000)))
                .isFalse();
    }
}
