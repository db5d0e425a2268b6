package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What a maker can get wrong from the command line to the drawing: one clear line each, the right exit code, and nothing
 * written. Slips inside the job file have a test of their own.
 */
class BadInputTest {
    private static final String DRAWING = """
            <svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600">
            <defs><marker id="head" orient="auto"><path d="M0 0 L-4 2 L-4 -2 Z"/></marker></defs>
            <g id="flap"><path class="cut" d="M100 100 H200 V260 H140 Z"/>
            <line class="grain" x1="170" y1="240" x2="170" y2="130" marker-end="url(#head)"/></g>
            </svg>
            """;

    private static final String JOB = """
            version: 1
            job: test
            units: mm
            drawings: [{file: top.svg, seam-allowance: included, arrow-means: grain}]
            fabrics:
              cloth: {for: shell, width: 1500, unusable-edge: {each-side: 20}, direction: one-way,
                      spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces: {flap: {cut: {shell: 1 pair}}}
            gap: 2
            order: [{make: 2}]
            """;

    @TempDir
    Path folder;

    private final StringWriter err = new StringWriter();

    /** What is changed in a good job and drawing, the exit code, and what the line has to say. */
    static Stream<Arguments> slips() {
        return Stream.of(
                slip(
                        "wider than the cloth",
                        "width: 1500",
                        "width: 100",
                        4,
                        "flap is 10.0 cm",
                        "cuttable width of cloth"),
                slip(
                        "shorter than the pieces",
                        "width: 1500",
                        "length: 120, width: 1500",
                        4,
                        "does not fit on cloth: 80 mm short",
                        "What stays out: 2 × flap R, 2 × flap L."),
                // two plies of 160 mm and 40 mm for the ends are 400 mm of cloth, and there are 120
                Arguments.of(
                        "shorter than two plies",
                        JOB.replace("form: single-layer", "form: plies-face-up, plies: 2")
                                .replace("width: 1500", "length: 120, width: 1500"),
                        DRAWING,
                        4,
                        List.of("does not fit on cloth: 280 mm short")),
                slip("bare two", "shell: 1 pair", "shell: 2", 3, "2 alike", "1 pair"),
                slip("unknown piece", "{flap: {", "{flop: {", 3, "flop is not in the drawings", "did you mean flap"),
                slip("on fold without fold", "1 pair", "1 on fold", 3, "no fold edge is marked"),
                slip("missing drawing", "file: top.svg", "file: tip.svg", 3, "tip.svg", "no such drawing"),
                Arguments.of(
                        "alike and folded",
                        JOB.replace("single-layer", "fold-lengthwise").replace("1 pair", "2 alike"),
                        DRAWING,
                        4,
                        List.of("flap", "mirrored", "single layer")),
                Arguments.of(
                        "stretch against print",
                        JOB.replace("arrow-means: grain", "arrow-means: stretch")
                                .replace("direction: one-way", "direction: one-way, most-stretch: crosswise")
                                .replace("1 pair}", "1 pair}, up: as-drawn"),
                        DRAWING,
                        4,
                        List.of("flap", "pulled two ways")),
                slip("stretch unknown", "arrow-means: grain", "arrow-means: stretch", 3, "most-stretch"),
                slip(
                        "scale box missing",
                        "top.svg,",
                        "top.svg, scale-box: {id: nowhere, measures: 10 cm},",
                        3,
                        "nowhere"),
                drawn("no grain line", "class=\"grain\"", "class=\"other\" display=\"none\"", 3, "no grain line"),
                drawn("no up end", " marker-end=\"url(#head)\"", "", 3, "Which end of flap is up?"),
                drawn("open outline", "H140 Z", "H140", 3, "top.svg"),
                drawn("self-crossing outline", "H200 V260 H140 Z", "L200 260 H120 L200 100 Z", 3, "top.svg", "cross"),
                drawn("no physical size", "width=\"600mm\" height=\"600mm\" ", "", 3, "size"),
                drawn("not XML", "<svg", "svg", 3, "top.svg"),
                drawn("cut off", "</svg>", "", 3, "top.svg"),
                drawn("path of rubbish", "M100 100 H200 V260 H140 Z", "M oops", 3, "top.svg"),
                drawn("numbers that are not", "M100 100 H200", "MNaN 100 H200", 3, "top.svg"),
                drawn(
                        "nothing to cut",
                        "class=\"cut\" d=\"M100 100 H200 V260 H140 Z\"",
                        "d=\"\"",
                        3,
                        "no closed outline"),
                drawn(
                        "same piece twice",
                        "</svg>",
                        "<g id=\"flap\"><rect x=\"300\" y=\"300\" width=\"50\" height=\"70\"/></g></svg>",
                        3,
                        "drawn twice"));
    }

