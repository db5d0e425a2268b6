package lengthwise.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaleTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @Test
    void tellsOneRowForEachOrderAndPlotsThem() throws Exception {
        Path save = folder.resolve("growth.csv");
        assertThat(run("3", save, "graded:10:1", "graded:5:1")).isZero();
        assertThat(Files.readAllLines(save))
                .hasSize(4)
                .startsWith("# scale --iterations 3 --workers 1", ScaleRow.HEADER)
                .satisfies(lines -> assertThat(lines.get(2))
                        .startsWith("graded:10:1,1,10,10,")
                        .endsWith(",true"))
                .satisfies(lines ->
                        assertThat(lines.get(3)).startsWith("graded:5:1,1,5,5,").endsWith(",true"));
        assertThat(said(out)).containsSubsequence("| 5 | 5 |", "| 10 | 10 |");
        assertThat(circles(folder.resolve("growth.svg"))).isBetween(4, 6);
    }

    @Test
    void resumes() throws Exception {
        Path save = folder.resolve("growth.csv");
        assertThat(run("3", save, "graded:5:1")).isZero();
        // A figure that no run can give shows that the row was taken from the file.
        String changed = Files.readString(save).replaceAll("(graded:5:1,1,5,5,)[0-9.]+", "$11234.500");
        Files.writeString(save, changed);
        assertThat(run("3", save, "graded:5:1", "graded:10:1")).isZero();
        assertThat(said(out)).contains("graded:5:1,1,5,5,1234.500,", "| 5 | 5 | 1234.50 |");
        assertThat(Files.readString(save)).startsWith(changed).hasLineCount(4);
        assertThat(circles(folder.resolve("growth.svg"))).isBetween(4, 6);
    }

    @Test
    void refusesAFileOfOtherRuns() throws Exception {
        Path save = folder.resolve("growth.csv");
        assertThat(run("3", save, "graded:5:1")).isZero();
        assertThat(run("4", save, "graded:5:1")).isEqualTo(2);
        assertThat(said(err)).contains("other settings");
        Files.writeString(save, Files.readString(save).replace("order,seed,", ""));
        assertThat(run("3", save, "graded:5:1")).isEqualTo(2);
        assertThat(said(err)).contains("other columns");
        String broken = "# scale --iterations 3 --workers 1\n" + ScaleRow.HEADER + "\ngraded:5:1,1,5,5,0.0\n";
        Files.writeString(save, broken);
        assertThat(run("3", save, "graded:5:1")).isEqualTo(2);
        assertThat(said(err)).contains("graded:5:1,1,5,5,0.0");
        assertThat(Files.readString(save)).isEqualTo(broken);
    }

    private int run(String iterations, Path save, String... orders) {
        List<String> arguments = new ArrayList<>(
                List.of("scale", "--iterations", iterations, "--workers", "1", "--save", save.toString()));
        arguments.addAll(List.of(orders));
        return Main.run(printer(out), printer(err), arguments.toArray(String[]::new));
    }

    private static PrintStream printer(ByteArrayOutputStream to) {
        return new PrintStream(to, true, StandardCharsets.UTF_8);
    }

    private static String said(ByteArrayOutputStream by) {
        return by.toString(StandardCharsets.UTF_8);
    }

    private static int circles(Path plot) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(plot.toFile())
                .getElementsByTagName("circle")
                .getLength();
    }

    @ParameterizedTest
    @CsvSource({"0.7, 0.8", "1, 1", "1.01, 2", "330, 400", "810, 1000"})
    void scalesEndAtRoundNumbers(double value, double end) {
        assertThat(ScalePlot.niceAbove(value)).isEqualTo(end);
    }
}
