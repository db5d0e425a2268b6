package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Motifs of a print that pieces mind, from the job file to the files that are written and checked. The piece is a square of 20 cm
 * with a drill hole in its middle; the print comes again every 32 cm from the corner of the cloth.
 */
class MotifJobTest {
    private static final String JOB = """
            version: 1
            units: cm
            drawings: [{file: patch.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              cloth:
                width: WIDTH
                unusable-edge: {each-side: 0}
                direction: one-way
                repeat: {lengthwise: 32, crosswise: 32, motifs: {rose: {lengthwise: 10, crosswise: 10, radius: 4},
                         bar: {lengthwise: 30, crosswise: 16, length: 2, width: 31.9}}}
                spread: {form: FORM, end-allowance: {each-end: 0}}
                price: 10 per m
                sold-by: 1
            pieces:
              patch: {cut: 2 alike, MIND}
            gap: 0
            order: [{make: 1}]
            """;

    private static final String PATCH = """
            <svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="patch"><path class="cut" d="M50 50 H250 V250 H50 Z"/>
            <line class="grain" x1="90" y1="220" x2="90" y2="80" marker-end="url(#head)"/>
            <circle class="drill" cx="150" cy="150" r="1.5"/></g>
            </svg>
            """;

    private static final String HOLE_OFF = "keep-off: {motif: rose, at: drill-hole 1}";

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    /**
     * By hand: on cloth as wide as a square two lie one behind the other on 40 cm, their holes at 10 and 30 cm. The first would have its
     * hole in the middle of the rose, so it lies 4 cm on; 44 cm.
     */
    @Test
    void aHoleKeepsOffTheRose() throws IOException {
        made(HOLE_OFF);
        assertThat(here.read("out/report.json")).containsPattern("\"length_mm\" : 440\\.0\\d\\d");
        assertThat(here.read("out/report.html"))
                .containsPattern("Minding the motifs adds 4 cm")
                .contains("its motifs lie where the marker shows them");
        // its middle is at 100, 100, from 60 to 140
        assertThat(here.read("out/cloth.svg").replace(".000", ""))
                .contains("class=\"motif\"", "M60 100 a40 40 0 1 0 80 0 a40 40 0 1 0 -80 0 Z", ">rose<")
                .contains("class=\"repeat-grid\"");
        assertThat(here.check("out/cloth.svg")).as(here.said()).isZero();
    }

    /** The first hole lies on the rose at 10 cm; that of the second square on the near edge of the next, at 38: 48 cm, and a little. */
    @Test
    void aHoleLiesOnTheRose() throws IOException {
        made("keep-on: {motif: rose, at: drill-hole 1}");
        assertThat(here.read("out/report.json")).containsPattern("\"length_mm\" : 480\\.\\d{3}");
        assertThat(here.check("out/cloth.svg")).as(here.said()).isZero();
    }

    /** Of 32 cm the bar takes from 29 to 31: the first square lies from 0 to 20, the second from 31. */
    @Test
    void aPieceKeepsOffTheBar() throws IOException {
        made("keep-off: [{motif: bar}]");
        assertThat(here.read("out/report.json")).containsPattern("\"length_mm\" : 510\\.000");
        assertThat(here.check("out/cloth.svg")).as(here.said()).isZero();
    }

    /** Laid without minding it, a square breaks the rule that the check is then asked about. */
    @Test
    void whatBreaksItIsFound() throws IOException {
        made("up: as-drawn");
        here.write("job.yaml", job("20", "single-layer", HOLE_OFF));
        assertThat(here.check("out/cloth.svg")).isEqualTo(ExitCode.CHECK_FAILED.number());
        assertThat(here.said())
                .contains("The drill hole 1 of patch", "40 mm inside the motif rose, which it keeps off");
    }

    /** Two plies that mind a motif begin alike: with no ends the marker of one square is 24 cm, and the next ply begins at 32. */
    @Test
    void pliesBeginAlike() throws IOException {
        assertThat(run(job("20", "plies-face-up", HOLE_OFF))).as(here.said()).isZero();
        assertThat(here.read("out/report.json")).contains("\"length_mm\" : 320.000");
        assertThat(here.read("out/report.html")).contains("Each ply begins 32 cm");
        assertThat(here.check("out/cloth.svg")).as(here.said()).isZero();
    }

    @Test
    void contradictionsSayWhatToDo() throws IOException {
        assertThat(run(job("20", "single-layer", "keep-off: [{motif: rose}, {motif: bar}]")))
                .isEqualTo(ExitCode.NO_MARKER.number());
        assertThat(here.said())
                .contains(
                        "patch finds no place on cloth: where it minds the motifs of the print there is no room for it.");
        assertThat(run(job("20", "tube", HOLE_OFF)
                        .replace("unusable-edge: {each-side: 0}", "price: 9 per m")
                        .replace("    price: 10 per m\n", "")))
                .isEqualTo(ExitCode.NO_MARKER.number());
        assertThat(here.said()).contains("the print of the lower layers does not lie under it");
        assertThat(run(job("20", "single-layer", "keep-off: {motif: rosw}"))).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said()).contains("pieces.patch.keep-off", "cloth has no motif rosw; it has rose, bar");
        assertThat(run(job("20", "single-layer", HOLE_OFF).replaceAll("(?s), motifs: .*?}}}", "}")))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said()).contains("no fabric has motifs", "motifs: {rose: {");
    }

    private static String job(String width, String form, String mind) {
        return JOB.replace("WIDTH", width).replace("FORM", form).replace("MIND", mind);
    }

    private void made(String mind) throws IOException {
        assertThat(run(job("20", "single-layer", mind))).as(here.said()).isZero();
    }

    private int run(String job) throws IOException {
        here.write("patch.svg", PATCH);
        here.write("job.yaml", job);
        return here.marker(60, "out");
    }
}
