package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Hand;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

class HandLetterTest {
    @Test
    void theLetterIsTheHandThatLiesThere() {
        MarkerOrder order = order(cloth(), bundle(ONE, new CutPiece(sleeve(), new Cut(1, Manner.PAIR), Hand.LEFT)));
        Placement left = placed(item(sleeve(), Hand.LEFT, ONE), new Orientation(false, QuarterTurn.NONE), 0, 0);
        Placement right = placed(item(sleeve(), Hand.RIGHT, ONE), FLIPPED, 0, 160_000);
        assertThat(check(order, left, right)).isEmpty();
        Placement letteredLeft = placed(item(sleeve(), Hand.LEFT, ONE), FLIPPED, 0, 160_000);
        assertThat(only(Violation.WrongHand.class, check(order, left, letteredLeft))
                        .sentence())
                .isEqualTo("sleeve S, L, of garment 1 is marked L, but what lies there is R.");
        assertThat(check(order, left))
                .singleElement()
                .extracting(Violation::sentence)
                .isEqualTo("Garment 1 lacks 1 × sleeve S, mirrored (R).");
    }
}
