package lengthwise.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A real run that is asked to end while it holds a cloth of the stash. By their area alone twenty pieces take 692 mm of canvas of
 * 1 m, and 40 mm of ends: on 80 cm it looks for room in vain for as long as it may; on 5 m it finds some at once.
 */
class StashInterruptTest {
    private static final String JOB = """
            version: 1
            job: bits
            units: mm
            drawings: [{file: bits.svg, drawing-unit: 1 mm, seam-allowance: included}]
            fabrics:
              canvas: {for: shell, width: 1200, from: stash, unusable-edge: {each-side: 0}, direction: either-way,
                       spread: {form: single-layer, end-allowance: {each-end: 20}}}
            pieces:
              a: {cut: 1, up: as-drawn}
              b: {cut: 1, up: as-drawn}
              c: {cut: 1, up: as-drawn}
              d: {cut: 1, up: as-drawn}
            gap: 0
            order: [{make: 5}]
            """;

    private static final String BITS = """
            <svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="400mm" viewBox="0 0 1000 400">
            <path id="a" d="M10 10 L210 40 L160 300 L60 330 Z"/>
            <path id="b" d="M250 10 L420 60 L400 210 L300 180 L270 320 Z"/>
            <path id="c" d="M450 10 L600 10 L650 150 L520 330 Z"/>
            <path id="d" d="M700 10 L880 90 L930 260 L740 200 Z"/>
            </svg>
            """;

    @TempDir
    Path path;

    private JobFolder folder;
    private final List<Process> begun = new ArrayList<>();

    @BeforeEach
    void write() throws IOException {
        folder = new JobFolder(path);
        folder.write("job.yaml", JOB);
        folder.write("bits.svg", BITS);
    }

    @AfterEach
    void end() {
        begun.forEach(Process::destroyForcibly);
    }

    @ParameterizedTest
    @ValueSource(strings = {"INT", "TERM"})
    void endedBeforeItHasAMarkerItHoldsNothing(String signal) throws Exception {
        add("short", "80 cm");
        add("long", "5 m");
        Process run = start();
        waitFor(run, "short", "reserved");
        send(run, signal);
        assertThat(list()).containsExactly("long 5.000 m free", "short 80 cm free");
        assertThat(path.resolve("out")).doesNotExist();
    }

    /** The marker that it had is written; its cloth is spent, and the rest is there under its name. */
    @ParameterizedTest
    @ValueSource(strings = {"INT", "TERM"})
    void endedWithAMarkerItHasSpentItsCloth(String signal) throws Exception {
        add("long", "5 m");
        Process run = start();
        waitFor(run, "long", "reserved");
        Thread.sleep(1_500);
        send(run, signal);
        assertThat(list()).singleElement().satisfies(line -> assertThat(line).matches("long [34]\\.\\d\\d\\d m free"));
        assertThat(folder.run("check", folder.path("out/canvas.svg"), "--job", folder.path("out/as-laid.yaml")))
                .as(folder.said())
                .isZero();
    }

    /** Markers are written, so the bolt that they lie on is begun: 11 pieces of garments take more than 1.5 m of it. */
    @Test
    void aPlanThatIsEndedHasBegunItsBolt() throws Exception {
        folder.write(
                "job.yaml",
                JOB.replace("from: stash, ", "")
                                .replace("width: 1200", "width: 1000")
                                .replace("{make: 5}", "{size: S, make: 5}, {size: M, make: 6}")
                        + "plan: {bolts: stash, max-plies: 2, max-garments: 4}\n");
        add("long", "5 m");
        Process run = start("plan");
        waitFor(run, "long", "reserved");
        Thread.sleep(4_000);
        send(run, "TERM");
        assertThat(path.resolve("out/canvas-lay-1.svg")).exists();
        assertThat(list()).singleElement().satisfies(line -> assertThat(line).matches("long [23]\\.\\d\\d\\d m free"));
    }

    private Process start() throws IOException {
        return start("marker");
    }

    private Process start(String command) throws IOException {
        Process run = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "lengthwise.cli.Main",
                        command,
                        folder.path("job.yaml"),
                        "--seconds",
                        "100",
                        "--workers",
                        "1",
                        "--stash",
                        folder.path("stash.db"),
                        "--out",
                        folder.path("out")))
                .redirectErrorStream(true)
                .redirectOutput(path.resolve("said.txt").toFile())
                .start();
        begun.add(run);
        return run;
    }

    /** What is ignored where the tests were begun, a process of theirs ignores too. */
    private void send(Process run, String signal) throws Exception {
        Path status = Path.of("/proc/self/status");
        assumeTrue(Files.exists(status), "no signals to send here");
        String ignored = Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("SigIgn:"))
                .findFirst()
                .orElse("0")
                .replaceFirst("SigIgn:\\s*", "");
        assumeFalse(signal.equals("INT") && (Long.parseUnsignedLong(ignored, 16) & 2) != 0, "Ctrl-C is ignored here");
        new ProcessBuilder("kill", "-" + signal, Long.toString(run.pid()))
                .inheritIO()
                .start()
                .waitFor();
        assertThat(run.waitFor(30, TimeUnit.SECONDS)).as("it ends").isTrue();
        // 128 and the number of the signal, as a shell has it
        assertThat(run.exitValue())
                .as(Files.readString(path.resolve("said.txt")))
                .isEqualTo(signal.equals("INT") ? 130 : 143);
    }

    private void waitFor(Process run, String cloth, String state) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (list().stream().noneMatch(line -> line.startsWith(cloth + " ") && line.endsWith(state))) {
            assertThat(run.isAlive() && System.nanoTime() < end)
                    .as(Files.readString(path.resolve("said.txt")))
                    .isTrue();
            Thread.sleep(20);
        }
    }

    private void add(String name, String length) {
        assertThat(stash("add", name, "--fabric", "canvas", "--width", "1 m", "--length", length))
                .as(folder.said())
                .isZero();
    }

    /** Returns name, length and state of each cloth. */
    private List<String> list() {
        assertThat(stash("list")).as(folder.said()).isZero();
        return folder.said()
                .lines()
                .filter(line -> line.contains("canvas"))
                .map(StashInterruptTest::told)
                .toList();
    }

    private static String told(String line) {
        return line.replaceFirst("^(\\S+) .*?([0-9.]+ c?m)\\b.*(free|reserved|unclear).*$", "$1 $2 $3");
    }

    private int stash(String... words) {
        String[] all = new String[words.length + 3];
        all[0] = "stash";
        System.arraycopy(words, 0, all, 1, words.length);
        all[words.length + 1] = "--stash";
        all[words.length + 2] = folder.path("stash.db");
        return folder.run(all);
    }
}
