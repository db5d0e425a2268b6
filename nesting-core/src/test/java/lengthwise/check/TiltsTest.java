package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TiltsTest {
    private static final Lying ONE_DEGREE = tolerant(new GrainTolerance.Degrees(1));

    @ParameterizedTest
    @ValueSource(doubles = {-1, -0.3, 0.001, 1})
    void aPieceMayBeOffByItsTolerance(double degrees) {
        assertThat(check(alone(ONE_DEGREE), laid(degrees))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1.2, 1.2, 1.01})
    void andByNoMore(double degrees) {
        Violation.OffGrain off = only(Violation.OffGrain.class, check(alone(ONE_DEGREE), laid(degrees)));
        assertThat(off.degrees()).isCloseTo(Math.abs(degrees), within(0.005));
    }

    @Test
    void withoutOneByNothing() {
        only(Violation.OffGrain.class, check(alone(Lying.ANYWHERE), laid(0.2)));
    }

    /** 3 mm over the 100 mm of a sleeve without a drawn line: atan(0.03) = 1.7184° (plane geometry). */
    @Test
    void aDeviationGoesOverTheLengthOfThePiece() {
        MarkerOrder order = alone(tolerant(new GrainTolerance.Deviation(Length.ofMillimetres(3))));
        assertThat(check(order, laid(1.718))).isEmpty();
        only(Violation.OffGrain.class, check(order, laid(1.918)));
    }

    /** A pair is tilted in its own frames alike, which is oppositely on the cloth. */
    @Test
    void leftAndRightAreTiltedEquallyAndOppositely() {
        MarkerOrder order = order(cloth(), bundle(ONE, pair(sleeve(), 1))).withLying(Map.of("sleeve", ONE_DEGREE));
        assertThat(check(order, right(0.8), left(0.8))).isEmpty();
        Violation.TiltedUnlike unlike = only(Violation.TiltedUnlike.class, check(order, right(0.8), left(0.6)));
        assertThat(unlike.degrees()).isCloseTo(0.2, within(0.005));
        only(Violation.TiltedUnlike.class, check(order, right(0.8), left(-0.8)));
        only(Violation.TiltedUnlike.class, check(order, right(0.2), left(0)));
    }

    private static Placement right(double degrees) {
        return placed(
                new Item(sleeve(), List.of(ONE), Hand.RIGHT, false),
                Orientation.AS_DRAWN.tilted((int) (1e6 * degrees)),
                50_000,
                50_000);
    }

    private static Placement left(double degrees) {
        return placed(
                new Item(sleeve(), List.of(ONE), Hand.LEFT, true),
                FLIPPED.tilted((int) (1e6 * degrees)),
                50_000,
                400_000);
    }

    private static Lying tolerant(GrainTolerance tolerance) {
        return new Lying(false, Optional.empty(), Optional.empty(), Optional.of(tolerance));
    }

    private static MarkerOrder alone(Lying lying) {
        return order(cloth(), bundle(ONE, alike(sleeve(), 1))).withLying(Map.of("sleeve", lying));
    }

    private static Placement laid(double degrees) {
        return placed(sleeve(), ONE, Orientation.AS_DRAWN.tilted((int) (1e6 * degrees)), 50_000, 50_000);
    }
}
