package lengthwise.cli;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import lengthwise.job.FabricOrder;
import lengthwise.job.Job;
import lengthwise.job.JobBuying;
import lengthwise.job.JobException;
import lengthwise.job.JobFabric;
import lengthwise.job.JobFile;
import lengthwise.job.JobVariant;
import lengthwise.job.OfferedWidths;
import lengthwise.job.OrderLine;
import lengthwise.job.Orders;
import lengthwise.job.WiderFabric;
import lengthwise.model.Direction;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Size;
import lengthwise.report.Chart;
import lengthwise.report.Chart.Cell;
import lengthwise.report.ChartFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the table that stands on the back of a pattern: how much cloth each size takes. */
@Command(
        name = ChartCommand.NAME,
        mixinStandardHelpOptions = true,
        description = {
            "Makes the table for the back of a pattern: cloth for each size alone and for the whole order, by width and",
            "direction. Finished cells are kept in the folder: when it is ended, the same command goes on from there."
        })
final class ChartCommand implements Callable<Integer> {
    static final String NAME = "chart";

    /** A cell gets no more than this where no time is said. */
    private static final double LONGEST_CELL_SECONDS = 60;

    private static final int MOST_CELLS = 5_000;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB", description = "a job file (.yaml)")
    private Path input;

    @Option(names = "--widths", paramLabel = "WIDTHS", description = "as for estimate: \"115 cm, 150 cm\"")
    private @Nullable String widths;

    @Option(
            names = "--directions",
            paramLabel = "WAY",
            split = ",",
            description =
                    "either-way, one-way, one-way-per-garment, with commas between (default: either-way and one-way, as far as the fabric goes with it)")
    private List<String> directions = List.of();

    @Option(
            names = "--sizes",
            paramLabel = "SIZE",
            split = ",",
            description = "sizes of the order to look at (default: all of it)")
    private List<String> sizes = List.of();

    @Option(names = "--out", paramLabel = "FOLDER", description = "where the results go (default: ${DEFAULT-VALUE})")
    private Path out = Path.of("chart");

