package lengthwise.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 1 in = 25.4 mm, 1 yd = 36 in = 914.4 mm exactly (International Yard and Pound Agreement, 1959). */
@Tag("written")
class LengthWordsTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0 mm",
        "3.55, 3.6 mm",
        "10, 1 cm",
        "462, 46.2 cm",
        "999.4, 99.9 cm",
        "999.5, 1.000 m",
        "1234.5678, 1.235 m",
        "-20, −2 cm"
    })
    void metricLengthsAreWrittenAsMakersSayThem(double millimetres, String expected) {
        assertThat(LengthWords.metric(Length.ofMillimetres(millimetres))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "25.4, 8, 1 in",
        "31.75, 8, 1 1/4 in",
        "460, 8, 18 1/8 in",
        "457.2, 8, 18 in",
        "0, 8, 0 in",
        "3.175, 8, 1/8 in",
        "1.5875, 16, 1/16 in",
        "-31.75, 8, −1 1/4 in"
    })
    void inchesAreFractionsInLowestTerms(double millimetres, int parts, String expected) {
        assertThat(LengthWords.inches(Length.ofMillimetres(millimetres), parts)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"914.4, 1 yd", "1600, 1 3/4 yd", "1600.201, 1 7/8 yd", "114.3, 1/8 yd", "0, 0 yd", "1257.3, 1 3/8 yd"})
    void yardsToBuyAreRoundedUpToAnEighth(double millimetres, String expected) {
        assertThat(LengthWords.yardsUp(Length.ofMillimetres(millimetres))).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "5172.694, 5.172 m (203 5/8 in)",
        "1000, 1.000 m (39 1/4 in)",
        "999.999, 99.9 cm (39 1/4 in)",
        "25.4, 2.5 cm (1 in)",
        "25.399, 2.5 cm (7/8 in)"
    })
    void whatNothingIsShorterThanIsNeverRoundedUp(double millimetres, String expected) {
        assertThat(LengthWords.atLeast(Length.ofMillimetres(millimetres))).isEqualTo(expected);
    }

    @Test
    void whatIsToBuyIsNeverRoundedDown() {
        assertThat(LengthWords.toBuy(Length.ofMillimetres(1234.001))).isEqualTo("1.235 m (1 3/8 yd)");
        assertThat(LengthWords.metricUp(Length.ofMillimetres(2057.4))).isEqualTo("2.058 m");
    }

    @Test
    void readsTheSameInEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(LengthWords.both(Length.ofMillimetres(462))).isEqualTo("46.2 cm (18 1/4 in)");
        } finally {
            Locale.setDefault(before);
        }
    }
}
