package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Nine bands of 100 × 400 mm across canvas of 1 m: two abreast in five rows, 500 mm, and 540 mm with the ends. The figures
 * are worked out by hand.
 */
class FromStashTest {
    private static final String JOB = """
            version: 1
            job: bands
            units: mm
            fabrics:
              canvas: {for: shell, width: 1200, from: stash, unusable-edge: {each-side: 0},
                       spread: {form: single-layer, end-allowance: {each-end: 20}}}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, print: ignore, cut: 1}
            gap: 0
            order: [{size: S, make: 9}]
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
    void theSmallestThatIsLongEnoughIsCut() throws Exception {
        add("short", "--length", "30 cm");
        add("long", "--length", "9 m");
        add("middle", "--length", "2 m");
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(folder.said()).contains("canvas: middle from the stash, 2.000 m (78 3/4 in) long");
        assertThat(there()).containsExactly("long:900 cm:100 cm", "middle:146 cm:100 cm", "short:30 cm:100 cm");
        assertThat(folder.run("check", folder.path("out/canvas.svg"), "--job", folder.path("out/as-laid.yaml")))
                .as(folder.said())
                .isZero();
    }

    /** Between the pieces: 500 × 200 mm beside two bands abreast, and the tenth place, 100 × 400 mm. */
    @Test
    void leftoversAreKeptWhenAsked() throws Exception {
        add("bolt", "--length", "2 m", "--colour", "blue");
        assertThat(marker("--keep-leftovers")).as(folder.said()).isZero();
        assertThat(there()).containsExactly("bolt:146 cm:100 cm", "bolt-left-1:50 cm:20 cm", "bolt-left-2:10 cm:40 cm");
        assertThat(stash("give-back", "bolt")).isZero();
        assertThat(there()).containsExactly("bolt:200 cm:100 cm");
    }

    /** 540 mm of 2 m at 12.50 per m are 6.75; the rest goes back under its name, then what lies between the pieces. */
    @Test
    void theReportSaysWhatWasDrawn() throws Exception {
        add("bolt", "--length", "2 m", "--price", "12.50 per m");
        assertThat(marker("--keep-leftovers")).as(folder.said()).isZero();
        assertThat(folder.read("out/report.json").replaceAll("\\s+", ""))
                .contains(
                        "\"stash\":{\"cloth\":\"bolt\",\"length_mm\":2000.000,\"spent_mm\":540.000,\"value\":6.75,\"back\":["
                                + "{\"length_mm\":1460.000,\"width_mm\":1000.000},"
                                + "{\"length_mm\":500.000,\"width_mm\":200.000},"
                                + "{\"length_mm\":100.000,\"width_mm\":400.000}]}");
        assertThat(folder.read("out/report.html"))
                .contains(
                        "bolt, from the stash",
                        "bolt: 54 cm (21 1/4 in) of its 2.000 m (78 3/4 in) spent, worth 6.75.",
                        "Back in the stash: 1.460 m (57 1/2 in) × 1.000 m (39 3/8 in); 50 cm (19 5/8 in) × 20 cm (7 7/8 in);"
                                + " 10 cm (3 7/8 in) × 40 cm (15 3/4 in).");
    }

    /** Washed, 2 m are 1.8 m: 540 mm of them were 600 mm as the bolt lay there. What it costs the job says, 10 per m. */
    @Test
    void whatIsWashedIsSpentAsItLayThere() throws Exception {
        add("bolt", "--length", "2 m", "--shrinkage", "10 %, 0 %, pre-wash");
        folder.write("job.yaml", JOB.replace("from: stash,", "from: stash, price: 10 per m,"));
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(folder.read("out/report.json").replaceAll("\\s+", ""))
                .contains(
                        "\"length_mm\":2000.000,\"spent_mm\":600.000,\"value\":6.00,\"back\":[{\"length_mm\":1260.000,");
    }

    /**
     * A remnant with a slanting end: 2 m along the near selvedge, 1 m along the far one. Where bands lie on the first half metre,
     * a rectangle of half a metre over the whole width is behind them at least, less the ends and 2 mm; its value is that of 1.5 m.
     */
    @Test
    void ofARemnantWithAnOutlineTheRestGoesBackAsRectangles() throws Exception {
        add(
                "bolt",
                "--outline",
                "0 mm, 0 mm; 2000 mm, 0 mm; 1000 mm, 1000 mm; 0 mm, 1000 mm",
                "--price",
                "10.00 per m");
        assertThat(marker("--keep-leftovers")).as(folder.said()).isZero();
        List<String> left = there();
        assertThat(left).isNotEmpty().allSatisfy(row -> assertThat(row).startsWith("bolt-left-"));
        double area = left.stream()
                .map(row -> row.split(":"))
                .mapToDouble(row -> centimetres(row[1]) * centimetres(row[2]))
                .sum();
        assertThat(area).isBetween(46.0 * 100, 150.0 * 100 - 9 * 10 * 40);
        assertThat(folder.read("out/report.json").replaceAll("\\s+", ""))
                .contains("\"spent_mm\":2000.000,\"value\":15.00");
        // without being asked nothing goes back
        assertThat(stash("give-back", "bolt")).isZero();
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(there()).isEmpty();
        assertThat(folder.read("out/report.html")).contains("Nothing goes back.");
    }

    private static double centimetres(String length) {
        return length.endsWith(" mm")
                ? Double.parseDouble(length.replace(" mm", "")) / 10
                : Double.parseDouble(length.replace(" cm", ""));
    }

    /** Of bought cloth 540 mm are laid, 600 bought: 60 mm over the whole width are over. */
    @Test
    void whatIsBoughtLeavesItsRestToo() throws Exception {
        folder.write("job.yaml", JOB.replace("from: stash, ", "").replace("width: 1200", "width: 1000"));
        assertThat(marker("--keep-leftovers")).as(folder.said()).isZero();
        assertThat(there())
                .containsExactly("canvas:6 cm:100 cm", "canvas-left-1:50 cm:20 cm", "canvas-left-2:10 cm:40 cm");
    }

    /**
     * Folded across: five contours, three rows, 2 × (300 + 20) mm. Three plies: three contours, two rows, 3 × (200 + 40)
     * mm. Folded along: one abreast on 500 mm, five rows, 540 mm. The rest is one piece as wide as the bolt.
     */
    @ParameterizedTest
    @CsvSource({"fold-crosswise,136", "'plies-face-up, plies: 3',128", "fold-lengthwise,146"})
    void howeverItIsFoldedTheRestIsOnePiece(String form, int rest) throws Exception {
        folder.write("job.yaml", JOB.replace("single-layer", form));
        add("bolt", "--length", "2 m");
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(there()).containsExactly("bolt:%d cm:100 cm".formatted(rest));
    }

    /** Beside the bands 100 mm of the 500 are free: along the fold one piece of 200 mm, along the selvedges two of 100. */
    @Test
    void alongAFoldThereIsOnePieceAndElsewhereTwo() throws Exception {
        folder.write("job.yaml", JOB.replace("single-layer", "fold-lengthwise"));
        add("bolt", "--length", "2 m");
        assertThat(marker("--keep-leftovers")).as(folder.said()).isZero();
        assertThat(there())
                .isIn(
                        List.of("bolt:146 cm:100 cm", "bolt-left-1:50 cm:20 cm"),
                        List.of("bolt:146 cm:100 cm", "bolt-left-1:50 cm:10 cm", "bolt-left-2:50 cm:10 cm"));
    }

    /**
     * A scrap of 240 mm takes two rows of two bands, one of 140 mm one row: six bands come from them, and three are bought, in two
     * rows: 240 mm with the ends. One that is a centimetre too short for a row stays where it is.
     */
    @Test
    void severalThatAreNamedAreCutTogether() throws Exception {
        add("scrap-1", "--length", "240 mm");
        add("scrap-2", "--length", "140 mm");
        add("scrap-3", "--length", "130 mm");
        String scrap =
                "  %s: {for: shell, width: 1000, from: %s, unusable-edge: {each-side: 0}, spread: {form: single-layer, end-allowance: {each-end: 20}}}\n";
        folder.write(
                "job.yaml",
                JOB.replace("width: 1200, from: stash", "width: 1000, sold-by: 10")
                        .replace(
                                "pieces:\n",
                                scrap.formatted("one", "scrap-1")
                                        + scrap.formatted("two", "scrap-2")
                                        + scrap.formatted("three", "scrap-3")
                                        + "pieces:\n"));
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(folder.said())
                .contains("Nothing is cut from three: it stays as it is.")
                .containsPattern("canvas .*0\\.240 m");
        assertThat(there()).containsExactly("scrap-3:13 cm:100 cm");
        assertThat(folder.run(
                        "check",
                        folder.path("out/canvas.svg"),
                        folder.path("out/one.svg"),
                        folder.path("out/two.svg"),
                        "--job",
                        folder.path("out/as-laid.yaml")))
                .as(folder.said())
                .isZero();
        assertThat(stash("take", "scrap-3"))
                .as("it is free again: " + folder.said())
                .isZero();
    }

    /** 2 m × 1 m are 1.8 m × 80 cm when they are washed, and do not shrink again. The print moves along. */
    @Test
    void whatWasWashedIsKeptWashed() throws Exception {
        add("bolt", "--length", "2 m", "--shrinkage", "10 %, 20 %, pre-wash", "--print", "20 cm, 10 cm");
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(table()).endsWith("bolt,canvas,,80 cm,126 cm,,,,\"0 %, 0 %, in-pattern\",,\"'-36 cm, 8 cm\",");
    }

    @Test
    void whatDoesNotFitIsGivenBack() throws Exception {
        add("short", "--length", "30 cm");
        assertThat(marker()).isEqualTo(4);
        assertThat(there()).containsExactly("short:30 cm:100 cm");
        assertThat(folder.run("stash", "list", "--stash", folder.path("stash.db")))
                .isZero();
        assertThat(folder.said()).contains("free").doesNotContain("unclear", "reserved");
        assertThat(path.resolve("out")).doesNotExist();
    }

    @Test
    void aClothIsNamed() throws Exception {
        folder.write("job.yaml", JOB.replace("from: stash", "from: blue-2"));
        add("blue-1", "--length", "2 m");
        add("blue-2", "--outline", "0 mm, 0 mm; 700 mm, 0 mm; 600 mm, 1000 mm; 0 mm, 1000 mm");
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(there()).containsExactly("blue-1:200 cm:100 cm");
        assertThat(marker()).isEqualTo(3);
        assertThat(folder.said())
                .contains(
                        "blue-2 is not in the stash any more (cut for bands in ", "lengthwise stash give-back blue-2");
        folder.write("job.yaml", JOB.replace("from: stash", "from: blue-3"));
        assertThat(marker()).isEqualTo(3);
        assertThat(folder.said()).contains("there is no cloth named blue-3 in the stash; it has blue-1.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "width: 1200|width: 1200, length: 2000|job.yaml:5:51: key fabrics.canvas.from: this cloth comes from the stash, and the stash says its length",
                "width: 1200|width: 1200, repeat: {lengthwise: 100, origin: {from-start: 5}}|key fabrics.canvas.from: this cloth comes from the stash, and the stash says where its print lies",
                "width: 1200|width: 1200, direction: either-way|canvas: the job says either-way and bolt is one-way in the stash",
                "width: 1200|width: 1200, zones: {hem: {from-selvedge: 0, to: 1100}}|key fabrics.canvas.from: bolt does not go with it: key fabrics.canvas.zones.hem.to: found",
                "make: 9|make: 9, colour: red|canvas: there is no free cloth of it in red in the stash",
            })
    void whatDoesNotGoTogetherIsOneLine(String said, String instead, String line) throws Exception {
        folder.write("job.yaml", JOB.replace(said, instead));
        add("bolt", "--length", "2 m", "--direction", "one-way", "--colour", "blue");
        assertThat(marker()).isEqualTo(3);
        assertThat(folder.said()).contains(line);
        assertThat(there()).containsExactly("bolt:200 cm:100 cm");
    }

    @Test
    void withoutAStashThereIsNoneMade() throws Exception {
        assertThat(marker()).isEqualTo(3);
        assertThat(folder.said()).contains("there is no stash at");
        assertThat(path.resolve("stash.db")).doesNotExist();
    }

    @Test
    void whichColourIsAsked() throws Exception {
        add("red-1", "--length", "2 m", "--colour", "red");
        add("blue-1", "--length", "1 m", "--colour", "blue");
        assertThat(marker()).isEqualTo(3);
        assertThat(folder.said()).contains("canvas: the stash has it in blue, red; say which");
        folder.write("job.yaml", JOB.replace("make: 9", "make: 9, colour: red"));
        assertThat(marker()).as(folder.said()).isZero();
        assertThat(there()).containsExactly("blue-1:100 cm:100 cm", "red-1:146 cm:100 cm");
    }

    /** Real runs, killed at any moment: where a marker was written, its cloth is not to be had again unasked. */
    @Test
    void killedAtAnyMomentNoClothIsCutTwice() throws Exception {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(4);
        int written = 0;
        for (int round = 0; round < 7; round++) {
            String name = "bolt-" + round;
            add(name, "--length", "2 m");
            folder.write("job.yaml", JOB.replace("from: stash", "from: " + name));
            Path out = path.resolve("out-" + round);
            // at the first file, at the marker itself, or at any time before
            Path sign = out.resolve(List.of("report.html", "canvas.svg", "none").get(round % 3));
            long end = System.nanoTime() + random.nextLong(100, 2_500) * 1_000_000;
            Process run = start(out);
            while (run.isAlive() && !Files.exists(sign) && (round % 3 < 2 || System.nanoTime() < end)) {
                Thread.sleep(1);
            }
            run.destroyForcibly().waitFor();
            boolean marked = Files.exists(out.resolve("canvas.svg"));
            written += marked ? 1 : 0;
            assertThat(stash("list")).as(folder.said()).isZero();
            String line = folder.said()
                    .lines()
                    .filter(each -> each.startsWith(name + " "))
                    .findFirst()
                    .orElse("");
            boolean whole = line.contains("2.000 m") && line.endsWith("free");
            assertThat(marked && whole).as("%s: %s", name, line).isFalse();
            assertThat(line)
                    .containsAnyOf("2.000 m", "1.460 m")
                    .containsAnyOf("free", "unclear: a run ended writing to");
        }
        assertThat(written).isBetween(1, 7);
    }

    /** Two real runs at once go for the one bolt that is there: one gets it, and the other says so. */
    @Test
    void twoRunsAtOnceNeverGetTheSameBolt() throws Exception {
        folder.write("job.yaml", JOB.replace("from: stash", "from: bolt"));
        for (int round = 0; round < 3; round++) {
            add("bolt", "--length", "56 cm");
            List<Process> runs = List.of(start(path.resolve("a-" + round)), start(path.resolve("b-" + round)));
            List<Integer> codes = new ArrayList<>();
            for (Process run : runs) {
                codes.add(run.waitFor());
            }
            assertThat(codes).as(Files.readString(path.resolve("said.txt"))).containsExactlyInAnyOrder(0, 3);
            assertThat(there()).isEmpty();
        }
    }

    private Process start(Path out) throws IOException {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "lengthwise.cli.Main"));
        words.addAll(arguments(out));
        return new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        path.resolve("said.txt").toFile()))
                .start();
    }

    private List<String> arguments(Path out) {
        return List.of(
                "marker",
                folder.path("job.yaml"),
                "--iterations",
                "20",
                "--workers",
                "1",
                "--stash",
                folder.path("stash.db"),
                "--out",
                out.toString());
    }

    private int marker(String... more) {
        List<String> words = new ArrayList<>(arguments(path.resolve("out")));
        words.addAll(Arrays.asList(more));
        return folder.run(words.toArray(String[]::new));
    }

    private void add(String name, String... more) {
        List<String> words = new ArrayList<>(List.of("add", name, "--fabric", "canvas", "--width", "1 m"));
        words.addAll(Arrays.asList(more));
        assertThat(stash(words.toArray(String[]::new))).as(folder.said()).isZero();
    }

    private int stash(String... words) {
        List<String> all = new ArrayList<>(List.of("stash"));
        all.addAll(Arrays.asList(words));
        all.addAll(List.of("--stash", folder.path("stash.db")));
        return folder.run(all.toArray(String[]::new));
    }

    private List<String> table() {
        assertThat(stash("export")).as(folder.said()).isZero();
        return folder.said().lines().toList();
    }

    /** Returns name, length and width of what is there. */
    private List<String> there() {
        return table().stream()
                .skip(1)
                .map(row -> row.split(",", -1))
                .map(cells -> String.join(":", cells[0], cells[4], cells[3]))
                .toList();
    }
}