    private static Arguments slip(String name, String from, String to, int code, String... says) {
        return Arguments.of(name, JOB.replace(from, to), DRAWING, code, List.of(says));
    }

    private static Arguments drawn(String name, String from, String to, int code, String... says) {
        return Arguments.of(name, JOB, DRAWING.replace(from, to), code, List.of(says));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("slips")
    void oneLineTheRightCodeAndNothingWritten(String name, String job, String drawing, int code, List<String> says)
            throws IOException {
        Files.writeString(folder.resolve("job.yaml"), job, StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("top.svg"), drawing, StandardCharsets.UTF_8);
        Path out = folder.resolve("out");
        int ended = run("marker", folder.resolve("job.yaml").toString(), "--out", out.toString(), "--iterations", "3");
        String said = err.toString();
        assertThat(ended).as(said).isEqualTo(code);
        assertThat(said).contains(says);
        assertThat(complaints(said)).hasSize(1);
        assertThat(out).doesNotExist();
    }

    static Stream<Arguments> wrongUses() {
        return Stream.of(
                Arguments.of(List.of(), "Say what to do"),
                Arguments.of(List.of("marke"), "marke"),
                Arguments.of(List.of("marker"), "JOB"),
                Arguments.of(List.of("marker", "JOB", "--seconds", "0"), "--seconds"),
                Arguments.of(List.of("marker", "JOB", "--seconds", "NaN"), "--seconds"),
                Arguments.of(List.of("marker", "JOB", "--iterations", "-4"), "--iterations"),
                Arguments.of(List.of("marker", "JOB", "--iterations", "many"), "many"),
                Arguments.of(List.of("marker", "JOB", "--workers", "0"), "--workers"),
                Arguments.of(List.of("marker", "JOB", "--width", "150 cm"), "job file"),
                Arguments.of(List.of("marker", "DRAWING"), "--width"),
                Arguments.of(List.of("marker", "DRAWING", "--width", "150"), "--width"),
                Arguments.of(List.of("marker", "DRAWING", "--width", "150 ells"), "--width"),
                Arguments.of(
                        List.of("marker", "DRAWING", "--width", "150 cm", "--direction", "sideways"), "--direction"),
                Arguments.of(List.of("marker", "DRAWING", "--width", "150 cm", "--make", "0"), "--make"),
                Arguments.of(List.of("marker", "JOB", "--out", "JOB"), "folder"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wrongUses")
    void wrongUseIsSaidInOneLine(List<String> arguments, String says) throws IOException {
        Path job = folder.resolve("job.yaml");
        Path drawing = folder.resolve("top.svg");
        Files.writeString(job, JOB, StandardCharsets.UTF_8);
        Files.writeString(drawing, DRAWING, StandardCharsets.UTF_8);
        int ended = run(arguments.stream()
                .map(argument -> argument.equals("JOB")
                        ? job.toString()
                        : argument.equals("DRAWING") ? drawing.toString() : argument)
                .toArray(String[]::new));
        assertThat(ended).as(err.toString()).isEqualTo(2);
        assertThat(complaints(err.toString())).singleElement().asString().contains(says);
    }

    @Test
    void aJobFileThatIsNotThere() {
        assertThat(run("marker", folder.resolve("none.yaml").toString())).isEqualTo(3);
        assertThat(complaints(err.toString())).singleElement().asString().contains("none.yaml");
    }

    @Test
    void aFolderForAJobFile() throws IOException {
        Path job = Files.createDirectory(folder.resolve("job.yaml"));
        assertThat(run("marker", job.toString())).isEqualTo(3);
        assertThat(complaints(err.toString())).singleElement().asString().contains("job.yaml");
    }

    private static List<String> complaints(String said) {
        return said.lines().filter(line -> line.startsWith("lengthwise:")).toList();
    }

    private int run(String... args) {
        return Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err, true), args);
    }
}
