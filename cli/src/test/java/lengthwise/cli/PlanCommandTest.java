package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans of bands, whose markers are known by hand: bands of 100 × 500 mm lie four deep on 400 mm, or two on 1 m. */
class PlanCommandTest {
    @TempDir
    private Path temporary;

    private JobFolder folder;

    @BeforeEach
    void open() {
        folder = new JobFolder(temporary);
    }

    /** By hand: 3 S + 4 M, at most 2 plies and 3 garments: two lays, {S, M, M} × 2 and {S} × 1. */
    @Test
    void sevenGarmentsInTwoLays() throws IOException {
        job("[{size: S, make: 3}, {size: M, make: 4}]", "{max-plies: 2, max-garments: 3}", "");
        assertThat(plan("--json")).isZero();
        String json = folder.said().replaceAll("\\s+", "");
        assertThat(json).contains("\"plies\":2,\"sizes\":{\"S\":1,\"M\":2}", "\"plies\":1,\"sizes\":{\"S\":1}");
        // a band a garment, 100 mm each and as wide as the cloth: 2 × (300 + 20) + (100 + 20) mm, and no plan takes
        // less
        assertThat(json).contains("\"total_mm\":760.000,\"bound_mm\":760.000");
        assertThat(folder.read("out/plan.json").replaceAll("\\s+", ""))
                .isEqualTo(json.substring(0, json.indexOf("Writtento")));
    }

    @Test
    void theMarkerOfALayPassesTheCheckOfItsJob() throws IOException {
        job(
                "[{size: S, make: 3}, {size: M, make: 4}]",
                "{max-plies: 2, max-garments: 3, bolts: [{of: stripe, length: 1 m}]}",
                "");
        assertThat(plan()).isZero();
        for (int lay = 1; lay <= 2; lay++) {
            String name = folder.path("out/stripe-lay-" + lay);
            assertThat(folder.run("check", name + ".svg", "--job", name + ".yaml"))
                    .isZero();
        }
        assertThat(folder.run(
                        "check", folder.path("out/stripe-lay-1.svg"), "--job", folder.path("out/stripe-lay-2.yaml")))
                .isEqualTo(3);
    }

    /** By hand: one red and one blue ply of the same marker, then a red one more. */
    @Test
    void coloursLieOnEachOther() throws IOException {
        job(
                "[{size: S, make: 2, colour: red}, {size: S, make: 1, colour: blue}]",
                "{max-plies: 2, max-garments: 1, bolts: [{of: stripe, colour: red, length: 1 m, width: 54 cm}, {of: stripe, colour: blue, length: 10 cm}]}",
                "");
        assertThat(plan()).isZero();
        assertThat(folder.said())
                .contains("red 1, blue 1")
                .contains(
                        "red, bolt 1 of 1.000 m (1.09 yd): 1 ply of lay 1, 1 ply of lay 2; 76 cm (0.83 yd) left, and 2 cm (3/4 in) of its width unused.")
                .contains("blue, bolts: they hold 2 cm (0.02 yd) too little");
    }

    @Test
    void oneMarkerIsNotCutFromTwoColours() throws IOException {
        job("[{size: S, make: 2, colour: red}, {size: S, make: 1, colour: blue}]", "{}", "");
        assertThat(folder.marker(10, "out")).isEqualTo(3);
        assertThat(folder.said()).contains("key order: it has 2 colours (red, blue)", "plan shares them out over lays");
    }

    /** Extension services sell by the eighth of a yard; 7.6 cm washed at 5 % is 80 cm: 0.76 / 0.95. */
    @Test
    void shrinkageIsBoughtOnceForAllLays() throws IOException {
        job(
                "[{size: S, make: 3}, {size: M, make: 4}]",
                "{max-plies: 2, max-garments: 3}",
                ", shrinkage: {lengthwise: 5 %, crosswise: 0 %, handled: pre-wash}, price: 10 per m, sold-by: 1 cm");
        assertThat(plan()).isZero();
        assertThat(folder.said()).contains("buy   80 cm (7/8 yd), 8.00");
    }

    /** By hand: four bands of 10 cm in two layers lie on 20 cm of table and 1 cm at its end; both layers are cloth. */
    @Test
    void foldedAcrossBothLayersCount() throws IOException {
        job("[{size: S, make: 4}]", "{max-garments: 4, table-length: 1 m}", "");
        folder.write("job.yaml", folder.read("job.yaml").replace("single-layer", "fold-crosswise"));
        assertThat(plan("--json")).isZero();
        assertThat(folder.said().replaceAll("\\s+", "")).contains("\"total_mm\":420.000,\"bound_mm\":420.000");
        plan();
        assertThat(folder.said()).contains("buy   50 cm");
    }

    /** The band of S is 10 cm, with ends 12 cm. */
    @Test
    void aTableTooShortIsToldWithTheLengthThatWouldDo() throws IOException {
        job("[{size: S, make: 3}]", "{table-length: 11 cm}", "");
        assertThat(plan()).isEqualTo(4);
        assertThat(folder.said())
                .contains(
                        "One garment of size S takes a ply of 12 cm (4 3/4 in), ends included, and the table is 11 cm");
    }

    @Test
    void whatIsCutTooManyStaysWithinWhatIsAllowed() throws IOException {
        job("[{size: S, make: 19}]", "{max-plies: 20, max-garments: 2, over: 10 %, least: lays}", "");
        assertThat(plan("--json")).isZero();
        String json = folder.said().replaceAll("\\s+", "");
        assertThat(json)
                .containsAnyOf(
                        "\"plies\":10,\"sizes\":{\"S\":2}",
                        "\"plies\":19,\"sizes\":{\"S\":1}",
                        "\"plies\":20,\"sizes\":{\"S\":1}");
    }

    @Test
    void whatAPlanCannotUseIsRefused() throws IOException {
        job("[{size: S, make: 3}]", "{}", ", length: 2 m");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said()).contains("a plan is made for cloth by the length");
        job("[{size: S, make: 3}]", "{bolts: [{of: stripe, length: 2 m, width: 50 cm}]}", "");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said())
                .contains("this bolt is 50 cm wide and stripe is 52 cm", "give stripe the width of the narrowest bolt");
        job("[{size: S, make: 3}]", "{bolts: [{of: strip, length: 2 m}]}", "");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said())
                .contains("found \"strip\"; the fabrics of this job are stripe", "did you mean stripe?");
    }

    private int plan(String... more) {
        String[] words = new String[7 + more.length];
        System.arraycopy(
                new String[] {
                    "plan",
                    folder.path("job.yaml"),
                    "--iterations",
                    "20",
                    "--workers",
                    "1",
                    "--out=" + folder.path("out")
                },
                0,
                words,
                0,
                7);
        System.arraycopy(more, 0, words, 7, more.length);
        return folder.run(words);
    }

    private void job(String order, String plan, String fabric) throws IOException {
        folder.write("job.yaml", """
                version: 1
                units: mm
                fabrics:
                  stripe: {for: shell, width: 520 mm, unusable-edge: {each-side: 10 mm}, direction: either-way,
                    spread: {form: single-layer, end-allowance: {each-end: 1 cm}}%s}
                pieces:
                  band: {strip: {cut-width: 100 mm, length: 500 mm}, runs: crosswise, cut: {shell: 1}}
                gap: 0 mm
                order: %s
                plan: %s
                """.formatted(fabric, order, plan));
    }
}
