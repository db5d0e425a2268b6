package lengthwise.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Shrinkage;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class PurchaseTest {
    /** 1 yd = 0.9144 m exactly: International Yard and Pound Agreement, 1959. */
    private static final Length YARD = Length.ofMillimetres(914.4);

    /** By hand: 2.00 m on cloth washed first at 3 % needs 2 / 0.97 = 2.0619 m; times 1.03 would be 1.9 mm short. */
    @Test
    void washingFirstDividesByWhatIsKept() {
        assertThat(bought(2000, 0.03)).isEqualTo(2_061_856);
    }

    /** Compensated length L / (1 − s): 100 at 5 % is 105.263, 10 at 3 % is 10.3093 (rule: foralltex.com, 2026). */
    @Test
    void compensatedLengths() {
        assertThat(bought(100, 0.05)).isEqualTo(105_264);
        assertThat(bought(10, 0.03)).isEqualTo(10_310);
    }

    private static long bought(double millimetres, double shrinkage) {
        Fabric fabric = TestFabric.plain()
                .shrinkage(shrinkage, 0.02, Shrinkage.Handling.PRE_WASH)
                .fabric();
        return Purchase.of(Length.ofMillimetres(millimetres), fabric).buy().micrometres();
    }

    /** Cloth is sold in 1/8 yd or 10 cm steps, rounded up: common practice, no source. By hand: 1.21 m is 1.3 m or 1 3/8 yd. */
    @Test
    void theShopsStepRoundsUpFromTheExactLength() {
        assertThat(boughtBy(Length.ofMillimetres(100), 1210)).isEqualTo(Length.ofMillimetres(1300));
        assertThat(boughtBy(new Length(YARD.micrometres() / 8), 1210))
                .isEqualTo(new Length(YARD.micrometres() * 11 / 8));
        assertThat(boughtBy(Length.ofMillimetres(100), 1500)).isEqualTo(Length.ofMillimetres(1500));
    }

    private static Length boughtBy(Length step, double millimetres) {
        return Purchase.of(
                        Length.ofMillimetres(millimetres),
                        TestFabric.plain().soldBy(step).fabric())
                .buy();
    }

    /** 25 000 yd and 3 % wastage are 25 750 yd: autogarment.com, "calculate fabric consumption". */
    @Test
    void flawsAreAShareOnTop() {
        Fabric fabric = with(Length.ZERO, 0.03).fabric();
        assertThat(Purchase.of(YARD.times(25_000), fabric).needed()).isEqualTo(YARD.times(25_750));
    }

    /** By hand: (1000 + 2 × 20) / 0.97 = 1072.165, + 2 × 30 = 1132.165, × 1.02 = 1154.808, to 1200. */
    @Test
    void everyAllowanceStandsByItselfAndTogetherTheyAreWhatIsBought() {
        Purchase purchase = Purchase.of(
                Length.ofMillimetres(1000),
                with(Length.ofMillimetres(30), 0.02)
                        .endAllowance(20)
                        .shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH)
                        .soldBy(Length.ofMillimetres(100))
                        .fabric());
        assertThat(purchase.shrinkage()).isEqualTo(new Length(32_165));
        assertThat(purchase.squaring()).isEqualTo(Length.ofMillimetres(60));
        assertThat(purchase.flaws().micrometres()).isBetween(22_643L, 22_644L);
        assertThat(purchase.buy()).isEqualTo(Length.ofMillimetres(1200));
        assertThat(purchase.marker()
                        .plus(purchase.ends())
                        .plus(purchase.shrinkage())
                        .plus(purchase.squaring())
                        .plus(purchase.flaws())
                        .plus(purchase.rounding()))
                .isEqualTo(purchase.buy());
    }

    private static TestFabric with(Length squaring, double flaws) {
        return TestFabric.plain().buying(new Fabric.Buying(squaring, flaws, OptionalDouble.empty()));
    }

    @Test
    void endsCountTwiceAndThePriceIsForWhatIsBought() {
        Purchase purchase = Purchase.of(
                Length.ofMillimetres(1000),
                TestFabric.plain()
                        .endAllowance(20)
                        .price(14.50, Length.ofMillimetres(1000))
                        .soldBy(Length.ofMillimetres(100))
                        .fabric());
        assertThat(purchase.ends()).isEqualTo(Length.ofMillimetres(40));
        assertThat(purchase.buy()).isEqualTo(Length.ofMillimetres(1100));
        assertThat(purchase.rounding()).isEqualTo(Length.ofMillimetres(60));
        assertThat(purchase.cost().orElseThrow()).isEqualTo(15.95);
    }
}
