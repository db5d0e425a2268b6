package lengthwise.cli;

import java.util.List;
import java.util.stream.Stream;
import lengthwise.ortools.Natives;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How long and how a command searches. */
final class SearchOptions {
    private static final int MOST_WORKERS = 64;
    private static final String WITHOUT_LIBRARY =
            "The library OR-Tools cannot be loaded on this machine: markers come out longer than they need be, and plans cost more"
                    + " cloth. Unpack the zip for this machine again, all of it.";

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--seconds",
            paramLabel = "S",
            description =
                    "time for all searches together (default: by how much there is to lay; Ctrl-C takes the best so far)")
    @Nullable
    Double seconds;

    @Option(
            names = "--iterations",
            paramLabel = "N",
            description =
                    "rounds of each search; without --seconds the clock is off and the result is the same every time")
    @Nullable
    Long iterations;

    @Option(names = "--seed", paramLabel = "N", description = "start of the random numbers (default: ${DEFAULT-VALUE})")
    long seed = 1;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "searches side by side (default: one a processor, at most 4)")
    int workers = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    SearchOptions() {}

    void refuseWrongUse() {
        if (seconds != null && !(seconds > 0 && seconds <= 86_400)) {
            throw wrong("--seconds takes a time above 0 and up to a day (86400), not " + seconds + ".");
        }
        if (iterations != null && iterations < 1) {
            throw wrong("--iterations takes a number of sweeps from 1, not " + iterations + ".");
        }
        if (workers < 1 || workers > MOST_WORKERS) {
            throw wrong("--workers takes 1 to %d, not %d.".formatted(MOST_WORKERS, workers));
        }
    }

    /** Returns what the maker is warned of before a search: what this machine lacks, and what her job gives cause to say. */
    List<String> warnings(List<String> ofJob) {
        return Natives.areLoaded()
                ? ofJob
                : Stream.concat(Stream.of(WITHOUT_LIBRARY), ofJob.stream()).toList();
    }

    ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
