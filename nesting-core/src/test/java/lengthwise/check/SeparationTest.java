package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;

/** Two pieces: apart, by their gaps. */
class SeparationTest {
    @Test
    void oneMicrometreOfOverlapIsToldWithItsAmount() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 2)));
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 30_000)))
                .isEmpty();
        Violation.Overlap overlap = only(
                Violation.Overlap.class, check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 29_999)));
        assertThat(overlap.squareMillimetres()).isCloseTo(0.1, within(1e-6));
        assertThat(overlap.thickness()).isCloseTo(0.001, within(1e-5));
        assertThat(overlap.sentence())
                .isEqualTo("block S of garment 1 overlaps block S of garment 1: 0.1 mm² in common, 0.001 mm at its"
                        + " thickest.");
    }

    @Test
    void aGapIsKeptOrMissedByAMicrometre() {
        MarkerOrder order =
                new MarkerOrder(cloth().fabric(), Length.ofMillimetres(3), List.of(bundle(ONE, alike(block(), 2))));
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 33_000)))
                .isEmpty();
        Violation.TooClose close = only(
                Violation.TooClose.class, check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 32_999)));
        assertThat(close.distance()).isCloseTo(2.999, within(1e-9));
        assertThat(close.sentence()).contains("lies 2.999 mm from").endsWith("the gap has to be 3 mm.");
    }

    /** Block and plate lie 3 mm apart; a gap of 5 mm of the plate's own is larger, one of 1 mm is not. */
    @Test
    void betweenTwoPiecesTheLargerOfTheirGapsCounts() {
        Piece plate = piece("plate", block().outline());
        List<Bundle> bundles = List.of(bundle(ONE, alike(block(), 1), alike(plate, 1)));
        Placement[] laid = {placed(block(), ONE, 0, 0), placed(plate, ONE, 0, 33_000)};
        Length gap = Length.ofMillimetres(3);
        assertThat(check(
                        new MarkerOrder(cloth().fabric(), gap, Map.of("plate", Length.ofMillimetres(1)), bundles),
                        laid))
                .isEmpty();
        Violation.TooClose close = only(
                Violation.TooClose.class,
                check(new MarkerOrder(cloth().fabric(), gap, Map.of("plate", Length.ofMillimetres(5)), bundles), laid));
        assertThat(close.sentence()).endsWith("the gap has to be 5 mm.");
    }
}
