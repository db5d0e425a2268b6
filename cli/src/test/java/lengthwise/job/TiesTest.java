package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Ties by numbers worked out by hand: 14 neck ties of 46 cm, 3 rib ties of 100 cm and 4 of 106 cm, all 32 mm wide and
 * crosswise on 146 cm (73 cm to the fold).
 */
class TiesTest {
    private static final String JOB = """
            version: 1
            job: ties alone
            units: cm
            fabrics:
              reef-print:
                for: shell
                width: 150 cm
                unusable-edge: {each-side: 2 cm}
                direction: one-way
                spread: {form: FORM, end-allowance: {each-end: 2 cm}}
                sold-by: 10 cm
            pieces:
              neck-tie: {strip: {cut-width: 32 mm, length: 46 cm}, runs: crosswise, print: ignore, cut: {shell: 2CUT}}
              rib-tie: {strip: {cut-width: 32 mm, length: {measure: ribcage, plus: 30 cm}}, runs: crosswise, print: ignore, cut: {shell: 1CUT}}
            gap: GAP mm
            order:
              - {size: S, make: 3, ribcage: 70 cm}
              - {size: M, make: 4, ribcage: 76 cm}
            """;

    @TempDir
    Path folder;

    /** 100 + 46 = 146 fits a row exactly: 3 rows of rib and neck tie, 4 of rib ties, 11 neck ties in 4 rows: 11 × 32. */
    @Test
    void elevenRowsWithNoGap() throws Exception {
        assertThat(length("single-layer", "", 0)).isEqualTo(Length.ofMillimetres(352));
    }

    /** With 3 mm, 146 is no longer enough for both: 7 rows of rib ties and 5 of neck ties: 12 × 32 + 11 × 3. */
    @Test
    void twelveRowsWithThreeMillimetres() throws Exception {
        assertThat(length("single-layer", "", 3)).isEqualTo(Length.ofMillimetres(417));
    }

    /** On the fold every tie has its end there, so each takes a row of its own: 21 × 32. */
    @Test
    void twentyOneRowsOnTheFold() throws Exception {
        assertThat(length("fold-lengthwise", " on fold", 0)).isEqualTo(Length.ofMillimetres(672));
    }

    /** A neck tie of 18 in cut on the fold is 9 in from it; a rib tie is the rib measure + 12 in: common practice, no source. */
    @Test
    void halfAndWholeLengthsInInches() throws Exception {
        String inches = JOB.replace("46 cm", "18 in")
                .replace("30 cm", "12 in")
                .replace("32 mm", "1 1/4 in")
                .replace("70 cm", "28 in");
        MarkerOrder order = order(inches, "fold-lengthwise", " on fold", 0);
        assertThat(order.bundles().get(0).pieces())
                .satisfiesExactly(
                        neck -> {
                            assertThat(neck.piece().outline().box().height()).isEqualTo(228_600);
                            assertThat(neck.piece().outline().box().width()).isEqualTo(31_750);
                        },
                        rib -> assertThat(rib.piece().outline().box().height()).isEqualTo(20 * 25_400));
    }

    private Length length(String form, String cut, int gap) throws Exception {
        MarkerAnswer answer = MarkerMaking.make(
                order(JOB, form, cut, gap), Search.of(StopRule.iterations(3000), 1, 2), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker().length();
    }

    private MarkerOrder order(String job, String form, String cut, int gap) throws Exception {
        Path file = folder.resolve("ties.yaml");
        Files.writeString(
                file,
                job.replace("FORM", form).replace("CUT", cut).replace("GAP", String.valueOf(gap)),
                StandardCharsets.UTF_8);
        return Orders.of(JobReader.read(file)).fabrics().get(0).order();
    }
}
