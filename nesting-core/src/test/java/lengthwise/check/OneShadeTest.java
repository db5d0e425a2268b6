package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

class OneShadeTest {
    /** Blocks 100 mm long: two of a garment, one begins 150 mm after the other, take 250 mm. */
    @Test
    void aGarmentLiesInOneStretch() {
        MarkerOrder order =
                order(cloth().shadeLengthwise(250), bundle(ONE, alike(block(), 2)), bundle(TWO, alike(block(), 1)));
        Placement far = placed(block(), TWO, 900_000, 0);
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 150_000, 40_000), far))
                .isEmpty();
        Violation.TooFarApart apart = only(
                Violation.TooFarApart.class,
                check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 150_200, 40_000), far));
        assertThat(apart.sentence())
                .isEqualTo("From block S of garment 1 to block S of garment 1 garment 1 takes 250.2 mm of the cloth"
                        + " lengthwise; for one shade 250 mm are allowed.");
    }

    /** Sleeves 60 mm high, left and right: from 0 to 200 mm. What else the garment has may lie anywhere across. */
    @Test
    void matesLieInOneBand() {
        MarkerOrder order = order(cloth().shadeCrosswise(200), bundle(ONE, pair(sleeve(), 1), alike(block(), 1)));
        Placement elsewhere = placed(block(), ONE, 0, 900_000);
        Placement right = placed(new Item(sleeve(), List.of(ONE), Hand.RIGHT, false), Orientation.AS_DRAWN, 0, 0);
        assertThat(check(order, elsewhere, right, left(200_000))).isEmpty();
        Violation.TooFarApart apart = only(Violation.TooFarApart.class, check(order, elsewhere, right, left(200_200)));
        assertThat(apart.extent()).isEqualTo(mm(200.2));
        assertThat(apart.sentence()).contains("sleeve S, R, of garment 1", "sleeve S, L, of garment 1", "crosswise");
    }

    /** Mirrored about the cloth's length it hangs down from its y. */
    private static Placement left(long topmost) {
        return placed(new Item(sleeve(), List.of(ONE), Hand.LEFT, true), FLIPPED, 300_000, topmost);
    }
}
