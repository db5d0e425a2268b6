package lengthwise.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StitchTest {
    /** melgeecrafts.com: a seam of 220 cm in 301 takes 550 cm, 275 by the needle and 275 from the bobbin. */
    @Test
    void lockstitch() {
        Stitch stitch = Stitch.of(301).orElseThrow();
        assertThat(stitch.thread(cm(220))).isEqualTo(cm(550));
        assertThat(stitch.needleThread(cm(220))).contains(cm(275));
    }

    /** The same seam in 401 by the same table: 1210 cm, of which the needle takes a quarter, 302.5. */
    @Test
    void chainstitch() {
        Stitch stitch = Stitch.of(401).orElseThrow();
        assertThat(stitch.thread(cm(220))).isEqualTo(cm(1210));
        assertThat(stitch.needleThread(cm(220))).contains(cm(302.5));
    }

    /** Thread for 1 cm of seam, scribd 194966618 (it quotes Carr and Latham and a thread maker); ten metres of each. */
    @ParameterizedTest
    @CsvSource({
        "101,40", "301,25", "304,70", "401,55", "406,180", "503,120", "504,140", "512,180", "516,200", "602,250",
        "605,280", "606,320"
    })
    void tenMetresOfSeam(int number, int metres) {
        assertThat(Stitch.of(number).orElseThrow().thread(cm(1000))).isEqualTo(cm(100 * metres));
    }

    /** No source gives a figure for these, so none is made up. */
    @ParameterizedTest
    @ValueSource(ints = {514, 607, 100, 999})
    void noFigureIsInvented(int number) {
        assertThat(Stitch.of(number)).isEmpty();
        assertThat(Stitch.known()).doesNotContain(number);
    }

    @Test
    void aShareThatIsNotKnownIsNotGiven() {
        assertThat(Stitch.of(606).orElseThrow().needleThread(cm(100))).isEmpty();
    }

    private static Length cm(double centimetres) {
        return Length.ofMillimetres(10 * centimetres);
    }
}
