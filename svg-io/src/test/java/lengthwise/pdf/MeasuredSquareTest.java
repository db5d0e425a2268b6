package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuredSquareTest {
    private static MeasuredSquare metric(double millimetres) {
        return new MeasuredSquare(Length.ofMillimetres(millimetres), MeasuredSquare.TEN_CENTIMETRES);
    }

    @Test
    void ninetySevenMillimetresAreReprintedAtTheScaleThatPutsThemRight() {
        MeasuredSquare small = metric(97);
        assertThat(small.isTrue()).isFalse();
        assertThat(small.scaleToSet()).isCloseTo(103.0928, within(1e-4)); // 100 / 97
        assertThat(small.answer()).startsWith("Reprint, don't cut").contains("103.1 %");
    }

    @ParameterizedTest
    @ValueSource(doubles = {99.5, 99.8, 100, 100.5})
    void halfAMillimetreIsTrue(double measured) {
        assertThat(metric(measured).isTrue()).isTrue();
        assertThat(metric(measured).answer()).startsWith("True");
    }

    @ParameterizedTest
    @ValueSource(doubles = {99.49, 100.51, 94.1, 101.6})
    void moreIsNot(double measured) {
        assertThat(metric(measured).isTrue()).isFalse();
    }

    /** 4 in = 101.6 mm exactly (International Yard and Pound Agreement, 1959), so the squares are not to be confused. */
    @Test
    void aFourInchSquareTakenForTheOtherIsSaid() {
        assertThat(metric(101.6).answer()).contains("other square").contains("4 in");
        MeasuredSquare inches = new MeasuredSquare(Length.ofMillimetres(101.6), MeasuredSquare.FOUR_INCHES);
        assertThat(inches.answer()).startsWith("True");
    }

    /** 15/16 in measured on a square of 1 in is 93.75 % (arithmetic); so are 3 3/4 in on one of 4 in. */
    @Test
    void inchesAreMeasuredOnTheSquareOfFourInches() {
        MeasuredSquare small = new MeasuredSquare(Length.ofMillimetres(3.75 * 25.4), MeasuredSquare.FOUR_INCHES);
        assertThat(small.scaleToSet()).isCloseTo(106.6667, within(1e-3));
        assertThat(small.answer()).contains("93.8 %").contains("106.7 %");
    }

    @Test
    void numbersAreTheSameInEveryLanguage() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(metric(97).answer()).contains("103.1 %");
        } finally {
            Locale.setDefault(before);
        }
    }
}
