package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import lengthwise.model.MarkerOrder;
import org.junit.jupiter.api.Test;

/** The block of these tests is 100 mm long and 30 mm wide. */
class ClothOnHandTest {
    @Test
    void aPieceEndsWhereTheClothEnds() {
        MarkerOrder order = order(cloth().onHand(300), bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 200_000, 0))).isEmpty();
        Violation.BeyondCloth beyond =
                only(Violation.BeyondCloth.class, check(order, placed(block(), ONE, 200_200, 0)));
        assertThat(beyond.by()).isCloseTo(0.2, within(1e-9));
        assertThat(beyond.sentence()).contains("0.2 mm over the end of the cloth", "300 mm");
    }

    /** Both end allowances go off the length: 300 − 2 × 20. */
    @Test
    void theEndAllowancesAreNotRoom() {
        MarkerOrder order = order(cloth().endAllowance(20).onHand(300), bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 160_000, 0))).isEmpty();
        only(Violation.BeyondCloth.class, check(order, placed(block(), ONE, 160_200, 0)));
    }

    /** A corner is missing: x from 200 on at y below 100. By hand: 0.2 mm × 30 mm of the block are 6 mm². */
    @Test
    void aPieceStaysInsideTheRemnant() {
        MarkerOrder order = order(
                cloth().remnant(0, 0, 200, 0, 200, 100, 400, 100, 400, 300, 0, 300), bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 100_000, 0))).isEmpty();
        assertThat(check(order, placed(block(), ONE, 300_000, 100_000))).isEmpty();
        Violation.OffRemnant off = only(Violation.OffRemnant.class, check(order, placed(block(), ONE, 100_200, 0)));
        assertThat(off.squareMillimetres()).isCloseTo(6, within(1e-6));
        assertThat(off.thickness()).isCloseTo(0.2, within(1e-3));
    }
}
