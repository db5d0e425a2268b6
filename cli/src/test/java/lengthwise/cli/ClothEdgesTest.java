package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Borders, zones, selvedges and cutting tools, from the job file to the files that are written and checked. */
class ClothEdgesTest {
    /** A skirt panel 200 mm wide and 300 tall on the page, its hem slightly curved: the lowest point is in the middle. */
    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="skirt"><path class="cut" d="M100 100 H300 V400 L200 410 L100 400 Z"/>
            <line class="grain" x1="200" y1="350" x2="200" y2="150" marker-end="url(#head)"/></g>
            </svg>
            """;

    private static final String JOB = """
            version: 1
            units: mm
            drawings: [{file: skirt.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              lawn: {width: 500, unusable-edge: {each-side: 10}, direction: WAY, sold-by: 100,
                     spread: {form: single-layer, end-allowance: {each-end: 20}},
                     border: {from-selvedge: 40, selvedge: SELVEDGE},
                     zones: {plain: {from-selvedge: 350, to: 500}}}
            pieces:
              skirt: {cut: 2 alike, border: hem}
              band: {strip: {cut-width: 60, length: 300}, runs: lengthwise, cut: 2, zone: ZONE}
              facing: {strip: {cut-width: 50, length: 380}, runs: lengthwise, cut: 1, EDGE}
            cutting-tool: knife-plotter
            order: [{make: 1}]
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void inAFolder() {
        here = new JobFolder(folder);
    }

    private String way = "either-way";
    private String selvedge = "near";
    private String zone = "plain";

    @Test
    void whatIsTiedIsLaidSoAndSaid() throws IOException {
        assertThat(laid()).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains(
                        "Pieces lie 2 mm apart, as is usual for cutting with a knife plotter.",
                        "Across the cloth, on the line of the border (4 cm (1 5/8 in) from the near selvedge): skirt.",
                        "In the zone plain (35 cm (13 3/4 in) from the near selvedge to 49 cm",
                        "Keeping to the zones",
                        "Keying to the border takes ",
                        " laying the same along the grain, for which a search of a fifth of the time found ");
        assertThat(here.read("out/lawn.svg")).contains("data-area=\"tie\"", "line of the border", "zone plain");
        assertThat(checked()).as(here.said()).isZero();
    }

    /** The hem lies 40 mm from the far selvedge, 460 mm from the near one. */
    @Test
    void theFarSelvedgeMayHaveTheBorder() throws IOException {
        selvedge = "far";
        assertThat(laid()).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains("on the line of the border (46 cm (18 1/8 in) from the near selvedge): skirt.");
        assertThat(checked()).as(here.said()).isZero();
    }

    /** A piece moved by hand by 0.2 mm across the cloth is found. */
    @Test
    void aFifthOfAMillimetreOffTheLineIsFound() throws IOException {
        laid();
        Path marker = folder.resolve("out/lawn.svg");
        String svg = Files.readString(marker);
        int piece = svg.indexOf("data-piece=\"skirt\"");
        int from = svg.indexOf(" d=\"", piece) + 4;
        int to = svg.indexOf('"', from);
        Files.writeString(marker, svg.substring(0, from) + moved(svg.substring(from, to)) + svg.substring(to));
        assertThat(checked()).isEqualTo(5);
        assertThat(here.said()).contains("mm off the line of its border");
    }

    /** Two bands of 110 mm on cloth 220 mm wide, of which 200 may be used by others: 300 mm of it, by hand. */
    @Test
    void aStraightEdgeLiesOnTheSelvedge() throws IOException {
        here.write("job.yaml", """
                version: 1
                units: mm
                fabrics:
                  lawn: {width: 220, unusable-edge: {each-side: 10}, direction: either-way, sold-by: 100,
                         spread: {form: single-layer, end-allowance: {each-end: 20}}}
                pieces:
                  band: {strip: {cut-width: 110, length: 300}, runs: lengthwise, cut: 2, edge-on-selvedge: yes}
                gap: 0
                order: [{make: 1}]
                """);
        assertThat(marker()).as(here.said()).isZero();
        assertThat(here.read("out/report.html"))
                .contains(
                        "With a straight edge on the selvedge itself: band.",
                        // inside the cuttable width one band finds room, and the other behind it: 600 mm
                        "Using the selvedge takes 30 cm (11 3/4 in) less than keeping to the cuttable width",
                        "Straight edges of two pieces coincide on 30 cm (11 3/4 in) of cut line");
        assertThat(here.read("out/report.json")).contains("\"length_mm\" : 300.000");
        assertThat(here.read("out/lawn.svg")).contains("data-mark=\"cut-once\"");
        assertThat(checked()).as(here.said()).isZero();
    }

    @Test
    void contradictionsNameBoth() throws IOException {
        way = "one-way";
        assertThat(laid()).isEqualTo(4);
        assertThat(here.said()).contains("keyed to a border", "direction: one-way");
    }

    @Test
    void aZoneThatTheFabricDoesNotHaveIsAQuestion() throws IOException {
        zone = "plane";
        assertThat(laid()).isEqualTo(3);
        assertThat(here.said()).contains("pieces.band.zone", "lawn has no zone plane; it has plain");
    }

    /** A tube has no selvedge for the shell's band, and of its zones it has no word: neither is asked of the lining. */
    @Test
    void whatTiesAPieceBindsNoFabricThatItIsNotCutFrom() throws IOException {
        String job = """
                version: 1
                units: mm
                fabrics:
                  lawn: {for: shell, width: 220, unusable-edge: {each-side: 10}, direction: either-way,
                         spread: {form: single-layer}, zones: {plain: {from-selvedge: 0, to: 110}}}
                  rib: {for: lining, width: 300, direction: either-way, spread: {form: tube},
                        zones: {ribbed: {from-selvedge: 0, to: 110}}}
                pieces:
                  band: {strip: {cut-width: 60, length: 300}, runs: lengthwise, cut: {shell: 2}, edge-on-selvedge: yes}
                  belt: {strip: {cut-width: 60, length: 300}, runs: lengthwise, cut: {shell: 1}, zone: plain}
                  cuff: {strip: {cut-width: 60, length: 200}, runs: crosswise, cut: {lining: 1 on fold}}
                gap: 0
                order: [{make: 1}]
                """;
        here.write("job.yaml", job);
        assertThat(marker()).as(here.said()).isZero();
        here.write("job.yaml", job.replace("cut: {shell: 2}", "cut: {lining: 2}"));
        assertThat(marker()).isEqualTo(4);
        assertThat(here.said())
                .contains("band may lie on the selvedge", "on rib no selvedge lies at a side", "single layer");
    }

    /** Every number pair of a path, 0.2 mm down. */
    private static String moved(String path) {
        return java.util.regex.Pattern.compile("(-?[0-9.]+) (-?[0-9.]+)")
                .matcher(path)
                .replaceAll(pair -> pair.group(1) + " "
                        + String.format(java.util.Locale.ROOT, "%.3f", Double.parseDouble(pair.group(2)) + 0.2));
    }

    private int laid() throws IOException {
        here.write("skirt.svg", SVG);
        here.write(
                "job.yaml",
                JOB.replace("WAY", way)
                        .replace("SELVEDGE", selvedge)
                        .replace("ZONE", zone)
                        .replace("EDGE", "edge-on-selvedge: yes"));
        return marker();
    }

    private int marker() {
        return here.marker(100, "out");
    }

    private int checked() {
        return here.check("out/lawn.svg");
    }
}
