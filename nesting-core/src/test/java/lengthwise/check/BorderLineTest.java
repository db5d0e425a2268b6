package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.check.Laying.turned;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import org.junit.jupiter.api.Test;

/** A sleeve of 100 mm whose hem, x = 0 in its frame, is keyed to a line 50 mm from a selvedge. */
class BorderLineTest {
    @Test
    void theHemLiesOnTheLineAndTheUpEndAwayFromIt() {
        assertThat(laid(Lying.Selvedge.NEAR, 50, QuarterTurn.QUARTER, 50_000)).isEmpty();
        assertThat(laid(Lying.Selvedge.FAR, 950, QuarterTurn.THREE_QUARTERS, 950_000))
                .isEmpty();
    }

    @Test
    void aFifthOfAMillimetreOffIsOff() {
        for (long y : new long[] {49_800, 50_200}) {
            Violation.OffBorder off =
                    only(Violation.OffBorder.class, laid(Lying.Selvedge.NEAR, 50, QuarterTurn.QUARTER, y));
            assertThat(off.turned()).isTrue();
            assertThat(off.by()).isEqualTo(0.2);
            assertThat(off.sentence()).isEqualTo("sleeve S of garment 1 lies 0.2 mm off the line of its border.");
        }
    }

    @Test
    void upsideDownOrOnGrainItDoesNotLieAsTheBorderAsks() {
        for (QuarterTurn turn : List.of(QuarterTurn.NONE, QuarterTurn.HALF, QuarterTurn.THREE_QUARTERS)) {
            Violation.OffBorder off = only(Violation.OffBorder.class, laid(Lying.Selvedge.NEAR, 500, turn, 500_000));
            assertThat(off.turned()).isFalse();
        }
    }

    private static List<Violation> laid(Lying.Selvedge selvedge, double line, QuarterTurn turn, long y) {
        Lying.Border border = new Lying.Border(Lying.Tie.LOWEST_POINT, selvedge, mm(line));
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)))
                .withLying(Map.of("sleeve", new Lying(false, Optional.of(border), Optional.empty())));
        return check(order, placed(sleeve(), ONE, turned(turn), 200_000, y));
    }
}
