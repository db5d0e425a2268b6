package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One shade for a garment, from the job file to the files that are written and checked. */
class ShadeJobTest {
    /** A front with one slanting side, 100 wide and 160 tall, its grain up the page. */
    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="front"><path class="cut" d="M100 100 H200 V260 H140 Z"/>
            <line class="grain" x1="170" y1="240" x2="170" y2="130" marker-end="url(#head)"/></g>
            </svg>
            """;

    /** Cloth as wide as two fronts: a garment is two of them and two bands of 200 × 50, 360 mm in all. */
    private static final String JOB = """
            version: 1
            units: mm
            drawings: [{file: front.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              twill: {width: 220, unusable-edge: {each-side: 10}, direction: either-way, sold-by: 100,
                      spread: {form: FORM, end-allowance: {each-end: 20}}, shade: SHADE}
            pieces:
              front: {cut: 1 pair}
              band: {strip: {cut-width: 50, length: 200}, runs: lengthwise, cut: 2}
            gap: 0
            order: [{make: 3}]
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @Test
    void itIsKeptAndSaid() throws IOException {
        assertThat(laid("single-layer", "{lengthwise: 400, crosswise: 200}"))
                .as(here.said())
                .isZero();
        assertThat(here.read("out/report.html"))
                .contains(
                        "Cut for one shade: each garment within 40 cm (15 3/4 in) lengthwise;",
                        "left and right within 20 cm (7 7/8 in) crosswise.",
                        "takes most of the length",
                        "Keeping to one shade");
        assertThat(here.read("out/twill.svg")).contains("one shade: each garment within 40 cm");
        assertThat(here.check("out/twill.svg")).as(here.said()).isZero();
    }

    /** All of a garment that lies within 400 mm is asked to lie within 0.2 mm less than it takes. */
    @Test
    void aFifthOfAMillimetreTooFarIsFound() throws IOException {
        assertThat(laid("single-layer", "{lengthwise: 400}")).as(here.said()).isZero();
        double most = mostOfTheLength();
        assertThat(most).isLessThanOrEqualTo(400);
        job("single-layer", String.format(Locale.ROOT, "{lengthwise: %.3f}", most));
        assertThat(here.check("out/twill.svg")).as(here.said()).isZero();
        job("single-layer", String.format(Locale.ROOT, "{lengthwise: %.3f}", most - 0.2));
        assertThat(here.check("out/twill.svg")).isEqualTo(5);
        assertThat(here.said()).contains("for one shade", "mm are allowed");
    }

    @Test
    void contradictionsNameBoth() throws IOException {
        assertThat(laid("fold-lengthwise", "{crosswise: 200}")).isEqualTo(4);
        assertThat(here.said()).contains("(shade: crosswise)", "lies folded");
        assertThat(laid("single-layer", "{lengthwise: 150}")).isEqualTo(4);
        assertThat(here.said()).contains("front is 160.0 mm lengthwise", "(shade: lengthwise)");
    }

    /** Returns the longest stretch of a garment, by the x of all that is cut of it. */
    private double mostOfTheLength() throws IOException {
        String svg = here.read("out/twill.svg");
        double most = 0;
        for (int garment = 1; garment <= 3; garment++) {
            double least = Double.MAX_VALUE;
            double last = 0;
            var pieces = Pattern.compile("<[^>]*data-garments?=\"" + garment + "\"[^>]*>\\s*<path[^>]* d=\"([^\"]*)\"")
                    .matcher(svg);
            while (pieces.find()) {
                var points = Pattern.compile("(-?[0-9.]+) (-?[0-9.]+)").matcher(pieces.group(1));
                while (points.find()) {
                    least = Math.min(least, Double.parseDouble(points.group(1)));
                    last = Math.max(last, Double.parseDouble(points.group(1)));
                }
            }
            most = Math.max(most, last - least);
        }
        return most;
    }

    private int laid(String form, String shade) throws IOException {
        here.write("front.svg", SVG);
        job(form, shade);
        return here.marker(100, "out");
    }

    private void job(String form, String shade) throws IOException {
        Files.writeString(folder.resolve("job.yaml"), JOB.replace("FORM", form).replace("SHADE", shade));
    }
}
