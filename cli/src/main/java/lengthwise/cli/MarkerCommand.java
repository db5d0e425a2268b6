package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.BiConsumer;
import lengthwise.Allotment;
import lengthwise.FabricRun;
import lengthwise.Filling;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.Recut;
import lengthwise.Run;
import lengthwise.check.Violation;
import lengthwise.drawing.ScaleStatement;
import lengthwise.job.BareJob;
import lengthwise.job.Customers;
import lengthwise.job.FabricOrder;
import lengthwise.job.FilledJob;
import lengthwise.job.Job;
import lengthwise.job.JobException;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFile;
import lengthwise.job.JobReader;
import lengthwise.job.JobSewing;
import lengthwise.job.JobWriter;
import lengthwise.job.LengthText;
import lengthwise.job.Orders;
import lengthwise.job.PatternFile;
import lengthwise.job.ReducedJob;
import lengthwise.job.Remnants;
import lengthwise.job.Shopping;
import lengthwise.model.Direction;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.plan.Purchase;
import lengthwise.report.RecutWords;
import lengthwise.report.ReportTable;
import lengthwise.report.RunFiles;
import lengthwise.report.ShortOfCloth;
import lengthwise.report.WholeFile;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.stash.StashException;
import lengthwise.workshop.MadeToMeasure;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the markers of a job, with the report and the placement sheets. */
@Command(
        name = MarkerCommand.NAME,
        mixinStandardHelpOptions = true,
        description = {
            "Lays out a job: one marker for each fabric, a report, a placement sheet.",
            "JOB is a job file (.yaml), or one or more drawings together with --width."
        })
final class MarkerCommand implements Callable<Integer> {
    static final String NAME = "marker";

    private static final String WHAT_FITS_NEEDS =
            "--what-fits goes with a job file that says how much there is of a fabric (length or outline), and that none for the same is bought.";

