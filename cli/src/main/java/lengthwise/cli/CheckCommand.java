package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.drawing.DrawingException;
import lengthwise.job.JobException;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.model.MarkerOrder;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvgReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads markers back, also such as were moved by hand, and lists what is wrong with them. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Reads markers back and lists what is wrong with them, with amounts.",
            "They may have been moved by hand in a drawing program. A line may be off by 0.02 mm."
        })
final class CheckCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "MARKER", description = "markers (.svg) that Lengthwise wrote")
    private List<Path> markers;

    @Option(names = "--job", required = true, paramLabel = "JOB", description = "the job file that they were made for")
    private Path job;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    CheckCommand() {}

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        try {
            Orders orders = Orders.of(JobReader.read(job));
            ExitCode worst = ExitCode.DONE;
            for (Path marker : markers) {
                MarkerDrawing drawing = MarkerSvgReader.read(marker);
                List<Violation> violations = violations(orders, drawing, marker);
                if (violations.isEmpty()) {
                    out.println(String.format(
                            Locale.ROOT,
                            "%s: nothing wrong; %d contours.",
                            marker,
                            drawing.pieces().size()));
                } else {
                    worst = ExitCode.CHECK_FAILED;
                    out.println(String.format(
                            Locale.ROOT, "%s: do not cut; %d things are wrong.", marker, violations.size()));
                    violations.forEach(violation -> out.println("  " + violation.sentence()));
                }
            }
            return worst.number();
        } catch (JobException | DrawingException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
    }

    /**
     * Returns whether a marker passes its check, before something is made of it; says what is wrong where it does not.
     *
     * @param made what would be done with it, as "printed"
     */
    static boolean isRight(PrintWriter err, Path marker, MarkerDrawing drawing, Path job, String made)
            throws JobException {
        List<Violation> violations = violations(Orders.of(JobReader.read(job)), drawing, marker);
        if (!violations.isEmpty()) {
            err.println("lengthwise: %s: do not cut, and so not %s; %s things are wrong."
                    .formatted(marker, made, violations.size()));
            violations.forEach(violation -> err.println("  " + violation.sentence()));
        }
        return violations.isEmpty();
    }

    /** Returns what is wrong with a marker that was read back. */
    static List<Violation> violations(Orders orders, MarkerDrawing drawing, Path marker) throws JobException {
        return MarkerCheck.violations(
                order(orders, drawing, marker), drawing.pieces(), drawing.length(), MarkerCheck.OUTSIDE_TOLERANCE);
    }

    private static MarkerOrder order(Orders orders, MarkerDrawing drawing, Path marker) throws JobException {
        List<String> names = orders.fabrics().stream()
                .map(fabric -> fabric.order().fabric().name())
                .toList();
        Optional<MarkerOrder> order = orders.fabrics().stream()
                .map(Orders.FabricOrder::order)
                .filter(one -> one.fabric().name().equals(drawing.fabric()))
                .findFirst();
        return order.orElseThrow(() -> new JobException("%s is a marker for %s; the job cuts from %s."
                .formatted(marker, drawing.fabric(), String.join(", ", names))));
    }
}
