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
 * Jobs on printed cloth, from the file to the report and back through the check. The pieces are squares of 20 cm with a
 * drill hole in the middle, so that lengths can be worked out by hand, with no gap.
 */
class PrintMatchingTest {
    private static final String JOB = """
            version: 1
            job: patches
            units: cm
            drawings: [{file: patch.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              cloth:
                width: WIDTH
                unusable-edge: {each-side: 0}
                repeat: {REPEAT}
                spread: {form: single-layer, end-allowance: {each-end: 0}}
                price: 10 per m
                sold-by: 1
            pieces:
              patch: {cut: 4 alike, match-point: {at: drill-hole 1, tolerance: 0}}
            gap: 0
            order: [{make: 1}]
            """;

    private static final String PATCH = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="300mm" viewBox="0 0 600 300">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="patch"><path class="cut" d="M50 50 H250 V250 H50 Z"/>
            <line class="grain" x1="90" y1="220" x2="90" y2="80" marker-end="url(#head)"/>
            <circle class="drill" cx="150" cy="150" r="1.5"/></g>
            MORE
            </svg>
            """;

    /** The same square; its notch, at the lower edge of the page, comes 10 cm before the hole along the cloth. */
    private static final String POCKET = """
            <g id="pocket"><path class="cut" d="M350 50 H550 V250 H350 Z"/>
            <line class="grain" x1="390" y1="220" x2="390" y2="80" marker-end="url(#head)"/>
            <circle class="drill" cx="450" cy="150" r="1.5"/>
            <path class="notch" d="M450 250 V244"/></g>
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    /**
     * By hand; a point of the print lies where the hole of the first square comes. Stripes across every 32 cm: two squares side
     * by side on 40 cm, the next two 32 cm on, 52 cm in all where 40 would do. Stripes along: two rows that are 32 cm apart on
     * 60 cm, and nothing lost along them.
     */
    @ParameterizedTest
    @CsvSource({
        "40, 'lengthwise: 32, origin: {from-start: 10}',                                 520",
        "60, 'crosswise: 32, origin: {from-selvedge: 10}',                               400",
        "60, 'lengthwise: 32, crosswise: 32, origin: {from-start: 10, from-selvedge: 10}', 520",
    })
    void squaresMeetThePrint(String width, String repeat, int millimetres) throws IOException {
        made(job(width, repeat));
        assertThat(report("json")).contains("\"length_mm\" : " + millimetres + ".000");
        assertThat(checked()).contains("nothing wrong");
    }

    @Test
    void whatMatchingCostsAndHowTheClothLiesIsSaid() throws IOException {
        made(job("40", "lengthwise: 32, origin: {from-start: 10}"));
        assertThat(report("html"))
                .contains("Matching the print adds 12 cm (4 3/4 in) and costs 1.20 more: ")
                .contains("it comes again every 32 cm (12 5/8 in) lengthwise")
                .contains("a point of the print lies 10 cm (3 7/8 in) from the cut end");
        assertThat(Files.readString(folder.resolve("out/cloth.svg"))).contains("Matched print");
    }

    /**
     * By hand, on 60 cm: a point at 10, 10 cm and every 32 cm; of a half-drop the second column begins 16 cm further, and its lines
     * go from half a column before it to half a column behind it, which is the edge.
     */
    @Test
    void theMarkerCarriesTheRepeat() throws IOException {
        String repeat = "lengthwise: 32, crosswise: 32, origin: {from-start: 10, from-selvedge: 10}";
        made(job("60", repeat));
        assertThat(picture())
                .contains(
                        "class=\"repeat-grid\"",
                        "M0 100 L520 100",
                        "M0 420 L520 420",
                        "M100 0 L100 600",
                        "M420 0 L420 600")
                .contains("data-mark=\"match-point\"", "M100 100 m0 -3", "M420 420 m0 -3");
        made(job("60", repeat.replace("origin", "half-drop: yes, origin")));
        assertThat(picture()).contains("M100 0 L100 260", "M260 260 L260 580", "M420 0 L420 260", "M100 580 L100 600");
        made(job("60", "crosswise: 32, origin: {from-selvedge: 10}"));
        assertThat(picture()).contains("M0 100 L400 100 M0 420 L400 420\"");
        made(job("60", repeat).replace(", match-point: {at: drill-hole 1, tolerance: 0}", ""));
        assertThat(picture()).doesNotContain("repeat-grid", "match-point");
    }

    private String picture() throws IOException {
        return Files.readString(folder.resolve("out/cloth.svg")).replace(".000", "");
    }

    @Test
    void aRepeatWithoutMatchPointsAddsNothing() throws IOException {
        made(job("40", "lengthwise: 32").replace(", match-point: {at: drill-hole 1, tolerance: 0}", ""));
        assertThat(report("json")).contains("\"length_mm\" : 400.000").doesNotContain("Matching", "whole_repeat");
        assertThat(report("html")).doesNotContain("atched print");
    }

