package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import lengthwise.job.JobException;
import lengthwise.job.JobFile;
import lengthwise.job.JobReader;
import lengthwise.job.PlanOrders;
import lengthwise.report.PlanFiles;
import lengthwise.report.PlanJson;
import lengthwise.report.PlanRun;
import lengthwise.report.PlanTable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shares an order out over lays. */
@Command(
        name = PlanCommand.NAME,
        mixinStandardHelpOptions = true,
        description = {
            "Plans how an order is cut: which lays, how many plies of each, which sizes in",
            "each marker, and lays out those markers. Limits stand under plan in the job."
        })
final class PlanCommand implements Callable<Integer> {
    static final String NAME = "plan";

    private static final int MOST_WORKERS = 64;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1", paramLabel = "JOB", description = "a job file (.yaml)")
    private Path job;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            defaultValue = "plan",
            description = "where the results go (default: plan)")
    private Path out;

    @Option(
            names = "--seconds",
            paramLabel = "S",
            description = {
                "time for the markers of the whole plan (default: by how much there",
                "is to lay; Ctrl-C takes the best so far)"
            })
    private @Nullable Double seconds;

    @Option(
            names = "--iterations",
            paramLabel = "N",
            description = "rounds of the search for each marker; the result is then the same every time")
    private @Nullable Long iterations;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "start of the random numbers (default: 1)")
    private long seed;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "searches side by side (default: one a processor, at most 4)")
    private int workers = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));

    @Option(names = "--json", description = "prints the plan for machines instead of the table")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    PlanCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        try (Interrupt interrupt = Interrupt.listen()) {
            JobFile file = JobReader.read(job);
            PlanOrders orders = PlanOrders.of(file);
            orders.warnings().forEach(warning -> err.println("warning: " + warning));
            LayMarkers.Wish wish = new LayMarkers.Wish(
                    seconds, iterations, seed, workers, InstantSource.system(), interrupt::isRequested, out);
            List<PlanRun.Cloth> cloths = new ArrayList<>();
            for (PlanOrders.Cloth cloth : orders.cloths()) {
                LayMarkers.Answer answer =
                        LayMarkers.plan(cloth, orders.aim(), orders.cloths().size(), wish, err);
                if (answer instanceof LayMarkers.Answer.None none) {
                    err.println("lengthwise: " + cloth.fabric().name() + ": " + none.reason());
                    return ExitCode.NO_MARKER.number();
                }
                cloths.add(((LayMarkers.Answer.Planned) answer).cloth());
            }
            boolean reproducible = seconds == null && iterations != null && !interrupt.isRequested();
            PlanRun run = new PlanRun(
                    file.job().title(), Version.number(), seed, workers, reproducible, cloths, orders.warnings());
            PlanFiles.write(run, out);
            spec.commandLine().getOut().print(json ? PlanJson.of(run) : PlanTable.of(run));
            spec.commandLine().getOut().flush();
            err.println("Written to " + out + ": see plan.html.");
            return (interrupt.isRequested() ? ExitCode.INTERRUPTED : ExitCode.DONE).number();
        } catch (JobException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
    }

    private void refuseWrongUse() {
        if (seconds != null && !(seconds > 0 && seconds <= 86_400)) {
            throw wrong("--seconds takes a time above 0 and up to a day (86400), not " + seconds + ".");
        }
        if (iterations != null && iterations < 1) {
            throw wrong("--iterations takes a number of sweeps from 1, not " + iterations + ".");
        }
        if (workers < 1 || workers > MOST_WORKERS) {
            throw wrong("--workers takes 1 to %d, not %d.".formatted(MOST_WORKERS, workers));
        }
        if (Files.exists(out) && !Files.isDirectory(out)) {
            throw wrong("--out " + out + " is a file; name a folder.");
        }
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
