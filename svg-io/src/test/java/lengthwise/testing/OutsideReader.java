package lengthwise.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs of others that read what is written here. Where one is not installed, the tests that ask it are skipped, unless
 * the environment requires them all: {@code OUTSIDE_READERS=required}, as in the build for all.
 */
public enum OutsideReader {
    /** Of poppler. */
    PDFINFO("pdfinfo"),
    CHROMIUM(
            "chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking"
                    + " --disable-component-update --disable-sync --hide-scrollbars"),
    /** The interpreter for which the package python3-ezdxf is installed. */
    PYTHON("/usr/bin/python3");

    private final String command;

    OutsideReader(String command) {
        this.command = command;
    }

    /** Runs it to its end, and returns the lines that it says. */
    public List<String> says(String... words) throws IOException, InterruptedException {
        List<String> all = new ArrayList<>(List.of(command.split(" ", -1)));
        all.addAll(List.of(words));
        Process process;
        try {
            process = new ProcessBuilder(all).redirectErrorStream(true).start();
        } catch (IOException notHere) {
            missing(all.get(0));
            return List.of();
        }
        process.getOutputStream().close();
        List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertThat(process.waitFor()).as(String.join("\n", lines)).isZero();
        return lines;
    }

    /** Skips the test that runs, or fails it where all have to be there. */
    public static void missing(String name) {
        assertThat(System.getenv("OUTSIDE_READERS"))
                .as("%s is not installed", name)
                .isNotEqualTo("required");
        Assumptions.abort(name + " is not installed");
    }
}
