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

import lengthwise.geometry.Box;
import lengthwise.model.MarkerOrder;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class FlawsTest {
    @Test
    void aFlawMayBeTouchedAndNotCovered() {
        TestFabric flawed = cloth().flaws(new Box(100_000, 0, 110_000, 10_000));
        MarkerOrder order = order(flawed, bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 0, 0))).isEmpty();
        Violation.OverFlaw over = only(Violation.OverFlaw.class, check(order, placed(block(), ONE, 200, 0)));
        assertThat(over.squareMillimetres()).isCloseTo(2, within(1e-9));
        assertThat(over.sentence()).contains("the flaw from x 100 to 110 mm, y 0 to 10 mm: 2 mm² of it, 0.2 mm");
    }
}
