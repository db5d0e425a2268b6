package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Violation.OffFabric.Edge.FAR;
import static lengthwise.check.Violation.OffFabric.Edge.FOLD;
import static lengthwise.check.Violation.OffFabric.Edge.NEAR;
import static lengthwise.check.Violation.OffFabric.Edge.START;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.model.MarkerOrder;
import org.junit.jupiter.api.Test;

class CuttableAreaTest {
    @Test
    void everyEdgeOfTheFabricIsAnEdge() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 900_000, 970_000))).isEmpty();
        assertThat(off(check(order, placed(block(), ONE, -1, 0)))).isEqualTo(START);
        assertThat(off(check(order, placed(block(), ONE, 0, -1)))).isEqualTo(NEAR);
        assertThat(off(check(order, placed(block(), ONE, 0, 970_001)))).isEqualTo(FAR);
        MarkerOrder folded = order(folded(), bundle(ONE, pair(block(), 1)));
        assertThat(off(check(folded, placed(block(), ONE, 0, -1)))).isEqualTo(FOLD);
        assertThat(off(check(folded, placed(block(), ONE, 0, 470_001)))).isEqualTo(FAR);
    }

    @Test
    void theStatedLengthHoldsEveryPiece() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        Violation.LengthWrong wrong = only(Violation.LengthWrong.class, check(order, placed(block(), ONE, 900_200, 0)));
        assertThat(wrong.sentence())
                .isEqualTo(
                        "The marker is said to be 1000 mm long, but block S of garment 1 ends 0.2 mm after" + " that.");
    }

    private static Violation.OffFabric.Edge off(List<Violation> violations) {
        return only(Violation.OffFabric.class, violations).edge();
    }
}
