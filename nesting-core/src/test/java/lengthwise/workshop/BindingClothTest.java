package lengthwise.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BindingClothTest {
    private static final Length WIDE = inches(200);

    /**
     * A square of 20 in gives 200 in of 2 in strip, one of 36 in 648, one of 12 in 72: mydecozo.co.uk/680, sewaquilt.com. The
     * others by the same rule, length = area / strip width.
     */
    @ParameterizedTest
    @CsvSource({"200,2,20", "648,2,36", "72,2,12", "259.2,1.25,18", "320,1.25,20", "460.8,1.25,24", "864,1.5,36"})
    void squareForBias(double length, double width, double side) {
        BindingCloth cloth = BindingCloth.bias(inches(length), inches(width), WIDE, Length.ZERO);
        assertThat(cloth.length()).isEqualTo(inches(side));
        assertThat(cloth.width()).isEqualTo(inches(side));
    }

    /** The side is the root of length times width, rounded up: mydecozo.co.uk; quiltersquestiontime.com, 2021. */
    @ParameterizedTest
    @CsvSource({"250,2,22.36,23", "100,3.5,18.71,19", "450,2.25,31.82,32"})
    void squareForAnyLength(double length, double width, double exact, int whole) {
        Length side = BindingCloth.bias(inches(length), inches(width), WIDE, Length.ZERO)
                .length();
        assertThat(side.millimetres() / 25.4).isCloseTo(exact, within(0.005));
        assertThat(side.upTo(inches(1))).isEqualTo(inches(whole));
    }

    /** With 1/4 in lost to the seam a square of 22 in gives 157.7 in of 3 in strip (157.6875): a page on bias. */
    @Test
    void theSeamTakesItsPart() {
        assertThat(BindingCloth.bias(inches(157.6875), inches(3), WIDE, inches(0.25))
                        .length())
                .isBetween(inches(22), inches(22).plus(new Length(1)));
    }

    /** A strip of 2 in takes 2.8284 in along the selvedge (2 · √2), so seven of them lie along 19.8 in, and eight along 20. */
    @Test
    void stripsLieBesideEachOtherOnTheBias() {
        BindingCloth twenty = BindingCloth.bias(inches(200), inches(2), WIDE, Length.ZERO);
        assertThat(twenty.strips()).isEqualTo(8);
        assertThat(twenty.joins()).isEqualTo(7);
        assertThat(BindingCloth.bias(inches(196), inches(2), WIDE, Length.ZERO).strips())
                .isEqualTo(7);
    }

    /** On cloth that is too narrow for the square the area is the same: 648 in of 2 in need 1296 in², 54 in of cloth 24 in wide. */
    @Test
    void onNarrowClothAnOblong() {
        BindingCloth cloth = BindingCloth.bias(inches(648), inches(2), inches(24), Length.ZERO);
        assertThat(cloth.width()).isEqualTo(inches(24));
        assertThat(cloth.length()).isEqualTo(inches(54));
    }

    /** 2 · 60 + 2 · 72 + 10 = 274 in of binding from strips of 40 in are 7 strips: a page on binding; of 2.5 in, 17.5 in of cloth. */
    @Test
    void straightStrips() {
        BindingCloth cloth = BindingCloth.straight(inches(274), inches(2.5), inches(40), Length.ZERO);
        assertThat(cloth.strips()).isEqualTo(7);
        assertThat(cloth.length()).isEqualTo(inches(17.5));
    }

    /**
     * Each mitred join takes about the width of the strip: common practice, no source. So 3 strips of 58 in, 1.25 in wide, give
     * 171.5 in.
     */
    @Test
    void joinsTakeTheirLength() {
        assertThat(straight(171.5).strips()).isEqualTo(3);
        assertThat(straight(171.5).joins()).isEqualTo(2);
        assertThat(straight(171.501).strips()).isEqualTo(4);
        assertThat(straight(58).strips()).isEqualTo(1);
        assertThat(straight(58).joins()).isZero();
        assertThat(straight(58.001).strips()).isEqualTo(2);
    }

    @Test
    void stripsThatGainNothingAreRefused() {
        assertThatThrownBy(() -> BindingCloth.straight(inches(10), inches(2), inches(2), inches(2)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static BindingCloth straight(double length) {
        return BindingCloth.straight(inches(length), inches(1.25), inches(58), inches(1.25));
    }

    private static Length inches(double inches) {
        return Length.ofMillimetres(25.4 * inches);
    }
}
