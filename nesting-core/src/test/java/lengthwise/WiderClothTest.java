package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import lengthwise.model.Spread.Form;
import lengthwise.rules.Ruling;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WiderClothTest {
    private static final Orientation HALF_TURN = new Orientation(false, QuarterTurn.HALF);

    /** Two halves, one on each fold of a tube 300 mm wide, and a cup between: by hand. On 500 mm the far half moves by 200. */
    @Test
    void whatIsOnTheFarFoldMovesOut() {
        CutPiece half = cut(onFold(triangle("front", 300, 100), 300), 2, Cut.Manner.ON_FOLD);
        MarkerOrder narrow = onTube(300, half);
        Marker marker = marker(
                narrow, new Pose(Orientation.AS_DRAWN, Point.ORIGIN), new Pose(HALF_TURN, new Point(300_000, 300_000)));
        Marker wide = WiderCloth.carried(marker, onTube(500, half)).orElseThrow();
        assertThat(wide.placements())
                .extracting(placement -> placement.pose().offset())
                .containsExactly(Point.ORIGIN, new Point(300_000, 500_000));
        assertThat(WiderCloth.canTake(marker)).isTrue();
    }

    /** A half on the near fold that hooks over one on the far fold: neither comes free. By hand. */
    @Test
    void whatHangsTogetherIsHeldByBothFolds() {
        CutPiece hook = cut(
                onFold(
                        piece(
                                "hook",
                                Optional.of(QuarterTurn.NONE),
                                0,
                                0,
                                20,
                                0,
                                20,
                                80,
                                60,
                                80,
                                60,
                                50,
                                80,
                                50,
                                80,
                                100,
                                0,
                                100),
                        20),
                2,
                Cut.Manner.ON_FOLD);
        Marker marker = marker(
                onTube(130, hook),
                new Pose(Orientation.AS_DRAWN, Point.ORIGIN),
                new Pose(HALF_TURN, new Point(100_000, 130_000)));
        assertThat(WiderCloth.canTake(marker)).isFalse();
        assertThat(WiderCloth.carried(marker, onTube(200, hook))).isEmpty();
    }

    static LongStream seeds() {
        return LongStream.range(0, 30);
    }

    /** Whatever is said to lie on any wider tube is found good there by the check. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatCanTakeMoreWidthPassesTheCheckThere(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<CutPiece> pieces = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double along = random.nextInt(60, 200);
            pieces.add(
                    i % 2 == 0
                            ? cut(
                                    onFold(triangle("half" + i, along, random.nextInt(60, 280)), along),
                                    2,
                                    Cut.Manner.ON_FOLD)
                            : cut(triangle("cup" + i, along, random.nextInt(60, 200)), 1, Cut.Manner.PAIR));
        }
        CutPiece[] all = pieces.toArray(CutPiece[]::new);
        MarkerAnswer answer = MarkerMaking.make(
                onTube(300, all), Search.of(StopRule.iterations(6), seed, 1), (marker, progress) -> {});
        Marker marker = ((MarkerAnswer.Made) answer).marker();
        if (WiderCloth.canTake(marker)) {
            for (double width : new double[] {300.01, 310, 345, 500, 2000}) {
                assertThat(WiderCloth.carried(marker, onTube(width, all)))
                        .as("%s mm", width)
                        .isPresent();
            }
        }
    }

    @Test
    void mostLayoutsOnATubeTakeMoreWidth() {
        // else the test above would say little
        CutPiece half = cut(onFold(triangle("front", 300, 100), 300), 4, Cut.Manner.ON_FOLD);
        MarkerAnswer answer =
                MarkerMaking.make(onTube(300, half), Search.of(StopRule.iterations(6), 1, 1), (marker, progress) -> {});
        Marker marker = ((MarkerAnswer.Made) answer).marker();
        assertThat(marker.placements())
                .anyMatch(placement -> placement.outline().box().maxY() == 300_000);
        assertThat(WiderCloth.canTake(marker)).isTrue();
    }

    private static MarkerOrder onTube(double millimetres, CutPiece... pieces) {
        return order(
                TestFabric.plain()
                        .width(millimetres, 0)
                        .spread(Form.TUBE)
                        .direction(Direction.EITHER_WAY)
                        .fabric(),
                0,
                1,
                pieces);
    }

    private static Marker marker(MarkerOrder order, Pose... poses) {
        Ruling.Task task = (Ruling.Task) Ruling.of(order);
        List<Placement> placements = new ArrayList<>();
        for (int i = 0; i < poses.length; i++) {
            placements.add(new Placement(task.items().get(i), poses[i]));
        }
        long end = placements.stream()
                .mapToLong(placement -> placement.outline().box().maxX())
                .max()
                .orElseThrow();
        return new Marker(order, placements, new Length(end));
    }
}
