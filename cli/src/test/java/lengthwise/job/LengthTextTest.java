package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.LongStream;
import lengthwise.model.Length;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("written")
class LengthTextTest {
    /**
     * Definitions: International Yard and Pound Agreement 1959, NIST Handbook 44 appendix C (1 in = 25.4 mm, 1 yd = 36
     * in = 0.9144 m, exactly); the rest is arithmetic.
     */
    @ParameterizedTest(name = "{0} = {1} µm")
    @CsvSource(
            delimiter = '|',
            value = {
                "1 in      | 25400",
                "1 yd      | 914400",
                "36 in     | 914400",
                "1 ft      | 304800",
                "3 yd      | 2743200",
                "4 in      | 101600", // the test square: 4 in is 101.6 mm, not 100 mm
                "10 cm     | 100000",
                "1/4 in    | 6350", // seam allowances as patterns state them
                "3/8 in    | 9525",
                "1/2 in    | 12700",
                "5/8 in    | 15875",
                "1/8 yd    | 114300",
                "1 1/4 in  | 31750",
                "1-1/4 in  | 31750",
                "1¼ in     | 31750",
                "½ yd      | 457200",
                "2 yd 4 in | 1930400",
                "4 yd 10 in| 3911600",
                "1 m 5 cm  | 1050000",
                "18\"      | 457200",
                "5' 2\"    | 1574800",
                "5 ft 2 in | 1574800",
                "12.5 cm   | 125000",
                ".5 in     | 12700",
                "0.5in     | 12700",
                "1/3 yd    | 304800",
                "1/64 in   | 397", // 396.875: the nearest micrometre
                "0.0005 mm | 1", // half a micrometre, upwards
                "0.00049 mm| 0",
                "2 Yards   | 1828800",
                "3 MM      | 3000",
                "1 inch    | 25400",
                "0 cm      | 0",
                "-3 mm     | -3000",
                "−3 mm     | -3000",
                "150 cm  | 1500000",
                "1000 m    | 1000000000",
            })
    void readsWhatMakersWrite(String text, long micrometres) throws JobException {
        assertThat(LengthText.parse(text)).isEqualTo(new Length(micrometres));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "cm",
                "NaN cm",
                "inf",
                "Infinity cm",
                "1e3 mm",
                "0x10 mm",
                "--3 mm",
                "3 mm.",
                "3. cm",
                "1,5 cm",
                "1.500,5 mm",
                "1,000 mm",
                "1/0 in",
                "1/99999 in",
                "1 1 in",
                "1/2/3 in",
                "3 cm 2",
                "2 in 4 in",
                "4 in 2 yd",
                "1 yd 2 cm",
                "5 ells",
                "3 cm²",
                "1 km",
                "1001 m",
                "٣ cm",
                "3 c m",
                "150 cm wide",
                "3",
                "1 1/4",
                "+3 mm",
                "0000000000000000000000000000000000000000000000001 mm"
            })
    void refusesWhatIsNoLength(String text) {
        assertThatThrownBy(() -> LengthText.parse(text))
                .isInstanceOf(JobException.class)
                .hasMessageStartingWith("found ");
    }

    @ParameterizedTest
    @EnumSource(LengthUnit.class)
    void aBareNumberUsesTheUnitsOfTheFile(LengthUnit unit) throws JobException {
        assertThat(LengthText.parse("2 1/2", Optional.of(unit))).isEqualTo(LengthText.parse("2 1/2 " + unit.symbol()));
    }

    @ParameterizedTest(name = "{0} µm in {1}: {2}")
    @CsvSource({
        "1500000, CM, 150 cm",
        "32000, MM, 32 mm",
        "-3500, MM, -3.5 mm",
        "1, M, 0.000001 m",
        "31750, IN, 1 1/4 in",
        "397, IN, 1/64 in",
        "114300, YD, 1/8 yd",
        "1574800, FT, 5.166667 ft",
        "0, IN, 0 in",
    })
    void printsTheShortestTextThatReadsBack(long micrometres, LengthUnit unit, String text) {
        assertThat(LengthText.print(new Length(micrometres), unit)).isEqualTo(text);
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsPrintedReadsBack(long seed) throws JobException {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        for (LengthUnit unit : LengthUnit.values()) {
            Length length = new Length(random.nextLong(1L << random.nextInt(1, 30)));
            String text = LengthText.print(length, unit);
            assertThat(LengthText.parse(text)).as(text).isEqualTo(length);
        }
    }

    /** On a command line there is no file that could state the units. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"12", "-12", "1/2", "0.5"})
    void aBareNumberOutsideAFileIsToldNothingOfOne(String number) {
        assertThatThrownBy(() -> LengthText.parse(number))
                .isInstanceOf(JobException.class)
                .hasMessageContaining("bare number")
                .hasMessageEndingWith(" in")
                .hasMessageNotContainingAny("file");
        assertThatThrownBy(() -> LengthText.parse(number, Optional.empty()))
                .hasMessageContaining("put units: cm at the top of the file");
    }
}
