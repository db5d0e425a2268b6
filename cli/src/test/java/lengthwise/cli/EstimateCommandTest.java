package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Twelve bands of 400 mm across the cloth and 100 mm along it, that may touch: two abreast on cloth of 800 and 1000 mm
 * (six rows, 600 mm), three on 1200 mm (400 mm), none on 300 mm. The ends add 40 mm, and the shop sells by 100 mm.
 */
@Tag("written")
class EstimateCommandTest {
    private static final String JOB = """
            version: 1
            job: bands
            units: mm
            fabrics:
              canvas: {for: shell, width: 800, unusable-edge: {each-side: 0}, direction: either-way,
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, price: 12 per m, sold-by: 100,
                       weight: 200 g/m²,
                       widths: [{width: 1200, price: 18 per m}, 800, 300, 1000]}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, print: ignore, cut: 1}
            gap: 0
            order: [{size: S, make: 9}, {size: L, make: 3}]
            """;

    @TempDir
    Path path;

    private JobFolder folder;

    @BeforeEach
    void write() throws IOException {
        folder = new JobFolder(path);
        folder.write("job.yaml", JOB);
    }

    @Test
    void everyWidthHasItsLengthAndWhatItCosts() throws IOException {
        assertThat(estimate()).as(folder.said()).isZero();
        assertThat(csv(
                        "width_mm",
                        "marker_mm",
                        "lower_bound_mm",
                        "ends_mm",
                        "rounding_mm",
                        "buy_mm",
                        "cost",
                        "cheapest"))
                .containsExactly(
                        "300.000:::::::",
                        "800.000:600.000:600.000:40.000:60.000:700.000:8.40:yes",
                        "1000.000:600.000:600.000:40.000:60.000:700.000:8.40:",
                        "1200.000:400.000:400.000:40.000:60.000:500.000:9.00:");
        assertThat(folder.said())
                .contains(
                        "30 cm (11 3/4 in) wide there is no marker. band S is 40.0 cm (15.75 in) across the fabric",
                        "cheapest");
    }

    /** 700 mm × 800 mm at 200 g/m² is 112 g; of twelve equal bands each garment pays 8.40 / 12 = 0.70. */
    @Test
    void aGarmentPaysItsPartAndClothHasItsWeight() throws IOException {
        assertThat(estimate()).isZero();
        assertThat(csv("width_mm", "weight_g")).contains("800.000:112.0");
        assertThat(folder.read("out/estimate.json")).contains("\"cost_each\" : 0.7", "\"size\" : \"L\"");
        assertThat(folder.said()).containsPattern("S +9 .* 0\\.70 +6\\.30").containsPattern("all +12 .* 8\\.40");
    }

