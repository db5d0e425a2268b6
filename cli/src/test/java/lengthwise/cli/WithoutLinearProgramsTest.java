package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On a machine that OR-Tools has no library for, everything is laid all the same, and the maker is told what is missing. */
class WithoutLinearProgramsTest {
    private static final String JOB = """
            version: 1
            job: bands
            units: mm
            fabrics:
              canvas: {for: shell, width: 800, unusable-edge: {each-side: 0}, spread: {form: single-layer}}
            pieces:
              band: {strip: {cut-width: 100, length: 400}, runs: crosswise, print: ignore, cut: 1}
            gap: 0
            order: [{size: S, make: 9}, {size: L, make: 3}]
            """;

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"marker", "estimate", "chart", "plan", "shop"})
    void itIsSaidWhatIsMissing(String command) throws Exception {
        assertThat(said(command, withoutNatives())).contains("warning: The library OR-Tools cannot be loaded");
    }

    @ParameterizedTest
    @ValueSource(strings = {"marker", "plan"})
    void whereNothingIsMissingNothingIsSaid(String command) throws Exception {
        assertThat(said(command, System.getProperty("java.class.path"))).doesNotContain("OR-Tools");
    }

    private static String withoutNatives() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !Path.of(entry).getFileName().toString().matches("ortools-(linux|darwin|win32).*"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    private String said(String command, String classPath) throws Exception {
        Path job = Files.writeString(folder.resolve("job.yaml"), JOB);
        Path said = folder.resolve("said");
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                classPath,
                "lengthwise.cli.Main",
                command,
                job.toString(),
                "--iterations",
                "5",
                "--workers",
                "1"));
        if (!command.equals("shop")) {
            words.addAll(List.of("--out", folder.resolve("out").toString()));
        }
        Process process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(Files.readString(said)).isZero();
        return Files.readString(said);
    }
}
