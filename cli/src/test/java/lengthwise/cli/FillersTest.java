package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Test
    void whatFitsIsLaidAndSaid() throws IOException {
        assertThat(laid("300", "5")).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains("loop: 2 of 5 are laid; for 3 no room was found.", "<b>20 cm (7 7/8 in)</b>");
        assertThat(Files.readString(folder.resolve("out/report.json")).replaceAll("\\s+", ""))
                .contains("\"fillers\":[{\"piece\":\"loop\",\"laid\":2,\"at_most\":5}]", "\"length_mm\":200.000");
        assertThat(Files.readString(folder.resolve("out/canvas.svg"))).contains("data-piece=\"loop\"");
    }

    /** The same marker is right for a job that allows as many, and wrong for one that allows fewer. */
    @Test
    void theCheckCountsThem() throws IOException {
        laid("300", "2");
        assertThat(checked()).as(out.toString()).isZero();
        write("300", "1");
        assertThat(checked()).isEqualTo(5);
        assertThat(out.toString()).contains("loop of garment 3 is not in the order.");
    }

    @Test
    void whatFitsNowhereStaysOut() throws IOException {
        assertThat(laid("601", "5")).as(err.toString()).isZero();
        assertThat(Files.readString(folder.resolve("out/report.html")))
                .contains("loop: 0 of 5 are laid; for 5 no room was found.");
        assertThat(checked()).as(out.toString()).isZero();
    }

    @Test
    void aFillerHasNoWearer() throws IOException {
        assertThat(laid("{measure: waist}", "5")).isEqualTo(3);
        assertThat(err.toString()).contains("key pieces.loop.filler: a filler belongs to no wearer");
    }

    private int laid(String loop, String most) throws IOException {
        write(loop, most);
        return ended(
                "marker",
                folder.resolve("job.yaml").toString(),
                "--iterations",
                "60",
                "--workers",
                "1",
                "--out",
                folder.resolve("out").toString());
    }

    private void write(String loop, String most) throws IOException {
        Files.writeString(
                folder.resolve("job.yaml"), JOB.replace("LOOP", loop).replace("MOST", most), StandardCharsets.UTF_8);
    }

    private int checked() {
        return ended(
                "check",
                folder.resolve("out/canvas.svg").toString(),
                "--job",
                folder.resolve("job.yaml").toString());
    }

    private int ended(String... arguments) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), arguments);
    }
}
