package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TURNED;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.strip;
import static lengthwise.check.Laying.turned;
import static lengthwise.check.Laying.wedge;
import static lengthwise.check.Laying.withUp;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Direction;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Piece.Turning;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

class UpEndTest {
    @Test
    void upIsUpOnOneWayFabric() {
        MarkerOrder either = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        MarkerOrder oneWay = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(sleeve(), 1)));
        Placement upsideDown = placed(sleeve(), ONE, TURNED, 100_000, 60_000);
        assertThat(check(either, upsideDown)).isEmpty();
        Violation.WrongWayUp wrong = only(Violation.WrongWayUp.class, check(oneWay, upsideDown));
        assertThat(wrong.degrees()).isEqualTo(180);
        Piece drawnUpsideDown = withUp(sleeve(), Optional.of(QuarterTurn.HALF));
        MarkerOrder sameCloth = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(drawnUpsideDown, 1)));
        assertThat(check(sameCloth, placed(drawnUpsideDown, ONE, TURNED, 100_000, 60_000)))
                .isEmpty();
    }

    @Test
    void aFlipLeavesUpWhereItIs() {
        MarkerOrder order = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, FLIPPED, 0, 160_000)))
                .isEmpty();
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), ONE, new Orientation(true, QuarterTurn.HALF), 100_000, 100_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongWayUp.class);
    }

    @Test
    void aStripThatIgnoresThePrintMayLieAcrossOneWayFabric() {
        Piece tie = withUp(strip(), Optional.empty());
        MarkerOrder order = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(tie, 1)));
        assertThat(check(order, placed(tie, ONE, turned(QuarterTurn.QUARTER), 30_000, 0)))
                .isEmpty();
        Piece follows = withUp(wedge(Turning.ANY_QUARTER), Optional.of(QuarterTurn.NONE));
        MarkerOrder followed = order(cloth().direction(Direction.ONE_WAY), bundle(ONE, alike(follows, 1)));
        assertThat(only(
                                Violation.WrongWayUp.class,
                                check(followed, placed(follows, ONE, turned(QuarterTurn.QUARTER), 60_000, 0)))
                        .degrees())
                .isEqualTo(90);
    }
}
