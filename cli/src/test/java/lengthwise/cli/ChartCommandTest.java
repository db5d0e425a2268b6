package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.report.Chart.Cell;
import lengthwise.testing.Screenshot;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Bands of 400 mm across the cloth and 100 mm along it, that may touch, one a garment of size S and of size L: one is 100 mm
 * long; twelve, two abreast on 800 mm, are 600 mm, and three abreast on 1200 mm 400 mm. The ends add 40 mm.
 */
class ChartCommandTest {
    private static final String JOB = """
            version: 1
            job: bands
            units: mm
            fabrics:
              canvas: {for: shell, width: 800, unusable-edge: {each-side: 0},
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, widths: [800, 1200]}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, print: ignore, cut: 1}
            gap: 0
            order: [{size: S, make: 9}, {size: L, make: 3}]
            """;

    /** A lopsided piece with an up end: turning it round saves cloth. */
    private static final String DRAWING = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="flap"><path class="cut" d="M100 100 H130 L260 400 H100 Z"/>
            <line class="grain" x1="120" y1="340" x2="120" y2="130" marker-end="url(#head)"/></g>
            </svg>
            """;

    private static final String FLAPS = """
            version: 1
            job: flaps
            units: mm
            drawings: [{file: flap.svg, seam-allowance: included, arrow-means: grain}]
            fabrics: {canvas: {width: 500, unusable-edge: {each-side: 0}, widths: [300, 420, 500]}}
            pieces: {flap: {cut: 4 alike}}
            gap: 2
            order: [{make: 1}]
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
    void eachSizeAloneAndTheOrderByWidth() throws IOException {
        assertThat(chart()).as(folder.said()).isZero();
        assertThat(csv("laid", "width_mm", "direction", "marker_mm", "needed_mm", "sold_m", "sold_yd"))
                .containsExactly(
                        "S:800.000:either-way:100.000:140.000:0.2:0.250",
                        "S:800.000:one-way:100.000:140.000:0.2:0.250",
                        "S:1200.000:either-way:100.000:140.000:0.2:0.250",
                        "S:1200.000:one-way:100.000:140.000:0.2:0.250",
                        "L:800.000:either-way:100.000:140.000:0.2:0.250",
                        "L:800.000:one-way:100.000:140.000:0.2:0.250",
                        "L:1200.000:either-way:100.000:140.000:0.2:0.250",
                        "L:1200.000:one-way:100.000:140.000:0.2:0.250",
                        "order of 12:800.000:either-way:600.000:640.000:0.7:0.750",
                        "order of 12:800.000:one-way:600.000:640.000:0.7:0.750",
                        "order of 12:1200.000:either-way:400.000:440.000:0.5:0.500",
                        "order of 12:1200.000:one-way:400.000:440.000:0.5:0.500");
        assertThat(folder.said()).contains("0.7 m, 3/4 yd", "12 of 12 cells.");
        String page = folder.read("out/chart.html");
        assertThat(page.replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http:", "https:", "<script", "<img", "url(");
        // a strip of the order's marker, and its cloth
        assertThat(folder.read("out/chart.svg")).contains("order of 12").containsPattern("<path [^>]*\\bd=\"M");
    }

    /**
     * In a browser: the cells of a row are drawn to one scale, which the widest cloth of 1200 mm sets with its 22 mm; their ends are drawn too. Measured
     * in pixels: lines are 0.12 mm thick, and a pixel is 0.066 mm.
     */
    @Test
    void aBrowserShowsTheLayoutsToOneScale() throws Exception {
        assertThat(chart()).as(folder.said()).isZero();
        Screenshot shot = Screenshot.of(folder.read("out/chart.svg"), path, 200, 130, 4);
        Box narrow = shot.ink(new Box(25_000, 98_300, 67_000, 123_000), 0.5);
        Box wide = shot.ink(new Box(113_000, 98_300, 155_000, 123_000), 0.5);
        assertThat(wide.height()).isCloseTo(22_000 + 120, within(150L));
        assertThat(narrow.height()).isCloseTo(22_000 * 800 / 1200 + 120, within(150L));
        assertThat(wide.width()).isCloseTo(22_000 * 440 / 1200 + 120, within(150L));
        assertThat(narrow.width()).isCloseTo(22_000 * 640 / 1200 + 120, within(150L));
    }

    @Test
    void withoutNapItNeverTakesMoreAndSoOnWiderCloth() throws IOException {
        folder.write("flap.svg", DRAWING);
        folder.write("job.yaml", FLAPS);
        assertThat(chart("--directions", "one-way,either-way,one-way-per-garment"))
                .as(folder.said())
                .isZero();
        List<String> rows = csv("direction", "needed_mm");
        assertThat(rows).hasSize(9);
        double[] needed = rows.stream()
                .mapToDouble(row -> Double.parseDouble(row.split(":", -1)[1]))
                .toArray();
        for (int i = 0; i < 9; i++) {
            assertThat(rows.get(i))
                    .startsWith(List.of("either-way", "one-way-per-garment", "one-way")
                                    .get(i % 3) + ":");
            assertThat(needed[i]).isLessThanOrEqualTo(i % 3 == 2 ? needed[i] : needed[i + 1]);
            assertThat(needed[i]).isLessThanOrEqualTo(i < 3 ? needed[i] : needed[i - 3]);
        }
        // two flaps turned round to each other lie in the width where one-way they do not
        assertThat(needed[0]).isLessThan(needed[2]);
    }

    @Test
    void finishedCellsAreNotComputedAgainUntilTheJobChanges() throws IOException {
        assertThat(chart()).isZero();
        Map<Path, byte[]> first = cells();
        String table = folder.read("out/chart.csv");
        assertThat(first).hasSize(12);

        assertThat(chart()).isZero();
        assertThat(folder.said())
                .contains("12 of 12 cells are there already, for this very job, and are not computed again.");
        assertThat(folder.read("out/chart.csv")).isEqualTo(table);

        folder.write("job.yaml", JOB.replace("cut-width: 100", "cut-width: 110"));
        assertThat(chart()).isZero();
        assertThat(folder.said())
                .contains("12 cells in", "are of another job or of this one before it was changed: they are not used.")
                .doesNotContain("are there already");
        assertThat(cells()).hasSize(12).doesNotContainKeys(first.keySet().toArray(new Path[0]));
    }

    @Test
    void aCellThatIsNotWholeIsComputedAgain() throws IOException {
        assertThat(chart()).isZero();
        Path cell = cells().keySet().iterator().next();
        String whole = Files.readString(cell);
        Files.writeString(cell, whole.substring(0, whole.length() / 2));
        Path part = path.resolve("out/cells/." + cell.getFileName() + ".123.part");
        Files.writeString(part, "half");
        assertThat(chart()).isZero();
        assertThat(folder.said()).contains("11 of 12 cells are there already");
        assertThat(cell).hasContent(whole);
        assertThat(part).doesNotExist();
    }

    /** The real program, killed as soon as it has finished one more cell, three times; then it goes on to the end. */
    @Test
    void killedWithNineItKeepsWhatIsFinished() throws Exception {
        folder.write(
                "job.yaml", JOB.replace("runs: crosswise", "runs: bias").replace("[800, 1200]", "[800, 900, 1200]"));
        Map<Path, byte[]> kept = new HashMap<>();
        for (int i = 0; i < 3; i++) {
            Process chart = new ProcessBuilder(words())
                    .redirectErrorStream(true)
                    .redirectOutput(path.resolve("said.txt").toFile())
                    .start();
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            while (cells().size() <= kept.size() && chart.isAlive() && System.nanoTime() < deadline) {
                Thread.sleep(20);
            }
            chart.destroyForcibly().waitFor();
            Map<Path, byte[]> now = cells();
            assertThat(now).as(Files.readString(path.resolve("said.txt"))).hasSizeGreaterThan(kept.size());
            kept.forEach((file, bytes) -> assertThat(now.get(file)).isEqualTo(bytes));
            for (byte[] bytes : now.values()) {
                assertThat(Cell.parse(new String(bytes, StandardCharsets.UTF_8)))
                        .isPresent();
            }
            kept = now;
        }
        assertThat(folder.run(arguments())).as(folder.said()).isZero();
        assertThat(folder.said()).contains(kept.size() + " of 18 cells are there already");
        assertThat(cells()).hasSize(18);
    }

    private String[] arguments() {
        return new String[] {
            "chart", folder.path("job.yaml"), "--out", folder.path("out"), "--seconds", "5", "--workers", "1"
        };
    }

    private List<String> words() {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "lengthwise.cli.Main"));
        words.addAll(List.of(arguments()));
        return words;
    }