    /**
     * By hand: two plies of two squares side by side with 2 cm at each end are 24 cm each; the next ply begins at 32 cm, so the marker
     * is 28 cm long, 8 cm of it behind the squares, and 64 cm are bought.
     */
    @Test
    void everyPlyBeginsWhereThePrintComesAgain() throws IOException {
        made(job("40", "lengthwise: 32, origin: {from-start: 12}")
                .replace("form: single-layer", "form: plies-face-up, plies: 2")
                .replace("each-end: 0", "each-end: 2"));
        assertThat(report("json"))
                .contains(
                        "\"length_mm\" : 280.000", "\"buy_mm\" : 640.000", "\"of_it_to_a_whole_repeat_mm\" : 160.000");
        assertThat(report("html"))
                .contains("of it, behind the last piece to a whole repeat of the print")
                .contains("Each ply begins 32 cm (12 5/8 in) behind the start of the one before, which is one repeat");
        assertThat(checked()).contains("nothing wrong");
    }

    /** Uneven stripes and checks look different turned round (Pacific Northwest Extension PNW187). */
    @Test
    void anUnevenRepeatIsOneWay() throws IOException {
        made(job("40", "lengthwise: 32, uneven: yes"));
        assertThat(report("json")).contains("\"direction\" : \"one-way\"").doesNotContain("has an up and a down");
        made(job("40", "lengthwise: 32"));
        assertThat(report("json")).contains("\"direction\" : \"one-way\"", "has an up and a down");
        made(job("40", "lengthwise: 32, uneven: yes")
                .replace("    repeat:", "    direction: one-way-per-garment\n    repeat:"));
        assertThat(run(job("40", "lengthwise: 32, uneven: yes")
                        .replace("    repeat:", "    direction: either-way\n    repeat:")))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said())
                .contains("fabrics.cloth.direction", "uneven", "one-way-per-garment", "leave direction out");
    }

    /**
     * By hand: two squares one behind the other on 20 cm. Hole on hole they lie 32 cm apart, 52 cm in all; the notch is 10 cm before
     * the hole, so that with it on the hole of the other one square comes 22 cm behind the other: 42 cm.
     */
    @ParameterizedTest
    @CsvSource({"drill-hole 1, 520", "notch 1, 420"})
    void twoPiecesLieAlikeInThePrint(String mark, int millimetres) throws IOException {
        made(twoPieces("at: " + mark + ", tolerance: 0, to: {piece: patch, at: drill-hole 1}"));
        assertThat(report("json")).contains("\"length_mm\" : " + millimetres + ".000");
        assertThat(report("html")).contains("It may begin anywhere: what is matched lies alike in it");
        assertThat(checked()).contains("nothing wrong");
    }

    @Test
    void whatCannotBeMatchedNamesBoth() throws IOException {
        String ring = twoPieces("at: notch 1, to: {piece: patch, at: drill-hole 1}")
                .replace(
                        "patch: {cut: 1}",
                        "patch: {cut: 1, match-point: {at: drill-hole 1, to: {piece: pocket, at: notch 1}}}");
        assertThat(run(ring)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said()).contains("patch and pocket are matched to each other in a ring");
        assertThat(run(twoPieces("at: notch 1, to: {piece: pockt, at: drill-hole 1}")))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said()).contains("found \"pockt\"", "the drawings hold patch, pocket", "did you mean pocket?");
        assertThat(run(twoPieces("at: notch 1, to: {piece: pocket, at: notch 1}")))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(here.said()).contains("pocket cannot be matched to itself");
        assertThat(run(twoPieces("at: notch 1, to: {piece: patch, at: drill-hole 2}")))
                .isEqualTo(ExitCode.NO_MARKER.number());
        assertThat(here.said()).contains("pocket is matched to drill hole 2 of patch, and there is no such mark on it");
        assertThat(run(twoPieces("at: notch 1, to: other-hand"))).isEqualTo(ExitCode.NO_MARKER.number());
        assertThat(here.said()).contains("pocket is matched to its other hand", "cut it as a pair");
    }

    private static String twoPieces(String match) {
        return job("20", "lengthwise: 32")
                .replace("    repeat:", "    direction: one-way\n    repeat:")
                .replace(
                        "patch: {cut: 4 alike, match-point: {at: drill-hole 1, tolerance: 0}}",
                        "patch: {cut: 1}\n  pocket: {cut: 1, match-point: {" + match + "}}");
    }

    private static String job(String width, String repeat) {
        return JOB.replace("WIDTH", width).replace("REPEAT", repeat);
    }

    private void made(String job) throws IOException {
        assertThat(run(job)).as(here.said()).isEqualTo(ExitCode.DONE.number());
    }

    private int run(String job) throws IOException {
        here.write("patch.svg", PATCH.replace("MORE", job.contains("pocket:") ? POCKET : ""));
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