    @Test
    void thePageNeedsNothingButItselfAndDrawsTheCurve() throws IOException {
        assertThat(estimate()).isZero();
        String page = folder.read("out/estimate.html");
        assertThat(page).contains("Length to buy of canvas by its width", "no marker can be shorter", "31 1/2 in");
        assertThat(page.replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http:", "https:", "<script", "<img", "url(");
    }

    @Test
    void theOptionTakesTheJobsPlace() throws IOException {
        assertThat(estimate("--widths", "800 to 1400 by 200")).isZero();
        assertThat(csv("width_mm", "buy_mm"))
                .containsExactly("800.000:700.000", "1000.000:700.000", "1200.000:500.000", "1400.000:500.000");
    }

    /** With folds on both sides wider cloth is another fold, and with a far border another distance; it can be cut down. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "selvedges-to-middle, ''",
        "fold-lengthwise, 'repeat: {lengthwise: 30, crosswise: 70},'",
        "tube, ''",
        "single-layer, 'border: {from-selvedge: 40, selvedge: far},'",
    })
    void widerIsNeverLonger(String form, String print) throws IOException {
        folder.write("job.yaml", """
                version: 1
                job: tunics
                units: mm
                fabrics:
                  voile: {for: shell, width: 900, unusable-edge: {each-side: 0}, direction: either-way, %s
                          spread: {form: %s, end-allowance: {each-end: 0}}, sold-by: 1}
                pieces:
                  front: {strip: {cut-width: 130, length: 170}, runs: crosswise, print: ignore, cut: 2}
                  back: {strip: {cut-width: 90, length: 210}, runs: either, print: ignore, cut: 2}
                  cuff: {strip: {cut-width: 37, length: 110}, runs: lengthwise, print: ignore, cut: 2}
                gap: 0
                order: [{size: S, make: 3}]
                """.formatted(print, form));
        assertThat(estimate("--widths", "900 to 1300 by 10")).as(folder.said()).isZero();
        List<String> lengths = csv("marker_mm");
        assertThat(lengths).hasSize(41);
        for (int i = 1; i < lengths.size(); i++) {
            assertThat(Double.parseDouble(lengths.get(i))).isLessThanOrEqualTo(Double.parseDouble(lengths.get(i - 1)));
        }
    }

    @Test
    void withoutWidthsItIsTheClothsOwn() throws IOException {
        folder.write("job.yaml", JOB.replaceAll("(?s),\\s+widths: \\[.*?\\]}", "}"));
        assertThat(estimate()).as(folder.said()).isZero();
        assertThat(csv("width_mm", "buy_mm")).containsExactly("800.000:700.000");
    }

    @Test
    void theSameIterationsGiveTheSameBytes() throws IOException {
        estimate();
        String first = folder.read("out/estimate.json");
        estimate();
        assertThat(folder.read("out/estimate.json")).isEqualTo(first).contains("\"reproducible\" : true");
    }

    /** Rectangles that fill the cloth are proven shortest; on the bias they leave corners, and the bound lies below. */
    @Test
    void aQuickOneSaysHowFarItMayBeOff() throws IOException {
        assertThat(quick()).isZero();
        assertThat(folder.said()).contains("No marker can be shorter than these.");
        folder.write("job.yaml", JOB.replace("runs: crosswise", "runs: bias"));
        assertThat(quick()).isZero();
        assertThat(folder.said()).containsPattern("A quick estimate: .* by at most [0-9.]+ %; none is shorter");
    }

    private int quick() {
        return folder.run("estimate", folder.path("job.yaml"), "--quick", "--widths", "1.2 m");
    }

    @Test
    void noPriceIsSaidAndNoWidthIsCalledCheapest() throws IOException {
        folder.write(
                "job.yaml", JOB.replace("price: 12 per m, ", "").replace("{width: 1200, price: 18 per m}", "1200"));
        assertThat(estimate()).isZero();
        assertThat(folder.said())
                .contains("warning: canvas has no price: write price: 14.50 per m under it")
                .doesNotContain("cheapest\n");
    }

    @Test
    void clothThatIsThereIsNotBought() throws IOException {
        folder.write("job.yaml", JOB.replaceAll("(?s)widths: \\[.*?\\]}", "length: 2000}"));
        assertThat(estimate()).isEqualTo(3);
        assertThat(folder.said()).contains("there is nothing to buy: canvas is there already");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "price: 12 per m|price: nine|found \"nine\"; write a price such as 14.50 per m",
                "price: 18 per m|price: 18|key fabrics.canvas.widths[1].price: found \"18\"",
                "800, 300|800, 800|key fabrics.canvas.widths: the width 80 cm is there twice",
                "[{width: 1200, price: 18 per m}, 800, 300, 1000]|{from: 900, to: 800, step: 10}|the widths end at 80 cm",
                "[{width: 1200, price: 18 per m}, 800, 300, 1000]|{from: 1, to: 800, step: 1}|that is 800 widths",
                "[{width: 1200, price: 18 per m}, 800, 300, 1000]|{from: 1, to: 800}|widths.step: it is missing",
                "[{width: 1200, price: 18 per m}, 800, 300, 1000]|[]|found 0 widths; write from 1 to 50",
                "300, 1000|300, 99 m|found the width 9900 cm",
                "weight: 200 g/m²|weight: 200|found \"200\"; write a weight such as 180 g/m²",
                "weight: 200 g/m²|flaws-allowance: 60 %|it must be below 50 %",
                "weight: 200 g/m²|length: 2000|widths are chosen where cloth is bought, and length says that it is there",
            })
    void slipsAreOneClearLine(String good, String bad, String line) throws IOException {
        assertThat(JOB).contains(good);
        folder.write("job.yaml", JOB.replace(good, bad));
        assertThat(estimate()).isEqualTo(3);
        assertThat(folder.said()).contains("job.yaml", line);
        assertThat(folder.said().lines()).hasSize(1);
        assertThat(path.resolve("out")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--widths|wide|3|--widths: found",
                "--widths|90 cm to 80 cm by 1 cm|3|--widths: the widths end",
                "--widths|90 cm to 95 cm by 0 cm|3|--widths: the step has to be more than 0",
                "--seconds|0|2|--seconds takes a time above 0",
            })
    void wrongUse(String option, String value, int code, String line) {
        assertThat(estimate(option, value)).isEqualTo(code);
        assertThat(folder.said()).contains(line);
    }

    private int estimate(String... more) {
        List<String> words = new ArrayList<>(List.of("estimate", folder.path("job.yaml"), "--out", folder.path("out")));
        words.addAll(List.of("--iterations", "20", "--workers", "1"));
        words.addAll(Arrays.asList(more));
        return folder.run(words.toArray(String[]::new));
    }

    /** Returns some columns of each line of the table, with colons between. */
    private List<String> csv(String... columns) throws IOException {
        List<List<String>> rows = Files.readAllLines(path.resolve("out/estimate.csv")).stream()
                .map(line -> List.of(line.split(",", -1)))
                .toList();
        List<String> headings = rows.get(0);
        return rows.stream()
                .skip(1)
                .map(row -> String.join(
                        ":",
                        Arrays.stream(columns)
                                .map(column -> row.get(headings.indexOf(column)))
                                .toList()))
                .toList();
    }
}
