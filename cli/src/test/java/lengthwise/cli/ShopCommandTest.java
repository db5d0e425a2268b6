package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One band of 100 × 1000 mm along cloth 1 m wide: its marker is 1 m long, and with 2 cm at each end 1.04 m are needed. */
class ShopCommandTest {
    private static final String JOB = """
            version: 1
            units: cm
            fabrics:
              canvas: {width: 100, unusable-edge: {each-side: 0}, direction: either-way, sold-by: 10, price: 10.00 per m}
            pieces:
              band: {strip: {cut-width: 10, length: 100}, runs: lengthwise, cut: 1}
            gap: 0
            order:
              - {size: M, make: 1}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    @Test
    void theWholeListAddsUp() throws IOException {
        assertThat(shop("""
                sewing:
                  edges: {opening: 60}
                  elastic:
                    leg: {length: {edge: opening, times: 0.66}, each: 2, price: 0.50 per m, sold-by: 50}
                  seams:
                    side: {stitch: 301, length: 220}
                  thread: {spool: 5 m, price: 1.25 per spool}
                  labels:
                    care: {each: 1, price: 3 per 20, sold-by: 20}
                """)).as(here.said()).isZero();
        // cloth 1.10 m at 10; elastic 2 · 39.6 = 79.2 cm, sold as 1 m; thread 5.5 m and 15 % = 6.325 m, two spools; 20
        // labels
        assertThat(json())
                .contains(
                        "\"kind\":\"fabric\",\"name\":\"canvas\",\"details\":\"1.000m(393/8in)wide\"",
                        "\"used_mm\":1040.000,\"buy_mm\":1100.000,\"cost\":11.00",
                        "\"used_mm\":792.000,\"buy_mm\":1000.000,\"cost\":0.50",
                        "\"used_mm\":6325.000,\"buy_mm\":10000.000,\"packs\":2,\"cost\":2.50",
                        "\"used_pieces\":1,\"buy_pieces\":20,\"packs\":1,\"cost\":3.00",
                        "\"cost\":17.00,\"cost_known\":17.00,\"without_price\":[]",
                        "{\"stitch\":301,\"seam_mm\":2200.000,\"thread_mm\":5500.000,\"needle_mm\":2750.000,\"looper_mm\":2750.000}");
        assertThat(here.read("out/shopping.txt")).contains("All together: 17.00", "2 spools", "1 pack");
        assertThat(here.read("out/shopping.html")).contains("All together", "17.00");
        assertThat(here.read("out/shopping.csv"))
                .contains("elastic,elastic,6.4 mm", "792.000,,1000.000,,,0.50,leg 79.2 cm", "total,All together,");
    }

    @Test
    void aMissingPriceIsSaidAndIsNotNought() throws IOException {
        assertThat(shop("sewing: {elastic: {leg: {length: 40}}, labels: {care: {}}}"))
                .isZero();
        assertThat(here.read("out/shopping.txt"))
                .contains("no price given", "All together, without elastic, care: 11.00");
        assertThat(json()).contains("\"cost\":null,\"cost_known\":11.00,\"without_price\":[\"elastic\",\"care\"]");
        assertThat(here.read("out/shopping.csv")).contains("label,care,,,1,,1,,,1 for each of 1 garment");
    }

    /**
     * Elastic by its edge. 0.66 of an opening of 60 cm: themakersjournal.blogspot.com, 2013; a front of 20 in as it is, three
     * quarters of a back of 24 in, and 1/2 in of overlap: spruceandfjell.com; 70 % of 34 cm: modelmycloset.blogspot.com, 2013.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{length: {length: 60 cm, times: 0.66}} | 396.000",
                "{length: [20 in, {length: 24 in, times: 75 %}], join: 1/2 in} | 977.900",
                "{length: {length: 34 cm, times: 70 %}} | 238.000",
            })
    void elasticByItsEdge(String elastic, String used) throws IOException {
        assertThat(shop("sewing: {elastic: {leg: " + elastic + "}}"))
                .as(here.said())
                .isZero();
        assertThat(json()).contains("\"used_mm\":" + used);
    }

    /**
     * A sample sewn in 401: 100 cm of it take 540 cm, with 15 % waste 621 (apparelscience.com); 1.17 yd at 17 in for each 3 in take
     * 6.63 yd, with 15 % 7.62 (apparel-merchandising.com, 2011).
     */
    @ParameterizedTest
    @CsvSource({"100 cm,5.4,6210.0", "1.17 yd,5.666667,6971.84"})
    void threadOfASampleThatWasMeasured(String seam, String ratio, double used) throws IOException {
        assertThat(shop("sewing: {seams: {side: {stitch: 401, ratio: %s, length: %s}}, thread: {waste: 15 %%}}"
                        .formatted(ratio, seam)))
                .as(here.said())
                .isZero();
        double found = Double.parseDouble(json().replaceAll(".*\"kind\":\"thread\".*?\"used_mm\":([0-9.]+).*", "$1"));
        assertThat(found).isCloseTo(used, within(0.01));
    }

    /** The wider elastic is a thing of its own to buy. */
    @Test
    void elasticIsWiderFromThreeX() throws IOException {
        here.write(
                "job.yaml",
                JOB.replace("{size: M, make: 1}", "{size: M, make: 2}\n  - {size: 3X, make: 1}")
                        + "sewing: {elastic: {leg: {length: 40}}}\n");
        assertThat(run()).as(here.said()).isZero();
        assertThat(here.read("out/shopping.txt"))
                .contains("6.4 mm (1/4 in) wide", "9.5 mm (3/8 in) wide", "3/8 in) from 3X");
        assertThat(json()).contains("\"used_mm\":800.000", "\"used_mm\":400.000");
    }

    /** Its cloth is bought with that of the marker, and rounded up once: 1.04 m and 2 strips of 5 cm are 1.14 m. */
    @Test
    void bindingsAreCutFromTheSameLength() throws IOException {
        assertThat(shop("sewing: {bindings: {hem: {from: canvas, cut-width: 5, length: 190, cut: straight}}}"))
                .as(here.said())
                .isZero();
        assertThat(json())
                .contains("\"used_mm\":1140.000,\"buy_mm\":1200.000,\"cost\":12.00", "\"strips\":2,\"joins\":1");
        assertThat(here.read("out/shopping.txt")).contains("2 strips 5 cm (2 in) wide across canvas, with one join.");
    }

    /** 508 cm of 2 in strip take a square of 20 in (see the binding's own test), and 1/4 in for its seam: 514.35 mm. */
    @Test
    void bindingsOnTheBias() throws IOException {
        assertThat(shop("sewing: {bindings: {hem: {from: canvas, cut-width: 2 in, length: 200 in, cut: bias}}}"))
                .as(here.said())
                .isZero();
        assertThat(json()).contains("\"used_mm\":1554.350", "\"cloth_length_mm\":514.350", "\"joins\":7");
    }

    @Test
    void theReportHasTheSameList() throws IOException {
        here.write("job.yaml", JOB + "sewing: {labels: {care: {price: 0.20 each}}}\n");
        assertThat(here.marker(5, "out")).as(here.said()).isZero();
        assertThat(here.read("out/report.html")).contains("Shopping list", "All together", "11.20");
        assertThat(here.read("out/report.json").replaceAll("\\s+", ""))
                .contains("\"shopping\":{\"lines\":[", "\"cost\":11.20");
    }

    /** 1.04 m for the marker is sold as 1.10 m; two strips of 5 cm for the hem make it 1.20 m wherever it says what to buy. */
    @Test
    void nobodyBuysTooLittleForTheBindings() throws IOException {
        here.write(
                "job.yaml",
                JOB + "sewing: {bindings: {hem: {from: canvas, cut-width: 5, length: 190, cut: straight}}}\n");
        assertThat(here.marker(5, "out")).as(here.said()).isZero();
        assertThat(here.said()).contains("1.200 m").doesNotContain("1.100 m");
        assertThat(here.read("out/canvas.svg")).contains("1.200 m (1 3/8 yd)").doesNotContain("1.100 m");
        assertThat(here.read("out/report.html"))
                .contains(
                        "<b>1.200 m (1 3/8 yd)</b>",
                        "for the marker alone",
                        "as the shopping list has it, buy 1.200 m");
        assertThat(here.run("estimate", here.path("job.yaml"), "--iterations", "3", "--workers", "1"))
                .isZero();
        assertThat(here.said()).contains("The cloth for bindings is not in these lengths");
    }

    @Test
    void whatCannotBeListedIsAskedBeforeTheSearch() throws IOException {
        here.write("job.yaml", JOB.replace("size: M, ", "") + "sewing: {elastic: {leg: {length: 40}}}\n");
        assertThat(run()).isEqualTo(3);
        assertThat(here.said())
                .contains("sewing.elastic.leg: how wide is it for a garment without a size?", "add width:");
    }

    private int shop(String sewing) throws IOException {
        here.write("job.yaml", JOB + sewing + "\n");
        return run();
    }

    private int run() {
        return here.run(
                "shop", here.path("job.yaml"), "--iterations", "3", "--workers", "1", "--out", here.path("out"));
    }

    private String json() throws IOException {
        return here.read("out/shopping.json").replaceAll("\\s+", "");
    }
}
