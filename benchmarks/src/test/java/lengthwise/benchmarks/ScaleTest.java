package lengthwise.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScaleTest {
    @TempDir
    Path folder;

    @Test
    void tellsOneRowForEachOrderAndPlotsThem() throws Exception {
        Path save = folder.resolve("growth.csv");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int code = Main.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                System.err,
                "scale",
                "--iterations",
                "3",
                "--workers",
                "1",
                "--save",
                save.toString(),
                "graded:5:1",
                "graded:10:1");
        assertThat(code).isZero();
        assertThat(Files.readAllLines(save))
                .hasSize(4)
                .startsWith("# scale --iterations 3 --workers 1", ScaleRow.HEADER)
                .satisfies(lines -> assertThat(lines.get(2)).startsWith("5,5,").endsWith(",true"))
                .satisfies(
                        lines -> assertThat(lines.get(3)).startsWith("10,10,").endsWith(",true"));
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("| 5 | 5 |").contains("| 10 | 10 |");
        try (var plot = Files.newInputStream(folder.resolve("growth.svg"))) {
            var circles = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(plot)
                    .getElementsByTagName("circle");
            assertThat(circles.getLength()).isBetween(4, 6);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.7, 0.8", "1, 1", "1.01, 2", "330, 400", "810, 1000"})
    void scalesEndAtRoundNumbers(double value, double end) {
        assertThat(ScalePlot.niceAbove(value)).isEqualTo(end);
    }
}
