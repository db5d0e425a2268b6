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
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.read;
import static lengthwise.check.Laying.rotated;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.strip;
import static lengthwise.check.Laying.turned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrainLineTest {
    @Test
    void twoTenthsOfADegreeAreOffGrain() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        PlacedPiece tilted = read(sleeve(), "", rotated(SLEEVE, 0.2).moved(new Point(1000, 1000)));
        Violation.OffGrain off = only(Violation.OffGrain.class, check(order, tilted));
        assertThat(off.degrees()).isCloseTo(0.2, within(0.002));
    }

    /**
     * On grain a straight edge is as far from the selvedge at both of its ends (sew-i-do, 2013). Where it is not, by geometry,
     * the angle is atan(d / L): 3 mm over 300 mm are 0.573°, over 600 mm 0.286°; 1/8 in over 300 mm are 0.606°.
     */
    @ParameterizedTest
    @CsvSource({"3, 300, 0.573", "3, 600, 0.286", "3.175, 300, 0.606", "5.24, 300, 1.001"})
    void whatIsOffAtOneEndIsAnAngle(double off, double length, double degrees) {
        double along = Math.sqrt(length * length - off * off);
        Piece wedge = piece("wedge", Outline.of(TestPieces.ring(0, 0, length, 0, 0, 60)));
        Ring lies = TestPieces.ring(10, 10, 10 + along, 10 + off, 10 - 60 * off / length, 10 + 60 * along / length);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(wedge, 1)));
        Violation.OffGrain found = only(Violation.OffGrain.class, check(order, read(wedge, "", Outline.of(lies))));
        assertThat(found.degrees()).isCloseTo(degrees, within(0.001));
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
