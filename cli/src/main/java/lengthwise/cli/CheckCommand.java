package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lengthwise.check.MarkerCheck;
import lengthwise.check.SharedCheck;
import lengthwise.check.Violation;
import lengthwise.drawing.DrawingException;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobException;
import lengthwise.job.JobReader;
import lengthwise.job.Orders;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.report.RunFiles;
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
            Map<SharedOrder, Map<Path, MarkerDrawing>> shared = new LinkedHashMap<>();
            ExitCode worst = ExitCode.DONE;
            for (Path marker : markers) {
                MarkerDrawing drawing = MarkerSvgReader.read(marker);
                Optional<SharedOrder> several = orders.sharedBy(drawing.fabric());
                if (several.isPresent()) {
                    shared.computeIfAbsent(several.get(), order -> new LinkedHashMap<>())
                            .put(marker, drawing);
                } else {
                    List<Violation> violations = violations(orders, drawing, marker);
                    print(out, marker, drawing, violations);
                    worst = violations.isEmpty() ? worst : ExitCode.CHECK_FAILED;
                }
            }
            for (Map.Entry<SharedOrder, Map<Path, MarkerDrawing>> one : shared.entrySet()) {
                worst = isRight(out, one.getKey(), one.getValue()) ? worst : ExitCode.CHECK_FAILED;
            }
            return worst.number();
        } catch (JobException | DrawingException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
    }

    private static void print(PrintWriter out, Path marker, MarkerDrawing drawing, List<Violation> violations) {
        if (violations.isEmpty()) {
            out.println(String.format(
                    Locale.ROOT,
                    "%s: nothing wrong; %d contours.",
                    marker,
                    drawing.pieces().size()));
        } else {
            out.println(String.format(Locale.ROOT, "%s: do not cut; %d things are wrong.", marker, violations.size()));
            violations.forEach(violation -> out.println("  " + violation.sentence()));
        }
    }

    /** Judges the markers that an order was shared out over, each by itself and all together. */
    private static boolean isRight(PrintWriter out, SharedOrder shared, Map<Path, MarkerDrawing> drawings)
            throws JobException {
        SharedCheck.Findings findings = findings(shared, drawings);
        List<Path> paths = List.copyOf(drawings.keySet());
        for (int i = 0; i < paths.size(); i++) {
            print(
                    out,
                    paths.get(i),
                    Objects.requireNonNull(drawings.get(paths.get(i))),
                    findings.ofEach().get(i));
        }
        if (!findings.together().isEmpty()) {
            out.println(String.format(
                    Locale.ROOT,
                    "All for %s together: do not cut; %d things are wrong. It is cut from %s: name every marker there is for them.",
                    shared.purpose(),
                    findings.together().size(),
                    shared.names().collect(Collectors.joining(", "))));
            findings.together().forEach(violation -> out.println("  " + violation.sentence()));
        }
        return findings.all().isEmpty();
    }

    private static SharedCheck.Findings findings(SharedOrder shared, Map<Path, MarkerDrawing> drawings)
            throws JobException {
        Map<String, Path> byCloth = new HashMap<>();
        List<SharedCheck.Part> parts = new ArrayList<>();
        for (Map.Entry<Path, MarkerDrawing> one : drawings.entrySet()) {
            MarkerDrawing drawing = one.getValue();
            Path other = byCloth.putIfAbsent(drawing.fabric(), one.getKey());
            if (other != null) {
                throw new JobException("%s and %s are both markers for %s, which can be cut once; name one of them."
                        .formatted(other, one.getKey(), drawing.fabric()));
            }
            parts.add(new SharedCheck.Part(drawing.fabric(), drawing.pieces(), drawing.length()));
        }
        return SharedCheck.of(shared, parts, MarkerCheck.OUTSIDE_TOLERANCE);
    }

    /**
     * Returns whether a marker passes its check, before something is made of it; says what is wrong where it does not. Where
     * its order is shared out over several pieces of cloth, the markers of the others are those that lie beside it.
     *
     * @param made what would be done with it, as "printed"
     */
    static boolean isRight(PrintWriter err, Path marker, MarkerDrawing drawing, Path job, String made)
            throws JobException, DrawingException {
        Orders orders = Orders.of(JobReader.read(job));
        Optional<SharedOrder> shared = orders.sharedBy(drawing.fabric());
        List<Violation> violations = shared.isEmpty()
                ? violations(orders, drawing, marker)
                : findings(shared.get(), withThoseBeside(shared.get(), drawing, marker))
                        .all();
        if (!violations.isEmpty()) {
            err.println("lengthwise: %s: do not cut, and so not %s; %s things are wrong."
                    .formatted(marker, made, violations.size()));
            violations.forEach(violation -> err.println("  " + violation.sentence()));
        }
        return violations.isEmpty();
    }

    private static Map<Path, MarkerDrawing> withThoseBeside(SharedOrder shared, MarkerDrawing drawing, Path marker)
            throws DrawingException {
        Map<Path, MarkerDrawing> drawings = new LinkedHashMap<>(Map.of(marker, drawing));
        for (String cloth : shared.names().toList()) {
            Path beside = marker.resolveSibling(RunFiles.markerName(cloth));
            if (!cloth.equals(drawing.fabric()) && Files.exists(beside)) {
                drawings.put(beside, MarkerSvgReader.read(beside));
            }
        }
        return drawings;
    }

    /** Returns what is wrong with a marker that was read back, of an order that is not shared out. */
    private static List<Violation> violations(Orders orders, MarkerDrawing drawing, Path marker) throws JobException {
        return MarkerCheck.violations(
                order(orders, drawing, marker), drawing.pieces(), drawing.length(), MarkerCheck.OUTSIDE_TOLERANCE);
    }

    private static MarkerOrder order(Orders orders, MarkerDrawing drawing, Path marker) throws JobException {
        List<String> names = orders.fabrics().stream()
                .map(fabric -> fabric.order().fabric().name())
                .toList();
        Optional<MarkerOrder> order = orders.fabrics().stream()
                .map(FabricOrder::order)
                .filter(one -> one.fabric().name().equals(drawing.fabric()))
                .findFirst();
        return order.orElseThrow(() -> new JobException("%s is a marker for %s; the job cuts from %s."
                .formatted(marker, drawing.fabric(), String.join(", ", names))));
    }
}
