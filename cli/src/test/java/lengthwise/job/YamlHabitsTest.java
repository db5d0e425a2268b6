package lengthwise.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The many ways to write the same job in YAML. */
class YamlHabitsTest {
    private static final Path FILE = Path.of("job.yaml");
    private static final String FLOW = """
            version: 1
            job: "Tee"
            units: cm
            drawings: [tee.svg]
            fabrics: {jersey: {for: shell, width: 160, direction: one-way}}
            pieces: {front: {cut: {shell: 1 on fold}}, sleeve: {cut: {shell: 1 pair}, up: as-drawn}}
            gap: 0.3
            order: [{size: "10", make: 2}]
            """;

    private static Job read(String yaml) throws JobException {
        return JobReader.read(FILE, yaml).job();
    }

    @Test
    void blocksSayTheSameAsBraces() throws Exception {
        String block = """
                %YAML 1.2
                ---
                # a tee
                'version': 1          # quoted key
                job: 'Tee'
                units: "cm"
                drawings:
                - tee.svg             # a list may stand as far left as its key
                fabrics:
                    jersey:
                        for: shell
                        width: "160"
                        direction: >-
                            one-way
                pieces:
                  front:
                    cut:
                      shell: 1   on   fold
                  sleeve:
                    cut: 1 pair
                    up: as-drawn
                gap: 3 mm
                order:
                  -
                    size: 10
                    make: 2
                ...
                """;
        assertThat(read(block)).isEqualTo(read(FLOW));
    }

    /** Unicode ends at U+10FFFF; the YAML library answers what lies beyond it with errors of its own inner workings. */
    @ParameterizedTest
    @ValueSource(strings = {"\\U99999999", "\\UFFFFFFFF", "\\U00110000", "\\U7fffffff"})
    void anEscapeBeyondTheLastLetterIsRefused(String escape) {
        assertThatThrownBy(() -> read(FLOW.replace("\"Tee\"", "\"Tee " + escape + "\"")))
                .isInstanceOf(JobException.class)
                .hasMessageStartingWith("job.yaml:")
                .hasMessageContaining(escape.substring(2))
                .hasMessageNotContaining("\n");
    }

    @Test
    void theLastLetterIsRead() throws Exception {
        assertThat(read(FLOW.replace("\"Tee\"", "\"Tee \\U0010FFFF\"")).title()).isEqualTo("Tee \uDBFF\uDFFF");
    }

    @Test
    void lineEndsOfOtherSystems() throws Exception {
        assertThat(read(FLOW.replace("\n", "\r\n"))).isEqualTo(read(FLOW));
        assertThat(read(FLOW.stripTrailing())).isEqualTo(read(FLOW));
    }

    @Test
    void byteOrderMarks(@TempDir Path folder) throws Exception {
        assertThat(read(folder, ("\uFEFF" + FLOW).getBytes(StandardCharsets.UTF_8)))
                .isEqualTo(read(FLOW));
        assertThat(read(folder, ("\uFEFF" + FLOW).getBytes(StandardCharsets.UTF_16LE)))
                .isEqualTo(read(FLOW));
        assertThat(read(folder, ("\uFEFF" + FLOW).getBytes(StandardCharsets.UTF_16BE)))
                .isEqualTo(read(FLOW));
    }

    private static Job read(Path folder, byte[] bytes) throws IOException, JobException {
        return JobReader.read(Files.write(folder.resolve("job.yaml"), bytes)).job();
    }

    @Test
    void aPlaceAfterLinesOfOtherSystemsAndWideLetters() throws Exception {
        JobFile file = JobReader.read(FILE, FLOW.replace("\n", "\r\n").replace("\"10\"", "𝄞é"));
        assertThat(file.error("order[1].make", "x").getMessage()).isEqualTo("job.yaml:8:20: key order[1].make: x");
    }

    @Test
    void namesInAnyLanguage() throws Exception {
        Job job = read("""
                version: 1
                drawings: ["schnitte/größe 40.svg"]
                fabrics: {Seide: {for: Oberstoff, width: 140 cm}, подкладка: {width: 150 cm}}
                pieces:
                  Ärmel: {cut: {Oberstoff: 1 pair, подкладка: 1 pair}}
                  "Kragen: oben": {cut: {Oberstoff: 1}}
                  前身頃: {up: none}
                  on: {up: none}
                order: [{size: Größe 40, make: 1}]
                """);
        assertThat(job.pieces().stream().map(JobPiece::name)).containsExactly("Ärmel", "Kragen: oben", "前身頃", "on");
        assertThat(job.fabrics().get(1).role()).isEqualTo("подкладка");
        assertThat(job.drawings().get(0).file()).isEqualTo("schnitte/größe 40.svg");
        assertThat(job.order().get(0).size().name()).isEqualTo("Größe 40");
    }

    @Test
    void aSizeIsTextEvenWhereYamlSeesANumber() throws Exception {
        assertThat(read(FLOW.replace("\"10\"", "010")).order().get(0).size().name())
                .isEqualTo("010");
        assertThat(read(FLOW.replace("\"10\"", "no")).order().get(0).size().name())
                .isEqualTo("no");
    }

    @Test
    void oddThingsAreWarnedOfAndDoNotStopTheJob() throws Exception {
        JobFile file = JobReader.read(FILE, """
                version: 1
                drawings: [tee.svg]
                fabrics:
                  jersey: {for: shell, width: 160 cm}
                  mesh: {for: lining, width: 160 cm}
                pieces:
                  front: {cut: {shell: 1}, match-point: {at: notch 2, tolerance: 2 mm}}
                order: [{make: 1}]
                """);
        assertThat(file.warnings())
                .containsExactly(
                        "job.yaml:7:28: key pieces.front.match-point: none of the fabrics it is cut from has a repeat, "
                                + "so the match point changes nothing",
                        "job.yaml:5:3: key fabrics.mesh: no piece listed under pieces is cut from it (it is for lining)");
    }
}
