package lengthwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines of lettering as makers write them (common practice, no source), divided by a stroke. */
class LetteredNamesTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Plover back|cut 1 pair; Plover back",
                "cut 2|size M|Front; Front",
                "Front, cut 1 on fold; Front",
                "3 of 8: cup · size S; cup",
                "back-|wing|size XS; back-wing",
                "M|38|grain line|Yoke (lining); Yoke",
                "Sleeve - size 104; Sleeve",
            })
    void theFirstWordsThatSayNothingElseAreTheName(String lines, String name) {
        assertThat(LetteredNames.of(Arrays.asList(lines.split("\\|")))).contains(name);
    }

    @ParameterizedTest
    @CsvSource({"cut 2", "M", "12 cm", "place on fold", "size 38", "grain", "1.5 cm seam allowance", "'2 x 2'"})
    void linesThatSaySomethingElseAreNone(String line) {
        assertThat(LetteredNames.of(Arrays.asList(line))).isEmpty();
    }
}
