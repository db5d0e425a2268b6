package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("written")
class PrintCommandTest {
    private static final String JOB = """
            version: 1
            units: mm
            fabrics:
              canvas: {width: 500, unusable-edge: {each-side: 0}, direction: either-way,
                       spread: {form: single-layer, end-allowance: {each-end: 20}}, sold-by: 100}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, cut: 2}
              tie: {strip: {cut-width: 30, length: 300}, runs: crosswise, cut: 1}
            gap: 3
            order:
              - {size: S, make: 1}
            """;

    @TempDir
    Path folder;

    private JobFolder here = new JobFolder(Path.of(""));

    @BeforeEach
    void aMarkerInAFolder() throws IOException {
        here = new JobFolder(folder);
        here.write("job.yaml", JOB);
        assertThat(here.marker(20, "out")).as(here.said()).isZero();
    }

    private int print(String... options) {
        String[] words = new String[options.length + 2];
        words[0] = "print";
        words[1] = here.path("out/canvas.svg");
        System.arraycopy(options, 0, words, 2, options.length);
        return here.run(words);
    }

    private byte[] start(String file) throws IOException {
        return Arrays.copyOf(Files.readAllBytes(folder.resolve(file)), 5);
    }

    @Test
    void writesThePagesBesideTheMarkerAndSaysWhatTheyAre() throws IOException {
        assertThat(print("--paper", "A4")).as(here.said()).isZero();
        assertThat(start("out/canvas.pdf")).asString().isEqualTo("%PDF-");
        assertThat(here.said()).contains("canvas.pdf", "to read and measure first", "Print page 1 alone");
        try (var files = Files.list(folder.resolve("out"))) {
            assertThat(files.map(file -> file.getFileName().toString())).noneMatch(name -> name.endsWith(".part"));
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "--paper letter --landscape --margin 0.5in --overlap 1cm, canvas.pdf",
        "--paper roll:914mm, canvas.pdf",
        "--paper roll:36in --user-unit, canvas.pdf",
        "--projector, canvas-projector.pdf",
        "--pieces --paper Legal, canvas-pieces.pdf"
    })
    void takesEveryKindOfPaper(String options, String file) throws IOException {
        assertThat(print(options.split(" ", -1))).as(here.said()).isZero();
        assertThat(start("out/" + file)).asString().isEqualTo("%PDF-");
    }

    @ParameterizedTest(name = "options: {0}")
    @CsvSource({
        "'', --paper",
        "--paper B5, A4",
        "--paper roll:0mm, roll",
        "--paper roll:914, roll",
        "--paper A4 --margin 9cm, margin",
        "--paper A4 --overlap -1mm, overlap",
        "--paper A4 --user-unit, --user-unit",
        "--pieces --projector, --projector",
        "--pieces --paper roll:914mm, --pieces",
        "--measured 5m, --measured",
        "--measured wide, --measured"
    })
    void wrongUseIsSaidAndNothingIsWritten(String options, String word) {
        assertThat(print(options.isEmpty() ? new String[0] : options.split(" ", -1)))
                .isEqualTo(2);
        assertThat(here.said()).contains(word);
        assertThat(folder.resolve("out/canvas.pdf")).doesNotExist();
    }

    @Test
    void aMarkerThatFailsItsCheckIsNotPrinted() throws IOException {
        String job = here.path("job.yaml");
        assertThat(print("--paper", "A4", "--job", job)).as(here.said()).isZero();
        here.write("job.yaml", JOB.replace("cut: 2", "cut: 3"));
        Files.delete(folder.resolve("out/canvas.pdf"));
        assertThat(print("--paper", "A4", "--job", job)).isEqualTo(5);
        assertThat(here.said()).contains("do not cut").contains("band");
        assertThat(folder.resolve("out/canvas.pdf")).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "<svg", "<svg xmlns='http://www.w3.org/2000/svg'/>", "\0\1\2", "%PDF-1.7"})
    void whatIsNoMarkerIsRefused(String text) throws IOException {
        here.write("out/canvas.svg", text);
        assertThat(print("--paper", "A4")).isEqualTo(3);
        assertThat(here.said()).contains("canvas.svg");
        assertThat(folder.resolve("out/canvas.pdf")).doesNotExist();
    }

    @Test
    void aMarkerScaledByAnotherProgramIsRefused() throws IOException {
        here.write(
                "out/canvas.svg",
                here.read("out/canvas.svg")
                        .replaceFirst("width=\"[0-9.]+mm\"", "width=\"100mm\"")
                        .replaceFirst("height=\"[0-9.]+mm\"", "height=\"100mm\""));
        assertThat(print("--paper", "A4")).isEqualTo(3);
        assertThat(here.said()).contains("not at true scale");
    }

    @Test
    void aHiddenPieceIsNotLostInSilence() throws IOException {
        here.write(
                "out/canvas.svg",
                here.read("out/canvas.svg").replaceFirst("data-piece=", "visibility=\"hidden\" data-piece="));
        assertThat(print("--paper", "A4")).isEqualTo(3);
        assertThat(here.said()).contains("hidden");
    }

    /** 100 / 97 = 103.1 %. */
    @Test
    void whatSheMeasuredIsAnswered() {
        assertThat(here.run("print", "--measured", "97mm")).isEqualTo(5);
        assertThat(here.said()).contains("Reprint, don't cut").contains("103.1 %");
        assertThat(here.run("print", "--measured", "9.98 cm")).isZero();
        assertThat(here.said()).contains("True");
        assertThat(here.run("print", "--measured", "4 in")).isZero();
        assertThat(here.run("print", "--measured", "3 7/8 in")).isEqualTo(5);
        assertThat(here.said()).contains("103.2 %"); // 4 / 3.875
    }
}
