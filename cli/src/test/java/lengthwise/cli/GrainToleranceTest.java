package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pieces a little off their grain, from the job file to the files that are written and checked. */
class GrainToleranceTest {
    /** A panel 100 mm wide and 600 tall on the page that leans by 5 mm; its grain line is 300 mm long. */
    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" width="800mm" height="800mm" viewBox="0 0 800 800">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="panel"><path class="cut" d="M105 50 H205 L200 650 H100 Z"/>
            <line class="grain" x1="150" y1="500" x2="150" y2="200" marker-end="url(#head)"/></g>
            </svg>
            """;

    private static final String JOB = """
            version: 1
            units: mm
            drawings: [{file: panel.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              twill: {width: 222.5, unusable-edge: {each-side: 10}, direction: either-way, sold-by: 100,
                      spread: {form: single-layer, end-allowance: {each-end: 20}}}
            pieces:
              panel: {cut: CUT, TOLERANCE}
            gap: 0
            order: [{make: 1}]
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));
    private String cut = "1 pair";

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    /**
     * On grain two panels of 105 mm in 202.5 mm do not lie side by side. Turned by 3 mm over the 300 mm of their line, 6 over
     * their length, they take 101 mm each: atan(3/300) = 0.573° by plane geometry.
     */
    @Test
    void whatIsTurnedIsNamed() throws IOException {
        assertThat(laid("grain-tolerance: 3 mm")).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains(
                        "Off their grain, within the tolerance and only because that shortens the marker:",
                        "panel, R, of garment 1 turned 0.57° ",
                        "panel, L, of garment 1 turned 0.57° ",
                        "clockwise",
                        "anticlockwise",
                        "Tilting within the grain tolerance saves");
        assertThat(here.read("out/twill.svg")).contains("turned 0.57° ");
        assertThat(here.read("out/report.json")).containsPattern("\"length_mm\" : 60[01]\\.");
        assertThat(here.check("out/twill.svg")).as(here.said()).isZero();
    }

    /** A marker turned by 0.573° is judged by a job that allows 0.2° less, and by one that allows nothing. */
    @Test
    void aFifthOfADegreeTooMuchIsFound() throws IOException {
        assertThat(laid("grain-tolerance: 3 mm")).as(here.said()).isZero();
        job("grain-tolerance: 0.573 deg");
        assertThat(here.check("out/twill.svg")).as(here.said()).isZero();
        job("grain-tolerance: 0.373 deg");
        assertThat(here.check("out/twill.svg")).isEqualTo(5);
        assertThat(here.said()).contains("lies 0.57", "° off grain");
        job("up: as-drawn");
        assertThat(here.check("out/twill.svg")).isEqualTo(5);
    }

    @Test
    void whereItIsOfNoUseItIsNotUsed() throws IOException {
        cut = "1 alike";
        assertThat(laid("grain-tolerance: 1 deg")).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains("The grain tolerance is not used")
                .doesNotContain("Off their grain");
    }

    @Test
    void contradictionsNameBoth() throws IOException {
        assertThat(laid("grain: bias, grain-tolerance: 1 deg")).isEqualTo(4);
        assertThat(here.said()).contains("(grain-tolerance)", "cut on the bias");
    }

    private int laid(String tolerance) throws IOException {
        here.write("panel.svg", SVG);
        job(tolerance);
        return here.marker(600, "out");
    }

    private void job(String tolerance) throws IOException {
        here.write("job.yaml", JOB.replace("CUT", cut).replace("TOLERANCE", tolerance));
    }
}
