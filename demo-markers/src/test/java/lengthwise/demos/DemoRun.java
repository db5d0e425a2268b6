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

    static final String[] MARKERS = {
        "wrap-swim-set/job.yaml",
        "wrap-swim-set/matched.yaml",
        "wrap-swim-set/made-to-measure.yaml",
        "wrap-swim-set/hand-dyed.yaml",
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
            List<String> words = new ArrayList<>(List.of(command, job, "--out", out.toString()));
            words.addAll(List.of("--iterations", "4", "--seed", "7", "--workers", "1"));
            if (job.equals(SHORT)) {
                words.add("--what-fits");
            }
            assertThat(Main.run(words.toArray(new String[0]))).isZero();
            return new DemoRun(out.resolve(page + ".html"), out.resolve(page + ".json"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Document page() throws Exception {
        return DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder().parse(html.toFile());
    }

    Json figures() throws IOException {
        return Json.file(json);
    }
}
