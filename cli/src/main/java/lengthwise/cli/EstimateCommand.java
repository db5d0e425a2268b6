package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lengthwise.Estimate;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.job.FabricOrder;
import lengthwise.job.Job;
import lengthwise.job.JobBuying;
import lengthwise.job.JobException;
import lengthwise.job.JobFabric;
import lengthwise.job.OfferedWidths;
import lengthwise.job.OrderLine;
import lengthwise.job.Orders;
import lengthwise.job.Shopping;
import lengthwise.job.WiderFabric;
import lengthwise.model.LengthWords;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Size;
import lengthwise.report.EstimateFiles;
import lengthwise.report.EstimateTable;
import lengthwise.solver.Search;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Says how much of each fabric of a job to buy, in the widths that it is on offer in. */
@Command(
        name = EstimateCommand.NAME,
        mixinStandardHelpOptions = true,
        description = {
            "Says how much of each fabric to buy, in every width on offer, what it costs, and which width costs least.",
            "The widths are those of the job (widths:) or of --widths; with neither, the fabric's own."
        })
final class EstimateCommand implements Callable<Integer> {
    static final String NAME = "estimate";

    private static final double QUICK_SECONDS_A_WIDTH = 0.5;
    private static final double LEAST_QUICK_SECONDS = 2;
    private static final double MOST_QUICK_SECONDS = 8;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "a job file (.yaml)")
    private Path input;

    @Option(
            names = "--widths",
            paramLabel = "WIDTHS",
            description =
                    "in place of the job's: \"120 cm, 150 cm\", or \"110 cm to 160 cm by 10 cm\"; for every fabric that is bought")
    private @Nullable String widths;

    @Option(
            names = "--quick",
            description = "a few seconds in all; says by how much a longer search could shorten the markers at most")
    private boolean quick;

    @Option(names = "--json", description = "write estimate.json to stdout in place of the table")
    private boolean json;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            description = "write estimate.html, estimate.csv and estimate.json there (default: no files)")
    private @Nullable Path out;

    @Mixin
    private SearchOptions searching;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    EstimateCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        return JobAnswer.to(input, err, file -> estimate(file.job(), Orders.of(file), err));
    }

    private void refuseWrongUse() {
        searching.refuseWrongUse();
        JobAnswer.refuseWrongFiles("An estimate", input, out, searching);
        if (quick && (searching.seconds != null || searching.iterations != null)) {
            throw searching.wrong("--quick says how long; leave --seconds and --iterations out, or --quick.");
        }
    }

    /** One fabric that is bought, and what is asked of it. */
    private record Question(FabricOrder fabric, List<Estimating.Asked> widths, WiderFabric wider) {
        List<MarkerOrder> orders() {
            return widths.stream().flatMap(asked -> asked.order().stream()).toList();
        }
    }

    private ExitCode estimate(Job job, Orders orders, PrintWriter err)
            throws JobException, IOException, Estimating.RejectedException {
        orders.refuseShared("An estimate");
        List<String> warnings = new ArrayList<>(searching.warnings(orders.warnings()));
        warnings.addAll(Shopping.leftOut(job));
        List<Question> questions = questions(job, orders, warnings);
        if (questions.isEmpty()) {
            err.println("lengthwise: there is nothing to buy: " + String.join(" ", warnings));
            return ExitCode.BAD_INPUT;
        }
        warnings.forEach(warning -> err.println("warning: " + warning));
        try (Interrupt interrupt = Interrupt.listen()) {
            List<MarkerOrder> all = questions.stream()
                    .flatMap(question -> question.orders().stream())
                    .toList();
            Budget budget = Budget.forEach(all, seconds(all.size()), searching.iterations, InstantSource.system());
            List<Estimate.Cloth> fabrics = new ArrayList<>();
            for (Question question : questions) {
                fabrics.add(new Estimate.Cloth(
                        question.fabric().order().fabric().name(),
                        question.fabric().order().fabric().role(),
                        Estimating.widths(
                                question.widths(), question.wider(), order -> make(order, budget, interrupt, err))));
            }
            Estimate estimate = new Estimate(
                    job.title(),
                    Version.number(),
                    job.units().filter(unit -> !unit.isMetric()).isPresent(),
                    quick,
                    searching.iterations != null && searching.seconds == null && !interrupt.isRequested(),
                    lines(job),
                    fabrics,
                    warnings);
            PrintWriter stdout = spec.commandLine().getOut();
            stdout.print(json ? EstimateFiles.json(estimate) : EstimateTable.of(estimate));
            stdout.flush();
            if (out != null) {
                EstimateFiles.write(estimate, out);
                err.println("Written to " + out + ": see estimate.html.");
            }
            if (fabrics.stream().anyMatch(fabric -> fabric.laid().isEmpty())) {
                return ExitCode.NO_MARKER;
            }
            return interrupt.isRequested() ? ExitCode.INTERRUPTED : ExitCode.DONE;
        }
    }

    private List<Question> questions(Job job, Orders orders, List<String> warnings) throws JobException {
        List<Question> questions = new ArrayList<>();
        for (FabricOrder fabric : orders.fabrics()) {
            JobFabric said = job.fabrics().stream()
                    .filter(each -> each.name().equals(fabric.order().fabric().name()))
                    .findFirst()
                    .orElseThrow();
            if (said.there().isPresent() || said.cutAlready().isPresent()) {
                warnings.add("%s is there already and is not to be bought: it is left out.".formatted(said.name()));
                continue;
            }
            List<JobBuying.Offer> offers =
                    widths == null ? said.offers() : OfferedWidths.parse(widths, job.units(), said);
            if (said.price().isEmpty()
                    && offers.stream().anyMatch(offer -> offer.price().isEmpty())) {
                warnings.add(
                        "%s has no price%s: write price: 14.50 per m under it to see costs, and which width costs least."
                                .formatted(
                                        said.name(),
                                        offers.stream()
                                                        .allMatch(offer ->
                                                                offer.price().isEmpty())
                                                ? ""
                                                : " in every width"));
            }
            List<Estimating.Asked> asked = new ArrayList<>();
            for (JobBuying.Offer offer : offers) {
                asked.add(asked(job, fabric, said, offer));
            }
            questions.add(new Question(fabric, asked, WiderFabric.of(job, said)));
        }
        return questions;
    }

    private static Estimating.Asked asked(Job job, FabricOrder fabric, JobFabric said, JobBuying.Offer offer) {
        try {
            MarkerOrder order = Orders.inWidth(job, fabric, said, offer);
            return Estimating.Asked.of(order.withFillers(List.of()));
        } catch (JobException tooNarrow) {
            return new Estimating.Asked(offer.width(), Optional.empty(), String.valueOf(tooNarrow.getMessage()));
        }
    }

    private @Nullable Double seconds(int searches) {
        return quick
                ? Double.valueOf(
                        Math.max(LEAST_QUICK_SECONDS, Math.min(MOST_QUICK_SECONDS, QUICK_SECONDS_A_WIDTH * searches)))
                : searching.seconds;
    }

    private MarkerAnswer make(MarkerOrder order, Budget budget, Interrupt interrupt, PrintWriter err) {
        ProgressLine line = new ProgressLine(
                err,
                ProgressLine.onTerminal(),
                LengthWords.metric(order.fabric().width()) + " "
                        + order.fabric().name(),
                InstantSource.system());
        line.start();
        Search search = budget.next(order, searching.seed, searching.workers).cancelledBy(interrupt::isRequested);
        MarkerAnswer answer = MarkerMaking.make(
                order,
                search.watchedBy(event -> line.event(event, search)),
                (marker, progress) -> line.better(marker.length(), marker.efficiency()));
        line.done(answer instanceof MarkerAnswer.Made && !interrupt.isRequested());
        return answer;
    }

    /** Garments are numbered from 1 through the lines of the order. */
    private static List<Estimate.OrderedSize> lines(Job job) {
        List<Estimate.OrderedSize> lines = new ArrayList<>();
        int garment = 1;
        for (OrderLine line : job.order()) {
            boolean again = job.order().stream()
                            .filter(other -> other.size().equals(line.size()))
                            .count()
                    > 1;
            lines.add(new Estimate.OrderedSize(words(line, again), line.make(), garment));
            garment += line.make();
        }
        return lines;
    }

    private static String words(OrderLine line, boolean withMeasures) {
        String size = (line.size().equals(Size.ONE) ? "one size" : line.size().name())
                + line.customer().map(", "::concat).orElse("");
        return withMeasures && !line.measures().isEmpty()
                ? line.measures().stream()
                        .map(measure -> measure.name() + " " + LengthWords.both(measure.length()))
                        .collect(Collectors.joining(", ", size + ", ", ""))
                : size;
    }
}
