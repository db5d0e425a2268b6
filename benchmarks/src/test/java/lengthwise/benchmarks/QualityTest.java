package lengthwise.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class QualityTest {
    private static final String TWO_HALVES = """
            {"name": "halves", "note": {"skip": [1, 2]}, "stripHeight": 2.5, "totalArea": 12.5, "items": [
              {"id": 0, "demand": 2, "allowedRotationsDegrees": [0, 180],
               "polygon": [[0, 0], [5, 0], [0.0, 2.5]]}]}
            """;

    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @Test
    void readsAnInstanceOntoTheGrid() throws IOException {
        Files.writeString(folder.resolve("halves.json"), TWO_HALVES);
        Instance instance = InstanceFile.read(folder, "halves");
        // 600 000 µm a unit: 1.5 m high, and half units are whole.
        assertThat(instance.task().height()).isEqualTo(1_500_000);
        assertThat(instance.task().demands()).hasSize(2);
        assertThat(instance.task().demands().get(0).outline().doubleArea()).isEqualTo(3_000_000L * 1_500_000);
        assertThat(instance.density(3_000_000)).isCloseTo(100, within(1e-9));
        assertThat(instance.times(3).task().demands()).hasSize(6);
        assertThat(instance.times(3).density(9_000_000)).isCloseTo(100, within(1e-9));
    }

    @Test
    void savesAndResumes() throws IOException {
        Files.writeString(folder.resolve("halves.json"), TWO_HALVES);
        Path save = folder.resolve("runs.csv");
        String[] arguments = {
            "quality",
            "--instances",
            folder.toString(),
            "--iterations",
            "5",
            "--workers",
            "1",
            "--save",
            save.toString(),
            "--seeds",
            "1..2",
            "halves"
        };
        assertThat(run(arguments)).isZero();
        assertThat(Row.read(save)).hasSize(2).allMatch(Row::legal);
        // A figure that no run can give shows that the row was taken from the file.
        String changed = Files.readString(save).replaceAll("(halves,2,)[0-9.]+", "$11234.5");
        Files.writeString(save, changed);
        assertThat(run(arguments)).isZero();
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("halves,2,1234.5,");
        assertThat(Files.readString(save)).isEqualTo(changed);
        arguments[4] = "6";
        assertThat(run(arguments)).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("other settings");
    }

    @Test
    void comparesByMedians() throws IOException {
        Path a = rows("a.csv", "swim,1,70", "swim,2,72", "swim,3,90", "fu,1,80", "fu,2,80.06", "mao,1,80");
        Path b = rows("b.csv", "swim,1,74", "swim,2,73", "swim,3,71", "fu,1,80", "mao,1,79");
        assertThat(run("compare", a.toString(), b.toString())).isZero();
        assertThat(out.toString(StandardCharsets.UTF_8).lines())
                .anySatisfy(line -> assertThat(line).matches("swim +3 +3 +72.00 +73.00 +\\+1.00  better"))
                .anySatisfy(line -> assertThat(line).matches("fu +2 +1 +80.03 +80.00 +-0.03  same"))
                .anySatisfy(line -> assertThat(line).matches("mao +1 +1 +80.00 +79.00 +-1.00  worse"))
                .anySatisfy(line -> assertThat(line).startsWith("3 instances: 1 better, 1 the same"));
    }

    @Test
    void wrongUseIsToldAndNotRun() {
        assertThat(run()).isEqualTo(2);
        assertThat(run("quality")).isEqualTo(2);
        assertThat(run("quality", "--seconds", "-1", "swim")).isEqualTo(2);
        assertThat(run("quality", "--seeds", "3..1", "swim")).isEqualTo(2);
        assertThat(run("quality", "--fast", "swim")).isEqualTo(2);
        assertThat(run("quality", "swim")).isEqualTo(2);
        assertThat(run("quality", "--instances", folder.toString(), "swim")).isEqualTo(2);
        assertThat(run("compare", "one.csv")).isEqualTo(2);
        assertThat(out.toString(StandardCharsets.UTF_8)).doesNotContain("swim,");
    }

    private Path rows(String name, String... rows) throws IOException {
        StringBuilder csv = new StringBuilder(Row.HEADER + "\n");
        for (String row : rows) {
            String[] cells = row.split(",", -1);
            csv.append("%s,%s,60.0,2,1.0,%s,true,0.1,9%n".formatted(cells[0], cells[1], cells[2]));
        }
        return Files.writeString(folder.resolve(name), csv);
    }

    private int run(String... arguments) {
        return Main.run(stream(out), stream(err), arguments);
    }

    private static PrintStream stream(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }
}