    @Mixin
    private SearchOptions searching;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    ChartCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        refuseWrongUse();
        return JobAnswer.to(input, err, file -> chart(file, err));
    }

    private void refuseWrongUse() {
        searching.refuseWrongUse();
        JobAnswer.refuseWrongFiles("A chart", input, out, searching);
    }

    /**
     * What a row lays.
     *
     * @param garments their numbers in the order
     */
    private record Row(String words, List<Integer> garments) {}

    /** What is asked of one fabric. */
    private record Sheet(JobFabric fabric, List<JobBuying.Offer> offers, List<Direction> directions) {}

    /** A task by what is laid: its weight says how much time it deserves. */
    private record Wish(String job, String fabric, Row row, double weight) {}

    private ExitCode chart(JobFile file, PrintWriter err)
            throws JobException, IOException, Estimating.RejectedException {
        Job job = file.job();
        Orders orders = Orders.of(file);
        orders.refuseShared("A chart");
        searching.warnings(orders.warnings()).forEach(warning -> err.println("warning: " + warning));
        List<Row> rows = rows(job);
        List<Sheet> sheets = sheets(job, orders, err);
        if (sheets.isEmpty()) {
            err.println("lengthwise: there is nothing to buy, so there is nothing to chart.");
            return ExitCode.BAD_INPUT;
        }
        List<ChartTask> tasks = tasks(wishes(job, orders, sheets, rows), drawings(file));
        if (tasks.size() > MOST_CELLS) {
            throw new JobException("that is %d cells; at most %d are worked out, name fewer widths or sizes"
                    .formatted(tasks.size(), MOST_CELLS));
        }
        ChartStore store = new ChartStore(out.resolve("cells"));
        Map<String, Cell> cells = new HashMap<>();
        List<ChartTask> left = known(tasks, store, cells, err);
        try (Interrupt interrupt = Interrupt.listen()) {
            ChartPace pace = new ChartPace(
                    left.size(),
                    searching.workers,
                    left.stream().mapToDouble(ChartTask::seconds).sum(),
                    InstantSource.system());
            new LocalPool(searching.workers)
                    .run(
                            left,
                            (task, cell) -> {
                                store.keep(task, cell);
                                cells.put(task.key(), cell);
                                pace.finished(task.seconds()).ifPresent(err::println);
                            },
                            interrupt::isRequested);
            if (interrupt.isRequested() && cells.size() < tasks.size()) {
                err.println("%d of %d cells are finished and kept in %s; the same command goes on from there."
                        .formatted(cells.size(), tasks.size(), store.folder()));
                return ExitCode.INTERRUPTED;
            }
            Chart chart = new Chart(job.title(), Version.number(), cloths(job, sheets, rows, tasks, cells));
            ChartFiles.write(chart, out);
            store.tidy(keys(tasks));
            spec.commandLine().getOut().print(ChartFiles.text(chart));
            spec.commandLine().getOut().flush();
            err.println("Written to " + out + ": see chart.html.");
            return cells.values().stream().anyMatch(Cell::isLaid) ? ExitCode.DONE : ExitCode.NO_MARKER;
        }
    }

    private static Set<String> keys(List<ChartTask> tasks) {
        Set<String> keys = new HashSet<>();
        tasks.forEach(task -> keys.add(task.key()));
        return keys;
    }

    /** Fills in the cells that are there already, and returns the tasks that are left. */
    private static List<ChartTask> known(
            List<ChartTask> tasks, ChartStore store, Map<String, Cell> cells, PrintWriter err) throws IOException {
        List<ChartTask> left = new ArrayList<>();
        for (ChartTask task : tasks) {
            Optional<Cell> cell = store.find(task);
            if (cell.isPresent()) {
                cells.put(task.key(), cell.get());
            } else {
                left.add(task);
            }
        }
        if (!cells.isEmpty()) {
            err.println("%d of %d cells are there already, for this very job, and are not computed again."
                    .formatted(cells.size(), tasks.size()));
        }
        long others = store.others(keys(tasks));
        if (others > 0) {
            err.println("%d cells in %s are of another job or of this one before it was changed: they are not used."
                    .formatted(others, store.folder()));
        }
        return left;
    }

    /** Garments are numbered from 1 through the lines of the order. */
    private List<Row> rows(Job job) throws JobException {
        Map<String, Integer> firstOf = new LinkedHashMap<>();
        int number = 1;
        for (OrderLine line : job.order()) {
            firstOf.putIfAbsent(line.size().name(), number);
            number += line.make();
        }
        for (String size : sizes) {
            if (!firstOf.containsKey(size)) {
                throw new JobException(
                        "--sizes: %s is not in the order: write - {size: %s, make: 1} under order; it has %s."
                                .formatted(size, size, String.join(", ", firstOf.keySet())));
            }
        }
        List<Row> rows = new ArrayList<>();
        firstOf.forEach((size, garment) -> {
            if (sizes.isEmpty() || sizes.contains(size)) {
                rows.add(new Row(size.equals(Size.ONE.name()) ? "one garment" : size, List.of(garment)));
            }
        });
        int all = number - 1;
        if (sizes.isEmpty() && all > 1) {
            rows.add(new Row(
                    "order of " + all, IntStream.rangeClosed(1, all).boxed().toList()));
        }
        return rows;
    }

    private List<Sheet> sheets(Job job, Orders orders, PrintWriter err) throws JobException {
        List<Sheet> sheets = new ArrayList<>();
        for (JobFabric said : job.fabrics()) {
            Optional<MarkerOrder> order = orderOf(orders, said.name());
            if (order.isEmpty()) {
                continue;
            }
            if (said.there().isPresent() || said.cutAlready().isPresent()) {
                err.println(
                        "warning: %s is there already and is not to be bought: it is left out.".formatted(said.name()));
                continue;
            }
            List<JobBuying.Offer> offers =
                    widths == null ? said.offers() : OfferedWidths.parse(widths, job.units(), said);
            sheets.add(new Sheet(said, offers, directions(said, order.get())));
        }
        return sheets;
    }

    private static Optional<MarkerOrder> orderOf(Orders orders, String fabric) {
        return orders.fabrics().stream()
                .map(FabricOrder::order)
                .filter(order -> order.fabric().name().equals(fabric))
                .findFirst();
    }

    /** Returns the directions to lay a fabric in, the freest first. */
    private List<Direction> directions(JobFabric said, MarkerOrder order) throws JobException {
        boolean oneWayAlone = said.pile().isPresent()
                || said.repeat().filter(JobFabric.PrintRepeat::uneven).isPresent();
        if (directions.isEmpty()) {
            boolean upIsKnown = order.bundles().stream()
                    .flatMap(bundle -> bundle.pieces().stream())
                    .allMatch(cut -> cut.piece().strip() || cut.piece().up().isPresent());
            return oneWayAlone || !upIsKnown
                    ? List.of(order.fabric().direction())
                    : List.of(Direction.EITHER_WAY, Direction.ONE_WAY);
        }
        List<Direction> wished = new ArrayList<>();
        for (Direction direction : List.of(Direction.EITHER_WAY, Direction.ONE_WAY_PER_GARMENT, Direction.ONE_WAY)) {
            String word = direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
            if (directions.contains(word)) {
                wished.add(direction);
            }
        }
        for (String word : directions) {
            if (!List.of("either-way", "one-way", "one-way-per-garment").contains(word)) {
                throw new JobException(
                        "--directions takes either-way, one-way and one-way-per-garment, not %s.".formatted(word));
            }
        }
        if (oneWayAlone && !wished.equals(List.of(Direction.ONE_WAY))) {
            throw new JobException("--directions: %s has a pile or an uneven repeat, so it is one-way and nothing else."
                    .formatted(said.name()));
        }
        return wished;
    }

    /** Row by row, then width by width, then direction by direction. */
    private static List<Wish> wishes(Job job, Orders orders, List<Sheet> sheets, List<Row> rows) {
        List<Wish> wishes = new ArrayList<>();
        for (Sheet sheet : sheets) {
            String fabric = sheet.fabric().name();
            MarkerOrder order = orderOf(orders, fabric).orElseThrow();
            for (Row row : rows) {
                double weight = Budget.enough(order.forGarments(new HashSet<>(row.garments())));
                for (JobBuying.Offer offer : sheet.offers()) {
                    for (Direction direction : sheet.directions()) {
                        wishes.add(new Wish(JobVariant.text(job, fabric, offer, direction), fabric, row, weight));
                    }
                }
            }
        }
        return wishes;
    }

    private static Map<String, String> drawings(JobFile file) throws IOException {
        Map<String, String> drawings = new LinkedHashMap<>();
        for (int i = 0; i < file.job().drawings().size(); i++) {
            drawings.put(
                    JobVariant.drawing(i, file.job().drawings().get(i)),
                    ChartTask.encoded(
                            Files.readAllBytes(file.path(file.job().drawings().get(i)))));
        }
        return drawings;
    }

    private List<ChartTask> tasks(List<Wish> wishes, Map<String, String> drawings) {
        double weights = wishes.stream().mapToDouble(Wish::weight).sum();
        return wishes.stream()
                .map(wish -> new ChartTask(
                        Version.number(),
                        wish.job(),
                        drawings,
                        wish.fabric(),
                        wish.row().garments(),
                        seconds(wish.weight(), weights),
                        searching.iterations == null ? 0 : searching.iterations,
                        searching.seed))
                .toList();
    }

    /** Returns the seconds for one cell, in whole milliseconds; 0 where rounds alone count. */
    private double seconds(double weight, double weights) {
        double seconds = searching.seconds != null
                ? Math.max(0.05, searching.seconds * searching.workers * weight / weights)
                : searching.iterations != null ? 0 : Math.min(LONGEST_CELL_SECONDS, weight);
        return Math.round(seconds * 1000) / 1000.0;
    }

    private static List<Chart.Cloth> cloths(
            Job job, List<Sheet> sheets, List<Row> rows, List<ChartTask> tasks, Map<String, Cell> cells) {
        boolean inches = job.units().filter(unit -> !unit.isMetric()).isPresent();
        List<Chart.Cloth> cloths = new ArrayList<>();
        int next = 0;
        for (Sheet sheet : sheets) {
            List<List<List<Cell>>> table = new ArrayList<>();
            for (int row = 0; row < rows.size(); row++) {
                List<List<Cell>> ofRow = new ArrayList<>();
                for (int width = 0; width < sheet.offers().size(); width++) {
                    List<Cell> ofWidth = new ArrayList<>();
                    for (int direction = 0; direction < sheet.directions().size(); direction++) {
                        ofWidth.add(requireNonNull(cells.get(tasks.get(next++).key())));
                    }
                    ofRow.add(ofWidth);
                }
                table.add(ofRow);
            }
            cloths.add(new Chart.Cloth(
                            sheet.fabric().name(),
                            sheet.fabric().role(),
                            inches,
                            sheet.offers().stream().map(JobBuying.Offer::width).toList(),
                            sheet.directions(),
                            rows.stream().map(Row::words).toList(),
                            table)
                    .settled(WiderFabric.of(job, sheet.fabric())));
        }
        return cloths;
    }
}
