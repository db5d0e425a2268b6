package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import lengthwise.cli.Main;
import lengthwise.testing.Json;
import org.w3c.dom.Document;

/**
 * What a demo writes, each run once with a search of a few rounds: its page for people, and the same for machines.
 *
 * @param html our pages are well-formed XML as well
 */
record DemoRun(Path html, Path json) {
    private static final String SHORT = "smock/short-of-cloth.yaml";
    private static final String HALF_CUT = "bucket-hats/half-cut.yaml";

    static final String[] MARKERS = {
        "wrap-swim-set/job.yaml",
        "wrap-swim-set/matched.yaml",
        "wrap-swim-set/made-to-measure.yaml",
        "wrap-swim-set/hand-dyed.yaml",
        "wrap-swim-set/bolt-and-remnants.yaml",
        "wrap-swim-set/herons.yaml",
        "smock/job.yaml",
        "smock/corduroy.yaml",
        "smock/border.yaml",
        "smock/checked.yaml",
        "smock/two-folds.yaml",
        SHORT,
        "bucket-hats/job.yaml",
        "bucket-hats/remnants.yaml",
        "bucket-hats/folded-and-round.yaml",
        "bucket-hats/half-a-dozen.yaml",
        HALF_CUT,
        "tool-roll/job.yaml",
        "tool-roll/edge-to-edge.yaml"
    };
    static final String PLAN = "wrap-swim-set/lays.yaml";

    private static final Map<String, DemoRun> RUNS = new TreeMap<>();

    /** Returns the demos' jobs, for parameters of tests. */
    static Stream<String> jobs() {
        return Stream.concat(Stream.of(MARKERS), Stream.of(PLAN));
    }

    static DemoRun of(String job) {
        return RUNS.computeIfAbsent(job, DemoRun::make);
    }

    private static DemoRun make(String job) {
        String command = job.equals(PLAN) ? "plan" : "marker";
        String page = job.equals(PLAN) ? "plan" : "report";
        try {
            Path out = Files.createTempDirectory(Files.createDirectories(Path.of("target", "runs")), "demo");
            if (job.equals(HALF_CUT)) {
                run("marker", begun(out).toString(), out);
            } else {
                run(command, job, out);
            }
            return new DemoRun(out.resolve(page + ".html"), out.resolve(page + ".json"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void run(String command, String job, Path out) {
        List<String> words = new ArrayList<>(List.of(command, job, "--out", out.toString()));
        words.addAll(List.of("--iterations", "4", "--seed", "7", "--workers", "1"));
        if (job.equals(SHORT)) {
            words.add("--what-fits");
        }
        assertThat(Main.run(words.toArray(new String[0]))).isZero();
    }

    /** Returns the job that goes on with a marker, in a folder in which that has been made. */
    private static Path begun(Path out) throws IOException {
        Path folder = Files.createDirectories(out.resolve("begun"));
        for (String file : List.of("half-a-dozen.yaml", "half-cut.yaml", "bucket-hat.svg")) {
            Files.copy(Path.of("bucket-hats", file), folder.resolve(file));
        }
        run("marker", folder.resolve("half-a-dozen.yaml").toString(), folder.resolve("half-a-dozen"));
        return folder.resolve("half-cut.yaml");
    }

    Document page() throws Exception {
        return DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder().parse(html.toFile());
    }

    Json figures() throws IOException {
        return Json.file(json);
    }
}
