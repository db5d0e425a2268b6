package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A job for each way of spreading, from its file to the report and back through the check. The pieces are rectangles, so
 * that lengths can be worked out by hand: bands of 40 × 20 cm that ignore the print, on cloth 100 cm wide that is all
 * used, with no gap and no end allowance.
 */
class SpreadsTest {
    private static final String JOB = """
            version: 1
            job: bands
            fabrics:
              cloth:
                width: 100 cm
                EDGE
                direction: one-way
                EXTRA
                spread: {SPREAD, end-allowance: {each-end: 0 cm}}
                price: 10 per m
                sold-by: 1 cm
            pieces:
              band: {strip: {cut-width: 20 cm, length: 40 cm}, runs: lengthwise, print: PRINT, cut: CUT}
            gap: 0 cm
            order:
              - {size: M, make: MAKE}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    /**
     * By hand. 20 bands in a single layer: 5 across, 4 columns of 40 cm. Folded lengthwise: 10 contours, 2 across 50 cm, 5
     * columns. Folded crosswise: 10 contours, 5 across, 2 columns of 40 cm, twice. With the selvedges to the middle: 10
     * contours, one on each side of the join, 5 columns. In a flat tube of 100 cm: as folded crosswise, once. In 4 plies:
     * 5 contours, one column, four times.
     */
    @ParameterizedTest
    @CsvSource({
        "form: single-layer,                    1600",
        "form: fold-lengthwise,                 2000",
        "form: fold-crosswise,                  1600",
        "form: selvedges-to-middle,             2000",
        "form: tube,                             800",
        "'form: plies-face-up, plies: 4',       1600",
        "'form: plies-face-to-face, plies: 4',  1600",
    })
    void whatIsBoughtOfEachWayOfSpreading(String spread, int millimetres) throws IOException {
        made(job(spread, "20 alike", "ignore", 1));
        assertThat(report("json")).contains("\"buy_mm\" : " + millimetres + ".000");
        assertThat(checked()).contains("nothing wrong");
    }

    /** A band of 40 cm on the crosswise fold reaches 20 cm from it; three lie side by side: 20 cm of marker, 40 to buy. */
    @Test
    void onOneWayClothACrosswiseFoldTakesABandOnTheFold() throws IOException {
        made(job("form: fold-crosswise", "1 on fold", "follow", 3));
        assertThat(report("json")).contains("\"length_mm\" : 200.000", "\"buy_mm\" : 400.000");
        assertThat(checked()).contains("nothing wrong");
        assertThat(Files.readString(folder.resolve("out/cloth.svg"))).contains("FOLD · START", "FOLDED CROSSWISE");
    }

    @Test
    void onOneWayClothACrosswiseFoldRefusesAPair() throws IOException {
        assertThat(run(job("form: fold-crosswise", "1 pair", "follow", 1))).isEqualTo(ExitCode.NO_MARKER.number());
        assertThat(here.said()).contains("band", "folded crosswise", "upside down");
    }

    /** 3 bands of 20 alike are 60: in 8 plies that is 8 contours and 4 bands over. */
    @Test
    void whatPliesGiveTooManyOfIsSaid() throws IOException {
        made(job("form: plies-face-up, plies: 8", "20 alike", "ignore", 3));
        assertThat(report("json"))
                .contains("4 band M more than ordered: 60 are ordered and the lay of 8 plies gives them 8");
    }

    /** 6 bands of one garment: single layer 5 + 1, two columns of 40 cm; folded 3 contours, two columns: by hand the same. */
    @Test
    void aFoldedAndASingleLayerAreCompared() throws IOException {
        made(job("form: fold-lengthwise, compare: single-layer", "6 alike", "ignore", 1));
        assertThat(report("html"))
                .contains("What the rules cost")
                .contains("Laid in a single layer the marker is 80 cm")
                .contains("as much as folded lengthwise");
        made(job("form: fold-lengthwise, compare: fold-crosswise", "1 pair", "ignore", 4));
        assertThat(report("html"))
                .contains("Laid folded crosswise the marker is 40 cm", "as much as folded lengthwise");
    }

    @Test
    void aComparisonThatCannotBeCutSaysWhy() throws IOException {
        made(job("form: fold-lengthwise, compare: fold-crosswise", "1 pair", "follow", 1));
        assertThat(report("html")).contains("Laid folded crosswise there is no marker: band M has an up end");
    }

    /** By hand: on the bias a band is (40 + 20) / √2 = 42.43 cm long and wide; on the straight grain it may run across: 20 cm. */
    @Test
    void whatTheBiasTakesIsSaid() throws IOException {
        made(job("form: single-layer", "1", "ignore", 1).replace("runs: lengthwise", "runs: bias"));
        assertThat(report("html"))
                .contains(
                        "Cutting on the bias takes 22.4 cm",
                        " more, and costs 2.24 more, than cutting the same on the straight grain")
                .contains("found 20 cm (7 7/8 in). That is what was found, not a proof.");
        assertThat(checked()).contains("nothing wrong");
    }

    /** Five bands fill a column of 40 cm, which no longer marker than that can be; turned round they fill the same. */
    @Test
    void oneWayCostsRectanglesNothing() throws IOException {
        made(job("form: single-layer", "5 alike", "follow", 1));
        assertThat(report("html")).contains("One-way adds nothing: without it no marker is shorter.");
    }

    /**
     * By hand: a flaw over the whole width takes the first 10 cm, so that four bands side by side end at 50 cm and not at 40.
     * 10 cm of cloth at 10 a metre are 1.00.
     */
    @Test
    void whatAFlawCostsIsSaidInMoneyToo() throws IOException {
        made(job("form: single-layer", "4 alike", "ignore", 1)
                .replace("    price:", "    flaws: [{from-start: 0 cm, length: 10 cm}]\n    price:"));
        assertThat(report("json")).contains("\"length_mm\" : 500.000");
        assertThat(report("html"))
                .contains("Keeping off the flaws adds 10 cm (3 7/8 in) and costs 1.00 more: ")
                .contains("found 40 cm (15 3/4 in).");
    }

    /** Six bands are a column of five and one more: beside that one 40 × 80 cm of the 100 cm stay whole. */
    @Test
    void whatIsLeftWholeIsListed() throws IOException {
        made(job("form: single-layer", "6 alike", "ignore", 1));
        assertThat(report("json").replaceAll("\\s+", " "))
                .contains(
                        "\"leftovers\" : [ { \"lengthwise_mm\" : 400.000, \"crosswise_mm\" : 800.000, \"x_mm\" : 400.000,");
        assertThat(report("html")).contains("Whole cloth left over", "<td>80 cm (31 1/2 in)</td>");
    }

    /** Short pile runs up and lies face to face, since face up it slips (Industrial Cutting of Textile Materials, p. 279). */
    @Test
    void pileIsOneWayAndSaysHowItRuns() throws IOException {
        String job = job("form: plies-face-up, plies: 2", "10 alike", "follow", 1)
                .replace("    direction: one-way\n", "    pile: up\n");
        made(job);
        assertThat(report("json")).contains("\"direction\" : \"one-way\"", "\"pile\" : \"up\"", "slide on each other");
        assertThat(report("html")).contains("Brushed towards the end of the marker the pile lies smooth");
        assertThat(Files.readString(folder.resolve("out/cloth.svg"))).contains("up; the pile runs this way");
        made(job.replace("pile: up", "pile: down"));
        assertThat(Files.readString(folder.resolve("out/cloth.svg"))).contains("up; the pile runs the other way");
        assertThat(run(job.replace("form: plies-face-up, plies: 2", "form: plies-face-to-face, plies-run: to-and-fro")))
                .isEqualTo(ExitCode.NO_MARKER.number());
    }

    private static String job(String spread, String cut, String print, int make) {
        return JOB.replace("SPREAD", spread)
                .replace("CUT", "\"" + cut + "\"")
                .replace("PRINT", print)
                .replace("MAKE", Integer.toString(make))
                .replace("    EXTRA\n", "")
                .replace("    EDGE\n", spread.contains("tube") ? "" : "    unusable-edge: {each-side: 0 cm}\n");
    }

    private void made(String job) throws IOException {
        assertThat(run(job)).as(here.said()).isEqualTo(ExitCode.DONE.number());
    }

    private int run(String job) throws IOException {
        here.write("job.yaml", job);
        return here.marker(20, "out");
    }

    private String checked() {
        here.check("out/cloth.svg");
        return here.said();
    }

    private String report(String ending) throws IOException {
        return here.read("out/report." + ending);
    }
}