    /** Of the time for all, one look whether a cloth of the stash is large enough may take this part. */
    private static final double TRYING = 0.1;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "JOB", description = "a job file, or drawings (.svg, .svgz, .dxf, .pdf)")
    private List<Path> inputs;

    @Option(names = "--out", paramLabel = "FOLDER", description = "where the results go (default: ${DEFAULT-VALUE})")
    private Path out = Path.of("markers");

    @Mixin
    private SearchOptions searching;

    @Option(
            names = "--what-fits",
            description = "where a job's cloth on hand is not enough: make as many garments as it gives, by priority")
    private boolean whatFits;

    @Mixin
    private StashOption stash;

    @Option(
            names = "--keep-leftovers",
            description =
                    "puts the usable rectangles that the markers leave into the stash, whatever the cloth came from")
    private boolean keepLeftovers;

    @Option(
            names = "--width",
            paramLabel = "LENGTH",
            description = "for drawings: width of the cloth, as \"150 cm\" or \"58 in\"")
    private @Nullable String width;

    @Option(
            names = "--drawing-unit",
            paramLabel = "LENGTH",
            description = "for drawings: what one of their units measures, as \"1 mm\" or \"1 in\"")
    private @Nullable String drawingUnit;

    @Option(
            names = "--direction",
            paramLabel = "WAY",
            description = "for drawings: either-way, one-way or one-way-per-garment")
    private @Nullable String direction;

    @Option(
            names = "--size",
            paramLabel = "SIZE",
            split = ",",
            description = "for drawings: sizes to make (default: all drawn)")
    private List<String> sizes = List.of();

    @Option(
            names = "--make",
            paramLabel = "N",
            description = "for drawings: garments of each size (default: ${DEFAULT-VALUE})")
    private int make = 1;

    @Mixin
    private TileOptions tiles;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    MarkerCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        try {
            if (isJobFile()) {
                JobFile said = JobReader.read(inputs.get(0));
                refuseReplacing(said);
                try (FromStash cloth = FromStash.of(said, stash.file(), keepLeftovers, this::fits, err)) {
                    return fromStash(cloth, err).number();
                }
            }
            Job job = bareJob();
            return lay(job, Orders.of(job, out.toAbsolutePath()), Map.of(), searching.seconds, Optional.empty(), err)
                    .number();
        } catch (JobException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        } catch (StashException bad) {
            err.println("lengthwise: " + bad.getMessage() + ".");
            return ExitCode.BAD_INPUT.number();
        }
    }

    private ExitCode fromStash(FromStash cloth, PrintWriter err) throws IOException, JobException, StashException {
        JobFile file = cloth.file();
        Orders orders = Orders.of(file);
        return whatFits
                ? layWhatFits(file, orders, cloth, err)
                : lay(file.job(), orders, Map.of(), searching.seconds, Optional.of(cloth), err);
    }

    /** A part of the time that a marker gets is enough to see whether it finds room. */
    private boolean fits(MarkerOrder order) {
        StopRule stop = searching.iterations != null
                ? StopRule.iterations(Math.max(1, searching.iterations / 5))
                : StopRule.elapsed(Duration.ofMillis((long)
                        (1000 * TRYING * (searching.seconds == null ? Budget.enough(order) : searching.seconds))));
        return MarkerMaking.fitting(order, Search.of(stop, searching.seed, searching.workers))
                .isPresent();
    }

    private void refuseWrongUse() {
        searching.refuseWrongUse();
        if (make < 1 || make > 1000) {
            throw wrong("--make takes 1 to 1000 garments, not " + make + ".");
        }
        if (isJobFile()
                && (width != null || direction != null || !sizes.isEmpty() || drawingUnit != null || tiles.areSaid())) {
            throw wrong(
                    "--width, --direction, --size, --drawing-unit and --tiles go with drawings; a job file says them itself.");
        }
        if (!isJobFile() && whatFits) {
            throw wrong(WHAT_FITS_NEEDS);
        }
        if (!isJobFile() && width == null) {
            throw wrong("A drawing alone does not say how wide the cloth is: add --width \"150 cm\".");
        }
        if (isJobFile() && inputs.size() > 1) {
            throw wrong("One job file at a time, please.");
        }
        if (Files.exists(out) && !Files.isDirectory(out)) {
            throw wrong("--out " + out + " is a file; name a folder.");
        }
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }

    private boolean isJobFile() {
        String name = inputs.get(0).toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".yaml") || name.endsWith(".yml");
    }

    private Job bareJob() throws JobException {
        Length clothWidth;
        try {
            clothWidth = LengthText.parse(String.valueOf(width));
        } catch (JobException notALength) {
            throw wrong("--width: " + notALength.getMessage());
        }
        return BareJob.of(
                inputs,
                out.toAbsolutePath(),
                new BareJob.Wishes(clothWidth, direction(), sizes, make, scale(), tiles.grid()));
    }

    private ScaleStatement scale() {
        try {
            return drawingUnit == null ? ScaleStatement.NONE : PatternFile.scale(drawingUnit);
        } catch (JobException notALength) {
            throw wrong("--drawing-unit: " + notALength.getMessage() + ".");
        }
    }

    private Optional<Direction> direction() {
        if (direction == null) {
            return Optional.empty();
        }
        return Optional.of(
                switch (direction) {
                    case "either-way" -> Direction.EITHER_WAY;
                    case "one-way" -> Direction.ONE_WAY;
                    case "one-way-per-garment" -> Direction.ONE_WAY_PER_GARMENT;
                    default ->
                        throw wrong(
                                "--direction takes either-way, one-way or one-way-per-garment, not " + direction + ".");
                });
    }

    /** Lays as many of a job's garments as there is cloth for, and writes the job that comes to beside the markers. */
    private ExitCode layWhatFits(JobFile file, Orders orders, FromStash cloth, PrintWriter err)
            throws IOException, JobException, StashException {
        if (!ReducedJob.isLimited(orders)) {
            throw wrong(WHAT_FITS_NEEDS);
        }
        if (file.job().fabrics().stream().anyMatch(fabric -> fabric.cutAlready().isPresent())) {
            throw wrong("--what-fits chooses garments, and already-cut goes on with those that are chosen: one or the"
                    + " other.");
        }
        ReducedJob reduced;
        Double left;
        try (Interrupt interrupt = Interrupt.listen()) {
            Budget budget = new Budget(orders, searching.seconds, searching.iterations, InstantSource.system());
            Set<String> fit = new HashSet<>();
            reduced = ReducedJob.of(
                    file.job(),
                    orders,
                    (order, share) -> look(order, share, budget, fit, interrupt),
                    (shared, share) -> look(shared, share, budget, fit, interrupt));
            left = searching.seconds == null ? null : budget.secondsLeft();
            if (interrupt.isRequested()) {
                return ExitCode.INTERRUPTED;
            }
        }
        if (reduced.words().isEmpty()) {
            return lay(file.job(), orders, reduced.markers(), left, Optional.of(cloth), err);
        }
        if (reduced.job().isEmpty()) {
            err.println("lengthwise: " + String.join(" ", reduced.words()));
            return ExitCode.NO_MARKER;
        }
        Job job = reduced.job().get();
        Orders fewer = Orders.of(job, file.folder());
        List<String> words = new ArrayList<>(reduced.words());
        words.addAll(fewer.warnings());
        ExitCode ended = lay(job, fewer.withWarnings(words), reduced.markers(), left, Optional.of(cloth), err);
        if (ended == ExitCode.DONE || ended == ExitCode.INTERRUPTED) {
            WholeFile.write(
                    out.resolve("made.yaml"), JobWriter.text(job.seenFrom(out, file.folder()), reduced.words()));
        }
        return ended;
    }

    /** Where time is over and a number that fits is known, more are taken not to fit. */
    private Optional<Marker> look(
            MarkerOrder order, double share, Budget budget, Set<String> fit, Interrupt interrupt) {
        String fabric = order.fabric().name();
        if (budget.isChoosingOver() && fit.contains(fabric)) {
            return Optional.empty();
        }
        Optional<Marker> marker = MarkerMaking.fitting(
                order, budget.attempt(share, searching.seed, searching.workers, interrupt::isRequested));
        marker.ifPresent(found -> fit.add(fabric));
        return marker;
    }

    private Optional<List<Marker>> look(
            SharedOrder shared, double share, Budget budget, Set<String> fit, Interrupt interrupt) {
        if (budget.isChoosingOver() && fit.contains(shared.purpose())) {
            return Optional.empty();
        }
        Optional<List<Marker>> markers = Allotment.of(
                        shared, budget.attemptToShare(share, searching.seed, interrupt::isRequested))
                .markers();
        markers.ifPresent(found -> fit.add(shared.purpose()));
        return markers;
    }

    /** The results must not take the place of the marker that says what is cut. */
    private void refuseReplacing(JobFile file) {
        for (JobFabric fabric : file.job().fabrics()) {
            boolean inTheWay = fabric.cutAlready()
                    .map(cut ->
                            file.folder().resolve(cut.marker()).toAbsolutePath().normalize())
                    .filter(marker -> out.toAbsolutePath().normalize().equals(marker.getParent()))
                    .isPresent();
            if (inTheWay) {
                throw wrong(
                        "The marker that %s is cut from lies in %s, where this run writes its own: name another folder"
                                        .formatted(fabric.name(), out)
                                + " with --out.");
            }
        }
    }

    /**
     * Lays out a job and writes the results.
     *
     * @param known markers to begin with, by the names of their fabrics
     * @param time in seconds, where it is limited
     * @param cloth that comes from the stash and goes there
     */
    private ExitCode lay(
            Job job,
            Orders orders,
            Map<String, Marker> known,
            @Nullable Double time,
            Optional<FromStash> cloth,
            PrintWriter err)
            throws IOException, JobException, StashException {
        List<MadeToMeasure> customers = Customers.of(job);
        // What is wrong with the shopping list shows before the search.
        Shopping.of(job, orders.edges(), List.of(), Version.number());
        List<String> warnings = new ArrayList<>(searching.warnings(orders.warnings()));
        warnings.forEach(warning -> err.println("warning: " + warning));
        try (Interrupt interrupt = Interrupt.listen()) {
            Allotted allotted = Allotted.of(orders, known, time, searching, interrupt::isRequested, err);
            if (interrupt.isRequested() && allotted.isShort()) {
                return ExitCode.INTERRUPTED;
            }
            List<FabricRun> runs = new ArrayList<>();
            Budget budget =
                    new Budget(allotted.orders(), allotted.seconds(), searching.iterations, InstantSource.system());
            for (FabricOrder given : allotted.orders().fabrics()) {
                FabricOrder fabric = Allotted.withFillersLeft(given, runs);
                if (!fabric.order().cutAlready().spoilt().isEmpty()) {
                    Search waste = budget.oneByOne(fabric.order(), searching.seed, searching.workers)
                            .cancelledBy(interrupt::isRequested);
                    List<String> words = RecutWords.of(Recut.of(fabric.order(), waste));
                    words.forEach(word -> err.println("warning: " + word));
                    warnings.addAll(words);
                }
                ProgressLine line = new ProgressLine(
                        err, ProgressLine.onTerminal(), fabric.order().fabric().name(), InstantSource.system());
                line.start();
                Search search = budget.next(fabric.order(), searching.seed, searching.workers)
                        .cancelledBy(interrupt::isRequested);
                Marker begun = allotted.begun().get(fabric.order().fabric().name());
                Search watched = search.watchedBy(event -> line.event(event, search));
                BiConsumer<Marker, Progress> watcher =
                        (marker, progress) -> line.better(marker.length(), marker.efficiency());
                MarkerAnswer answer = begun == null
                        ? MarkerMaking.make(fabric.order(), watched, watcher)
                        : MarkerMaking.make(fabric.order(), begun, watched, watcher);
                line.done(answer instanceof MarkerAnswer.Made && !interrupt.isRequested());
                if (answer instanceof MarkerAnswer.Impossible impossible) {
                    err.println("lengthwise: " + impossible.reason());
                    return ExitCode.NO_MARKER;
                }
                if (answer instanceof MarkerAnswer.TooLong tooLong) {
                    err.print(ShortOfCloth.words(tooLong, allotted.beside(fabric.order())));
                    err.flush();
                    return ExitCode.NO_MARKER;
                }
                if (answer instanceof MarkerAnswer.Rejected rejected) {
                    return rejected("the marker for " + fabric.order().fabric().name(), rejected.violations(), err);
                }
                MarkerAnswer.Made made = (MarkerAnswer.Made) answer;
                Filling filling = fabric.order().fillers().isEmpty()
                        ? new Filling(made.marker(), List.of())
                        : Filling.of(
                                made.marker(),
                                budget.oneByOne(fabric.order(), searching.seed, searching.workers)
                                        .cancelledBy(interrupt::isRequested));
                Costs costs = new Costs(budget, searching.seed, searching.workers, interrupt::isRequested);
                if (Costs.areAsked(fabric) && !interrupt.isRequested()) {
                    line.after("now what its rules cost, by shorter searches");
                }
                runs.add(run(costs.withOtherChoice(fabric, made), made, filling, costs.of(fabric, made)));
            }
            List<Violation> together = allotted.violations(runs);
            if (!together.isEmpty()) {
                return rejected("what the markers hold together", together, err);
            }
            boolean reproducible =
                    searching.seconds == null && searching.iterations != null && !interrupt.isRequested();
            Run laid = new Run(
                    job.title(),
                    Version.number(),
                    searching.seed,
                    searching.workers,
                    reproducible,
                    runs,
                    warnings,
                    customers,
                    job.sewing().equals(JobSewing.UNSAID)
                            ? Optional.empty()
                            : Optional.of(Shopping.of(
                                    job,
                                    orders.edges(),
                                    runs.stream()
                                            .map(one -> new Shopping.Cloth(
                                                    one.marker().order().fabric(), one.purchase()))
                                            .toList(),
                                    Version.number())),
                    List.of(),
                    allotted.shared(runs, budget, searching, interrupt::isRequested));
            Run run = cloth.isPresent() ? laid.drawing(cloth.get().drawn(laid, job)) : laid;
            if (cloth.isPresent()) {
                cloth.get().writesTo(out);
            }
            RunFiles.write(run, out);
            WholeFile.write(out.resolve("leftovers.yaml"), Remnants.text(job, run));
            Optional<String> asLaid = cloth.flatMap(from -> from.asLaid(job, out));
            if (asLaid.isPresent()) {
                WholeFile.write(out.resolve("as-laid.yaml"), asLaid.get());
            }
            if (!isJobFile()) {
                keepOrWrite(out.resolve("job.yaml"), FilledJob.text(job, orders), err);
            }
            if (cloth.isPresent()) {
                cloth.get().spend(run, job, out, err);
            }
            RunFiles.leftFromBefore(run, out).forEach(warning -> err.println("warning: " + warning));
            spec.commandLine().getOut().print(ReportTable.of(run));
            spec.commandLine().getOut().flush();
            err.println("Written to " + out + ": see report.html.");
            return interrupt.isRequested() ? ExitCode.INTERRUPTED : ExitCode.DONE;
        }
    }

    private static ExitCode rejected(String what, List<Violation> violations, PrintWriter err) {
        err.println("lengthwise: %s did not pass the check, a fault of ours; nothing is written.".formatted(what));
        violations.stream().map(Violation::sentence).forEach(err::println);
        return ExitCode.CHECK_FAILED;
    }

    /** The filled job file is the maker's to edit: one that is there already is never written over. */
    private static void keepOrWrite(Path file, String text, PrintWriter err) throws IOException {
        if (Files.exists(file)) {
            err.println(file + " is there already and is left as it is.");
        } else {
            WholeFile.write(file, text);
        }
    }

    private static FabricRun run(FabricOrder fabric, MarkerAnswer.Made made, Filling filling, List<String> costs) {
        return new FabricRun(
                filling.marker(),
                made.lowerBound(),
                Purchase.of(made.marker().length(), fabric.order().fabric()),
                fabric.assumptions(),
                made.surplus(),
                costs,
                filling.kinds(),
                made.progress(),
                made.reason());
    }
}
