package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Edges of a brief that are measured on its drawing. S is a quarter of a disc of 100 mm, M one of 120: an opening of π/2 times as
 * much. Its waist is the upper edge, half of it drawn, with the fold at the left.
 */
class EdgesTest {
    private static final String JOB = """
            version: 1
            units: cm
            drawings: [{file: brief.svg, seam-allowance: ALLOWANCE, drawing-unit: 1 mm, arrow-means: grain}]
            fabrics:
              tricot: {width: 100, direction: either-way, price: 10.00 per m, sold-by: 10}
            pieces: {brief: {cut: 1 on fold, up: as-drawn}}
            order:
              - {size: S, make: 1}
              - {size: M, make: 2}
            sewing:
              edges: {EDGES}
              elastic:
                EDGE: {width: 1/4 in, length: {edge: EDGE}, price: 1 per m, sold-by: 1 mm}
            """;

    private static final String LEG = "leg: {drawn: {piece: brief, from: corner 2, to: corner 3, counts: once}";

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() throws IOException {
        here = new JobFolder(folder);
        draw(size("S", 100, "") + size("M", 120, ""));
    }

    private void draw(String sizes) throws IOException {
        here.write(
                "brief.svg",
                "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:inkscape=\"http://www.inkscape.org/namespaces/inkscape\" width=\"600mm\" height=\"400mm\" viewBox=\"0 0 600 400\">"
                        + sizes + "</svg>");
    }

    private static String size(String name, int radius, String more) {
        int left = name.equals("S") ? 50 : 300;
        return ("<g inkscape:groupmode=\"layer\" inkscape:label=\"%s\"><g id=\"brief-%s\" inkscape:label=\"brief\"><path class=\"cut\" d=\"M%d 50 h%d a%d %d 0 0 1 -%d %d z\"/>"
                        + "<path class=\"fold\" d=\"M%d 50 v%d\"/>%s</g></g>")
                .formatted(name, name, left, radius, radius, radius, radius, radius, left, radius, more);
    }

    private int shop(String edge, String edges, String allowance) throws IOException {
        here.write(
                "job.yaml",
                JOB.replace("ALLOWANCE", allowance).replace("EDGES", edges).replace("EDGE", edge));
        return here.run(
                "shop", here.path("job.yaml"), "--iterations", "3", "--workers", "1", "--out", here.path("out"));
    }

    private String json() throws IOException {
        return here.read("out/shopping.json").replaceAll("\\s+", "");
    }

    /** π/2 · 100 mm = 157.080 mm and π/2 · 120 mm = 188.496 mm; one of S and two of M are 534.07 mm. */
    @Test
    void anEdgeIsMeasuredInEachSize() throws IOException {
        assertThat(shop("leg", LEG + "}", "included")).as(here.said()).isZero();
        assertThat(json())
                .containsPattern("\"edge\":\"leg\",\"size\":\"S\",\"drawn_mm\":157\\.0[78]\\d,\"along\":\"cut-line\"")
                .containsPattern("\"edge\":\"leg\",\"size\":\"M\",\"drawn_mm\":188\\.49\\d,")
                .containsPattern("\"kind\":\"elastic\".*?\"used_mm\":534\\.0[67]\\d,\"buy_mm\":535\\.000");
        assertThat(here.read("out/shopping.html"))
                .contains("Edges measured on the drawing", "brief from corner 2 to corner 3", "cut line");
        assertThat(here.read("out/shopping.txt"))
                .contains("Assumed: On the cut line an edge is as long as where it is sewn (leg)");
        assertThat(here.read("out/shopping.txt")).contains("leg   S     15.7 cm (6 1/8 in)");
    }

    /** Where the job adds the allowance, what is drawn is sewn: nothing of it is in the length. */
    @Test
    void theAllowanceThatTheJobAddsIsNotMeasured() throws IOException {
        assertThat(shop("leg", LEG + "}", "1 cm")).as(here.said()).isZero();
        assertThat(json()).containsPattern("\"size\":\"S\",\"drawn_mm\":157\\.0[78]\\d,\"along\":\"sew-line\"");
        assertThat(here.read("out/shopping.txt")).doesNotContain("cut line");
    }

    /** The waist ends on the fold: opened, 2 · 100 mm and 2 · 120 mm. All round the half there are both edges, twice. */
    @ParameterizedTest
    @CsvSource({
        "'from: corner 1, to: corner 2', 200.000, 240.000",
        "'from: corner 1, to: corner 2, counts: once', 100.000, 120.000",
        "'from: corner 2, to: corner 3, counts: once', 157.0[78]\\d, 188.49\\d",
        "'edge: whole-outline', 514.15\\d, 616.9[89]\\d",
    })
    void whatEndsOnTheFoldGoesOnBehindIt(String edge, String inS, String inM) throws IOException {
        assertThat(shop("waist", "waist: {drawn: {piece: brief, %s}}".formatted(edge), "included"))
                .as(here.said())
                .isZero();
        assertThat(json())
                .containsPattern("\"size\":\"S\",\"drawn_mm\":" + inS)
                .containsPattern("\"size\":\"M\",\"drawn_mm\":" + inM);
    }

