package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two customers: their measures choose the size, and their ties go by their measures. */
class MadeToMeasureTest {
    private static final String JOB = """
            version: 1
            units: cm
            fabrics:
              canvas: {width: 150, direction: either-way}
            pieces:
              band: {strip: {cut-width: 10, length: {by-size: {S: 70, M: 78}}}, runs: lengthwise, cut: 1}
              tie: {strip: {cut-width: 6, length: {measure: bust, times: 0.5, plus: 30}}, runs: lengthwise, cut: 2}
            sizes: EN 13402-3
            order:
              - {customer: Wren, bust: 84}
              - {customer: Teal, bust: TEAL, make: 2}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @Test
    void namesAndLengthsGoToEveryPaper() throws IOException {
        assertThat(laid("92")).as(here.said()).isZero();
        String marker = here.read("out/canvas.svg");
        assertThat(marker).contains("data-customer=\"Wren\"", "data-customer=\"Teal\"", "garment 1 Wren");
        // 84 / 2 + 30 = 72 cm and 92 / 2 + 30 = 76 cm.
        assertThat(here.read("out/report.html"))
                .contains("Made to measure", "bust 84 cm (33 1/8 in) is S", "tie 72 cm", "tie 76 cm", "band 78 cm");
        assertThat(here.read("out/report.json").replaceAll("\\s+", ""))
                .contains("\"customer\":\"Teal\",\"garments\":[2,3],\"size\":\"M\"", "\"length_mm\":760.000");
        assertThat(here.read("out/canvas-placement.html")).contains("1 Wren", "3 Teal");
        assertThat(here.check("out/canvas.svg")).as(here.said()).isZero();
    }

    /** The names were exchanged in the job after the marker was made: what is written on the pieces is wrong now. */
    @Test
    void theCheckReadsTheNames() throws IOException {
        laid("84");
        here.write("job.yaml", JOB.replace("Wren", "Lark").replace("TEAL", "84"));
        assertThat(here.check("out/canvas.svg")).isEqualTo(5);
        assertThat(here.said())
                .contains("band S of garment 1 (Wren) is ordered for Lark, but Wren is written on it.")
                .doesNotContain("garment 2");
    }

    @Test
    void betweenTwoSizesItAsks() throws IOException {
        assertThat(laid("90")).isEqualTo(3);
        assertThat(here.said()).contains("job.yaml:11:5", "Teal is between sizes", "write size: S or size: M");
        here.write("job.yaml", JOB.replace("bust: TEAL", "bust: 90, size: M"));
        assertThat(here.marker(5, "out")).as(here.said()).isZero();
        assertThat(here.read("out/report.html")).contains("as ordered; bust 90 cm (35 3/8 in) is S as well as M");
    }

    @Test
    void theFilledLayOfAPlanKeepsTheNames() throws IOException {
        here.write("job.yaml", JOB.replace("TEAL", "92"));
        assertThat(here.run(
                        "plan",
                        here.path("job.yaml"),
                        "--iterations",
                        "5",
                        "--workers",
                        "1",
                        "--out",
                        here.path("plan")))
                .as(here.said())
                .isZero();
        assertThat(here.read("plan/plan.html")).contains("S Wren", "M Teal");
        assertThat(here.read("plan/canvas-lay-1.svg")).contains("data-customer=");
    }

    private int laid(String bust) throws IOException {
        here.write("job.yaml", JOB.replace("TEAL", bust));
        return here.marker(5, "out");
    }
}
