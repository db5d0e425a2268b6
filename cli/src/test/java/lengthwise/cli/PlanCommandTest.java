package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
        job(
                "[{size: S, make: 3}]",
                "{bolts: [{of: stripe, length: 2 m, width: 50 cm}]}",
                ", zones: {hem: {from-selvedge: 0, to: 51 cm}}");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said())
                .contains("this bolt is 50 cm wide, and what the job says of stripe reaches 51 cm across it");
        job("[{size: S, make: 3}]", "{bolts: drawer}", "");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said()).contains("found \"drawer\"; write stash, or a list");
        job("[{size: S, make: 3}]", "{bolts: [{of: strip, length: 2 m}]}", "");
        assertThat(plan()).isEqualTo(3);
        assertThat(folder.said())
                .contains("found \"strip\"; the fabrics of this job are stripe", "did you mean stripe?");
    }

    /** A band of 50 cm lies on 54 cm of cloth with edges of 1 cm, and not on 51: the marker fits the narrowest bolt. */
    @Test
    void markersFitTheNarrowestBolt() throws IOException {
        String bolts =
                "{max-garments: 1, bolts: [{of: stripe, length: 2 m, width: 60 cm}, {name: thin, of: stripe, length: 1 m, width: WIDTH}]}";
        job("[{size: S, make: 1}]", bolts.replace("WIDTH", "54 cm").replace("name: thin, ", ""), "");
        folder.write("job.yaml", folder.read("job.yaml").replace("width: 520 mm", "width: 58 cm"));
        assertThat(plan()).as(folder.said()).isZero();
        assertThat(folder.said())
                .contains("stripe: its narrowest bolt is 54 cm wide, and so are the markers; the job says 58 cm.")
                .contains("bolt 2 of 1.000 m (1.09 yd): 1 ply of lay 1; 88 cm (0.96 yd) left.");
        assertThat(folder.read("out/stripe-lay-1.yaml")).contains("width: 540 mm");
        assertThat(folder.run(
                        "check", folder.path("out/stripe-lay-1.svg"), "--job", folder.path("out/stripe-lay-1.yaml")))
                .isZero();
        job("[{size: S, make: 1}]", bolts.replace("WIDTH", "51 cm"), "");
        assertThat(plan()).isEqualTo(4);
    }

    /**
     * By hand: a ply is 12 cm and 10 % for flaws, 13.2 cm; of a bolt 2 × 3 cm and 10 % of that are lost, 6.6 cm. One of 33 cm holds two
     * plies to the millimetre, and one of 32.9 cm does not.
     */
    @Test
    void boltsGiveWhatSquaringAndFlawsTake() throws IOException {
        String buying = ", squaring: {each-end: 3 cm}, flaws-allowance: 10 %";
        job("[{size: S, make: 2}]", "{max-garments: 1, bolts: [{name: reef-7, of: stripe, length: 33 cm}]}", buying);
        assertThat(plan()).as(folder.said()).isZero();
        assertThat(folder.said())
                .contains(
                        "reef-7 of 33 cm (0.36 yd): 2 plies of lay 1; 6.6 cm (2 5/8 in) lost at its ends, 0 mm (0.00 yd) left.");
        job("[{size: S, make: 2}]", "{max-garments: 1, bolts: [{of: stripe, length: 329 mm}]}", buying);
        assertThat(plan()).isZero();
        assertThat(folder.said()).contains("bolts: they hold 1 mm");
    }

    /** Two plies of 12 cm are cut from the shorter red bolt, one from the blue one; the others stay as they were. */
    @Test
    void boltsComeFromTheStash() throws IOException {
        job(
                "[{size: S, make: 2, colour: red}, {size: S, make: 1, colour: blue}]",
                "{max-plies: 2, max-garments: 1, bolts: stash}",
                "");
        add("red-1", "--width", "54 cm", "--length", "1 m", "--colour", "red");
        add("red-2", "--width", "52 cm", "--length", "50 cm", "--colour", "red");
        add("blue-1", "--width", "52 cm", "--length", "1 m", "--colour", "blue");
        add("thin-1", "--width", "51 cm", "--length", "1 m", "--colour", "blue");
        add("grey-1", "--width", "54 cm", "--length", "1 m", "--colour", "grey");
        add("torn-1", "--width", "54 cm", "--outline", "0 cm, 0 cm; 9 cm, 0 cm; 9 cm, 54 cm", "--colour", "red");
        assertThat(plan("--stash", folder.path("stash.db"))).as(folder.said()).isZero();
        assertThat(folder.said())
                .contains(
                        "red, red-2 of 50 cm",
                        "1 ply of lay 1, 1 ply of lay 2; 26 cm (0.28 yd) left",
                        "red, red-1 of 1.000 m (1.09 yd): not begun")
                .contains("thin-1 stays in the stash: it is 51 cm wide, and the job says 52 cm.")
                .contains("grey-1 stays in the stash: nothing is ordered in grey.")
                .contains("torn-1 stays in the stash: plies are cut from straight pieces.")
                .contains("Stash: red-2, blue-1 begun or spent.");
        assertThat(folder.run("stash", "export", "--stash", folder.path("stash.db")))
                .isZero();
        assertThat(folder.said())
                .contains(
                        "red-1,stripe,red,54 cm,100 cm",
                        "red-2,stripe,red,52 cm,26 cm",
                        "blue-1,stripe,blue,52 cm,88 cm",
                        "thin-1,stripe,blue,51 cm,100 cm");
        folder.run("stash", "list", "--stash", folder.path("stash.db"));
        assertThat(folder.said()).doesNotContain("unclear", "reserved");
    }

    @Test
    void boltsThatDoNotHoldThePliesStayWhole() throws IOException {
        job("[{size: S, make: 2}]", "{max-garments: 1, bolts: stash}", "");
        add("reef", "--width", "52 cm", "--length", "20 cm");
        assertThat(plan("--stash", folder.path("stash.db"))).as(folder.said()).isZero();
        assertThat(folder.said()).contains("bolts: they hold 4 cm", "Stash: nothing is taken from it.");
        folder.run("stash", "export", "--stash", folder.path("stash.db"));
        assertThat(folder.said()).contains("reef,stripe,,52 cm,20 cm");
    }

    private void add(String name, String... more) {
        List<String> words = new ArrayList<>(
                List.of("stash", "add", name, "--fabric", "stripe", "--stash", folder.path("stash.db")));
        words.addAll(List.of(more));
        assertThat(folder.run(words.toArray(String[]::new))).as(folder.said()).isZero();
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
