package lengthwise.rules;

import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WholeRepeatsTest {
    /** The rule: Industrial Cutting of Textile Materials, pp. 231, 256. The numbers by hand: 4 × 0.64 m = 2.56 m. */
    @Test
    void aMarkerOf2m37EndsAt2m56OnARepeatOf64cm() {
        WholeRepeats repeats = new WholeRepeats(mm(640), Length.ZERO);
        assertThat(repeats.upTo(mm(2370))).isEqualTo(mm(2560));
        assertThat(repeats.upTo(mm(2560))).isEqualTo(mm(2560));
        assertThat(repeats.downTo(mm(2370))).isEqualTo(mm(1920));
        assertThat(repeats.downTo(mm(1920))).isEqualTo(mm(1920));
    }

    /** By hand: with 2 cm at each end 2.37 m takes 2.41 m of cloth; 2.56 m of it leave 2.52 m. */
    @ParameterizedTest
    @CsvSource({"2370, 2520", "2520, 2520", "2520.001, 3160", "0, 600"})
    void endAllowancesCount(double end, double length) {
        assertThat(new WholeRepeats(mm(640), mm(40)).upTo(mm(end))).isEqualTo(mm(length));
    }

    @Test
    void withoutARepeatEveryLengthWillDo() {
        WholeRepeats any = new WholeRepeats(Length.ZERO, mm(40));
        assertThat(any.upTo(mm(2370.001))).isEqualTo(mm(2370.001));
        assertThat(any.downTo(mm(2370.001))).isEqualTo(mm(2370.001));
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
