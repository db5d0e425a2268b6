package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A folder with a {@code job.yaml}, the commands that a maker types there, and what they say. */
final class JobFolder {
    private final Path folder;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    JobFolder(Path folder) {
        this.folder = folder;
    }

    void write(String file, String text) throws IOException {
        Files.writeString(folder.resolve(file), text, StandardCharsets.UTF_8);
    }

    String read(String file) throws IOException {
        return Files.readString(folder.resolve(file));
    }

    /** Lays the job with one worker; results go to a folder beside it. */
    int marker(int sweeps, String to) {
        return run(
                "marker",
                path("job.yaml"),
                "--iterations",
                Integer.toString(sweeps),
                "--workers",
                "1",
                "--out",
                path(to));
    }

    int check(String marker) {
        return run("check", path(marker), "--job", path("job.yaml"));
    }

    int run(String... words) {
        Stream.of(out, err).forEach(said -> said.getBuffer().setLength(0));
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), words);
    }

    String path(String file) {
        return folder.resolve(file).toString();
    }

    /** What the last command wrote to stdout and stderr. */
    String said() {
        return String.join("", List.of(out.toString(), err.toString()));
    }
}
