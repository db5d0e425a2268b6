package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.SLEEVE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.read;
import static lengthwise.check.Laying.rotated;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.strip;
import static lengthwise.check.Laying.turned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import org.junit.jupiter.api.Test;

class GrainLineTest {
    @Test
    void twoTenthsOfADegreeAreOffGrain() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        PlacedPiece tilted = read(sleeve(), "", rotated(SLEEVE, 0.2).moved(new Point(1000, 1000)));
        Violation.OffGrain off = only(Violation.OffGrain.class, check(order, tilted));
        assertThat(off.degrees()).isCloseTo(0.2, within(0.002));
    }

    @Test
    void aQuarterTurnIsForStrips() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        Violation.OffGrain off = only(
                Violation.OffGrain.class, check(order, placed(block(), ONE, turned(QuarterTurn.QUARTER), 30_000, 0)));
        assertThat(off.degrees()).isEqualTo(90);
        Piece tie = strip();
        MarkerOrder ties = order(cloth(), bundle(ONE, alike(tie, 1)));
        assertThat(check(ties, placed(tie, ONE, turned(QuarterTurn.QUARTER), 30_000, 0)))
                .isEmpty();
    }
}
