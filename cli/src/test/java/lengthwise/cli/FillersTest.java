package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Three bands of 100 × 400 mm on cloth 1 m wide: two lie side by side across it and the third before them, so that 200 mm of
 * it leave 600 × 100 mm of room beside the third. It takes two loops of 100 × 300, or none of 100 × 601.
 */
class FillersTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              canvas: {width: 1000, unusable-edge: {each-side: 0}, direction: either-way,
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, cut: 3}
              loop: {strip: {cut-width: 100, length: LOOP}, runs: crosswise, cut: 1, filler: {at-most: MOST}}
            gap: 0
            order:
              - {size: S, make: 1}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @Test
    void whatFitsIsLaidAndSaid() throws IOException {
        assertThat(laid("300", "5")).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains("loop: 2 of 5 are laid; for 3 no room was found.", "<b>20 cm (7 7/8 in)</b>");
        assertThat(here.read("out/report.json").replaceAll("\\s+", ""))
                .contains("\"fillers\":[{\"piece\":\"loop\",\"laid\":2,\"at_most\":5}]", "\"length_mm\":200.000");
        assertThat(here.read("out/canvas.svg")).contains("data-piece=\"loop\"");
    }

    /** The same marker is right for a job that allows as many, and wrong for one that allows fewer. */
    @Test
    void theCheckCountsThem() throws IOException {
        laid("300", "2");
        assertThat(checked()).as(here.said()).isZero();
        write("300", "1");
        assertThat(checked()).isEqualTo(5);
        assertThat(here.said()).contains("loop of garment 3 is not in the order.");
    }

    @Test
    void whatFitsNowhereStaysOut() throws IOException {
        assertThat(laid("601", "5")).as(here.said()).isZero();
        assertThat(here.read("out/report.html")).contains("loop: 0 of 5 are laid; for 5 no room was found.");
        assertThat(checked()).as(here.said()).isZero();
    }

    @Test
    void aFillerHasNoWearer() throws IOException {
        assertThat(laid("{measure: waist}", "5")).isEqualTo(3);
        assertThat(here.said()).contains("key pieces.loop.filler: a filler belongs to no wearer");
    }

    private int laid(String loop, String most) throws IOException {
        write(loop, most);
        return here.marker(60, "out");
    }

    private void write(String loop, String most) throws IOException {
        here.write("job.yaml", JOB.replace("LOOP", loop).replace("MOST", most));
    }

    private int checked() {
        return here.check("out/canvas.svg");
    }
}
