package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TURNED;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.withUp;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.Direction;
import lengthwise.model.Hand;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class GarmentDirectionTest {
    @Test
    void piecesOfOneGarmentAgreeWhereGarmentsMayTurn() {
        TestFabric fabric = cloth().direction(Direction.ONE_WAY_PER_GARMENT);
        MarkerOrder order = order(fabric, bundle(ONE, alike(sleeve(), 3)), bundle(TWO, alike(sleeve(), 1)));
        Placement[] legal = {
            placed(sleeve(), ONE, 0, 0),
            placed(sleeve(), ONE, 0, 60_000),
            placed(sleeve(), ONE, 0, 120_000),
            placed(sleeve(), TWO, TURNED, 300_000, 60_000)
        };
        assertThat(check(order, legal)).isEmpty();
        legal[1] = placed(sleeve(), ONE, TURNED, 100_000, 240_000);
        Violation.WrongWayInGarment wrong = only(Violation.WrongWayInGarment.class, check(order, legal));
        assertThat(wrong.piece().outline()).isEqualTo(legal[1].outline());
    }

    @Test
    void aPieceThatLooksTheSameUpsideDownAgreesEitherWay() {
        MarkerOrder order = order(
                cloth().direction(Direction.ONE_WAY_PER_GARMENT), bundle(ONE, alike(sleeve(), 1), alike(block(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(block(), ONE, TURNED, 100_000, 130_000)))
                .isEmpty();
    }

    /** Found by a random order: a strip shared by two garments does not bind them. */
    @Test
    void aSharedStripThatIgnoresThePrintBindsNobody() {
        Piece tie = withUp(block(), Optional.empty());
        TestFabric fabric = folded().direction(Direction.ONE_WAY_PER_GARMENT);
        MarkerOrder order = order(
                fabric, bundle(ONE, pair(sleeve(), 1), alike(tie, 1)), bundle(TWO, pair(sleeve(), 1), alike(tie, 1)));
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), TWO, TURNED, 300_000, 60_000),
                        placed(item(tie, Hand.NONE, ONE, TWO), Orientation.AS_DRAWN, 0, 60_000)))
                .isEmpty();
    }
}
