package lengthwise.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.model.Length;
import lengthwise.model.Size;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ElasticWidthTest {
    /** Common practice, no source: 1/4 in (6.35 mm) up to 2X. */
    @ParameterizedTest
    @ValueSource(strings = {"XXS", "XS", "s", "M", "L", "XL", "1X", "2X", "XXL", "2XL", "2XS"})
    void narrowUpToTwoX(String size) {
        assertThat(ElasticWidth.usual(new Size(size))).contains(new Length(6_350));
    }

    /** Common practice, no source: 3/8 in (9.525 mm) from 3X. */
    @ParameterizedTest
    @ValueSource(strings = {"3X", "3XL", "XXXL", "4X", "6XL", " 3x "})
    void widerFromThreeX(String size) {
        assertThat(ElasticWidth.usual(new Size(size))).contains(new Length(9_525));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "38", "14W", "tall", "X", "LX"})
    void otherSizesHaveNoUsualWidth(String size) {
        assertThat(ElasticWidth.usual(new Size(size))).isEmpty();
    }
}
