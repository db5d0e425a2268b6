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
import lengthwise.stash.StashException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
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

    @Mixin
    private SearchOptions searching;

    @Mixin
    private StashOption stash;

    @Option(names = "--json", description = "prints the plan for machines instead of the table")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    PlanCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        try (Interrupt interrupt = Interrupt.listen()) {
            JobFile said = JobReader.read(job);
            try (BoltsFromStash bolts = BoltsFromStash.of(said, stash.file())) {
                return plan(bolts.reserved(said, err), bolts, interrupt, err).number();
            }
        } catch (JobException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        } catch (StashException bad) {
            err.println("lengthwise: " + bad.getMessage() + ".");
            return ExitCode.BAD_INPUT.number();
        }
    }

    private ExitCode plan(JobFile file, BoltsFromStash bolts, Interrupt interrupt, PrintWriter err)
            throws IOException, JobException, StashException {
        PlanOrders orders = PlanOrders.of(file);
        List<String> warnings = searching.warnings(orders.warnings());
        warnings.forEach(warning -> err.println("warning: " + warning));
        LayMarkers.Wish wish = new LayMarkers.Wish(
                searching.seconds,
                searching.iterations,
                searching.seed,
                searching.workers,
                InstantSource.system(),
                interrupt::isRequested,
                out);
        List<PlanRun.Cloth> cloths = new ArrayList<>();
        for (PlanOrders.Cloth cloth : orders.cloths()) {
            LayMarkers.Answer answer =
                    LayMarkers.plan(cloth, orders.aim(), orders.cloths().size(), wish, err);
            if (answer instanceof LayMarkers.Answer.None none) {
                err.println("lengthwise: " + cloth.fabric().name() + ": " + none.reason());
                return ExitCode.NO_MARKER;
            }
            cloths.add(((LayMarkers.Answer.Planned) answer).cloth());
        }
        boolean reproducible = searching.seconds == null && searching.iterations != null && !interrupt.isRequested();
        PlanRun run = new PlanRun(
                file.job().title(),
                Version.number(),
                searching.seed,
                searching.workers,
                reproducible,
                cloths,
                warnings);
        bolts.writesTo(out);
        PlanFiles.write(run, out);
        bolts.spend(run, out, err);
        spec.commandLine().getOut().print(json ? PlanJson.of(run) : PlanTable.of(run));
        spec.commandLine().getOut().flush();
        err.println("Written to " + out + ": see plan.html.");
        return interrupt.isRequested() ? ExitCode.INTERRUPTED : ExitCode.DONE;
    }

    private void refuseWrongUse() {
        searching.refuseWrongUse();
        if (Files.exists(out) && !Files.isDirectory(out)) {
            throw searching.wrong("--out " + out + " is a file; name a folder.");
        }
    }
}
