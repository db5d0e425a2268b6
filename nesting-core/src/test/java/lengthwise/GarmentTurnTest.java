package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Axis;
import lengthwise.model.Cut;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A garment whose pieces point one way, on stripes of 200 mm that begin at 10 mm. A front of 150 mm, matched 10 mm from its
 * lower end, lies from 0 to 150 mm as drawn; turned, its match point is 140 mm from there, so that it lies from 70 to 220
 * mm. Beside it on 200 mm of cloth is room for one of two flaps of 100 × 60, and the marker is 200 mm long.
 */
class GarmentTurnTest {
    private static final Fabric STRIPES = TestFabric.plain()
            .width(200, 0)
            .direction(Direction.ONE_WAY_PER_GARMENT)
            .repeat(new Repeat(Length.ofMillimetres(200), Length.ZERO, false, Length.ofMillimetres(10), Length.ZERO))
            .fabric();

    private static final Piece FRONT = matched(
            holed(piece("front", Optional.of(QuarterTurn.NONE), 0, 0, 150, 0, 150, 100, 5, 100, 0, 95), 10, 50),
            0,
            Optional.of(Axis.LENGTHWISE),
            Optional.empty());

    private static final Piece FLAP = piece("flap", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 60, 5, 60, 0, 55);

    /** In a strip of less than 220 mm the garment cannot be turned, and is not. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void itIsNotTurnedToWhereOneOfItsPiecesFindsNoPlace(long seed) {
        MarkerOrder order = order(STRIPES, 0, 1, cut(FRONT, 1, Cut.Manner.ALIKE), cut(FLAP, 2, Cut.Manner.ALIKE));
        MarkerAnswer answer =
                MarkerMaking.make(order, Search.of(StopRule.iterations(3000), seed, 1), (marker, progress) -> {});
        assertThat(((MarkerAnswer.Made) answer).marker().length()).isEqualTo(Length.ofMillimetres(200));
    }
}