    @Test
    void aTaskIsWholeInItself() throws Exception {
        ChartTask task = new ChartTask(
                "1",
                JOB.replace("widths: [800, 1200]", ""),
                Map.of("0/a.svg", "YWJj"),
                "canvas",
                List.of(1, 2),
                0,
                20,
                1);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(task);
        }
        ChartTask elsewhere;
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            elsewhere = (ChartTask) in.readObject();
        }
        assertThat(elsewhere).isEqualTo(task);
        assertThat(elsewhere.key()).isEqualTo(task.key()).matches("[0-9a-f]{64}");
        assertThat(ChartWork.of(elsewhere, () -> false).marker().millimetres()).isEqualTo(100);
        ChartTask outside = new ChartTask("1", JOB, Map.of("../a.svg", "YWJj"), "canvas", List.of(1), 0, 20, 1);
        assertThat(ChartWork.of(outside, () -> false).reason()).contains("outside the folder of its job");
        assertThat(outside.key()).isNotEqualTo(task.key());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--sizes|S,XL|3|--sizes: XL is not in the order: write - {size: XL, make: 1} under order; it has S, L.",
                "--directions|upwards|3|--directions takes either-way, one-way and one-way-per-garment, not upwards.",
                "--widths|wide|3|--widths: found",
                "--workers|0|2|--workers takes 1 to 64",
            })
    void wrongWishesAreOneClearLine(String option, String value, int code, String line) {
        assertThat(chart(option, value)).isEqualTo(code);
        assertThat(folder.said()).contains(line);
        assertThat(path.resolve("out")).doesNotExist();
    }

    @Test
    void pileIsOneWayAndNothingElse() throws IOException {
        folder.write("job.yaml", JOB.replace("for: shell,", "for: shell, pile: up,"));
        assertThat(chart("--directions", "either-way")).isEqualTo(3);
        assertThat(folder.said()).contains("canvas has a pile or an uneven repeat, so it is one-way and nothing else.");
        assertThat(chart()).as(folder.said()).isZero();
        assertThat(csv("direction")).hasSize(6).containsOnly("one-way");
    }

    private int chart(String... more) {
        List<String> words = new ArrayList<>(List.of("chart", folder.path("job.yaml"), "--out", folder.path("out")));
        words.addAll(List.of("--iterations", "20"));
        words.addAll(Arrays.asList(more));
        return folder.run(words.toArray(String[]::new));
    }

    private Map<Path, byte[]> cells() throws IOException {
        Path cells = path.resolve("out/cells");
        if (!Files.isDirectory(cells)) {
            return Map.of();
        }
        Map<Path, byte[]> found = new HashMap<>();
        try (Stream<Path> files = Files.list(cells)) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".cell")).toList()) {
                found.put(file, Files.readAllBytes(file));
            }
        }
        return found;
    }

    /** Returns some columns of each line of the table, with colons between. */
    private List<String> csv(String... columns) throws IOException {
        List<List<String>> rows = Files.readAllLines(path.resolve("out/chart.csv")).stream()
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