    @Test
    void partsAreAddedUp() throws IOException {
        assertThat(shop(
                        "edge",
                        "edge: {drawn: [{piece: brief, from: corner 1, to: corner 2}, {piece: brief, from: corner 2, to: corner 3, counts: twice}]}",
                        "included"))
                .as(here.said())
                .isZero();
        assertThat(json()).containsPattern("\"size\":\"S\",\"drawn_mm\":514.15\\d");
    }

    /** Of 200 mm, 2 % are 4 mm: 196 mm is let pass, 195.9 mm is said; the stated length counts either way. */
    @ParameterizedTest
    @CsvSource({"196 mm, false", "195.9 mm, true", "204 mm, false", "204.1 mm, true"})
    void aStatedLengthThatIsOffIsSaid(String stated, boolean off) throws IOException {
        assertThat(shop(
                        "waist",
                        "waist: {drawn: {piece: brief, from: corner 1, to: corner 2}, stated: {by-size: {S: %s, M: 24}}}"
                                .formatted(stated),
                        "included"))
                .as(here.said())
                .isZero();
        assertThat(here.said().contains("warning: The edge waist in size S is stated as"))
                .isEqualTo(off);
        assertThat(here.said()).doesNotContain("in size M is stated");
        double used = Double.parseDouble(stated.replace(" mm", "")) + 2 * 240;
        assertThat(json())
                .contains("\"off\":" + off)
                .contains("\"used_mm\":" + String.format(java.util.Locale.ROOT, "%.3f", used));
        assertThat(here.read("out/shopping.html").contains("look: ")).isEqualTo(off);
    }

    @Test
    void theReportSaysItToo() throws IOException {
        here.write(
                "job.yaml",
                JOB.replace("ALLOWANCE", "included")
                        .replace("EDGES", LEG + ", stated: 20}")
                        .replace("EDGE", "leg"));
        assertThat(here.marker(3, "out")).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains("The edge leg in size S is stated as 20 cm", "Edges measured on the drawing");
        assertThat(here.read("out/report.json").replaceAll("\\s+", "")).contains("\"edges\":[{\"edge\":\"leg\"");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{piece: brif, edge: whole-outline} | key sewing.edges.leg.drawn.piece: found \"brif\"; the drawings hold brief; did you mean brief?",
                "{piece: brief, from: notch 1, to: corner 2} | key sewing.edges.leg.drawn: brief in size S: it has no notch 1; it has corners 1 to 3 and no notches. lengthwise inspect --picture numbers them",
                "[{piece: brief, edge: whole-outline}, {piece: brief, from: corner 2, to: corner 2}] | key sewing.edges.leg.drawn[2]: brief in size S: corner 2 and corner 2 are at the same place.",
            })
    void whatIsNotThereIsSaid(String drawn, String complaint) throws IOException {
        assertThat(shop("leg", "leg: {drawn: %s}".formatted(drawn), "included")).isEqualTo(3);
        assertThat(here.said()).contains(complaint).hasLineCount(1);
    }

    /** Notch 1 of S is at the fold, of M at the side: the elastic of one of them would be wrong. */
    @Test
    void aNotchThatIsAnotherInAnotherSizeIsRefused() throws IOException {
        draw(size("S", 100, "<path class=\"notch\" d=\"M60 50 v4\"/>")
                + size("M", 120, "<path class=\"notch\" d=\"M410 50 v4\"/>"));
        assertThat(shop("waist", "waist: {drawn: {piece: brief, from: notch 1, to: corner 3}}", "included"))
                .isEqualTo(3);
        assertThat(here.said())
                .contains(
                        "key sewing.edges.waist.drawn.from: notch 1 of brief lies elsewhere in size M than in size S: 92 % of its width and 0 % of its height from the upper left, not 10 % and 0 %");
    }

    @Test
    void lengthsThatComeToNothingByTheDrawingAreRefused() throws IOException {
        here.write(
                "job.yaml",
                JOB.replace("ALLOWANCE", "included")
                        .replace("EDGES", LEG + "}")
                        .replace("{edge: EDGE}", "{edge: leg, plus: -20}")
                        .replace("EDGE", "leg"));
        assertThat(here.run("shop", here.path("job.yaml"), "--iterations", "3")).isEqualTo(3);
        assertThat(here.said()).contains("key sewing.elastic.leg.length: for size S it comes to -4.2");
    }

    @Test
    void inspectNumbersThem() throws IOException {
        assertThat(here.run("inspect", here.path("brief.svg"), "--edges", "--picture", here.path("seen.svg")))
                .isZero();
        assertThat(here.said())
                .contains(
                        "brief, size S",
                        "corner 1 to corner 2: 10 cm (3 7/8 in), ends on the fold",
                        "corner 2 to corner 3: 15.7 cm (6 1/8 in), ends on the fold",
                        "whole outline, fold left out: 25.7 cm (10 1/8 in)");
        assertThat(here.read("seen.svg")).contains(">corner 1<", ">notch 1<");
    }
}
