package lengthwise.benchmarks;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;
import lengthwise.solver.SearchResult;
import lengthwise.solver.StripSearch;

/** Runs orders of growing size and tells how time and memory grow with them. */
final class ScaleRun {
    private final Options options;
    private final PrintStream out;
    private final OperatingSystemMXBean machine = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    ScaleRun(Options options, PrintStream out) {
        this.options = options;
        this.out = out;
    }

    /**
     * Prints a line of CSV for each order as it ends, then the table, by size.
     *
     * <p>With a file to save to, each line is appended to it at once, what stands there already is not run again, and a
     * plot is put beside it.
     *
     * @return whether every result was legal
     */
    boolean run() throws IOException {
        Optional<RunFile> file = options.runFile("scale", ScaleRow.HEADER);
        List<ScaleRow> saved = file.isPresent() ? ScaleRow.read(file.get().path()) : List.of();
        List<ScaleRow> rows = new ArrayList<>();
        out.println(ScaleRow.HEADER);
        for (String name : options.names()) {
            Instance instance = Instances.named(name, options.instances()).times(options.copies());
            Optional<ScaleRow> before = find(saved, instance.name(), options.firstSeed());
            ScaleRow row = before.isPresent() ? before.get() : run(instance);
            out.println(row.csv());
            if (file.isPresent() && before.isEmpty()) {
                file.get().append(row.csv());
            }
            rows.add(row);
        }
        rows.sort(Comparator.comparingInt(ScaleRow::pieces));
        out.println();
        out.print(ScaleRow.table(rows));
        if (file.isPresent()) {
            plot(file.get().path(), rows);
        }
        return rows.stream().allMatch(ScaleRow::legal);
    }

    private static Optional<ScaleRow> find(List<ScaleRow> rows, String order, long seed) {
        return rows.stream()
                .filter(row -> row.order().equals(order) && row.seed() == seed)
                .findFirst();
    }

    private static void plot(Path file, List<ScaleRow> rows) throws IOException {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        Files.writeString(
                file.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".svg"), new ScalePlot(rows).svg());
    }

    private ScaleRow run(Instance instance) {
        LayoutTask task = instance.task();
        AtomicLong first = new AtomicLong(-1);
        AtomicLong processorAtFirst = new AtomicLong();
        HeapWatch heap = new HeapWatch();
        Search search = Search.of(options.stop(), options.firstSeed(), options.workers())
                .watchedBy(event -> {
                    heap.look();
                    if (event instanceof SearchEvent.Improved improved
                            && first.compareAndSet(
                                    -1, improved.progress().elapsed().toNanos())) {
                        processorAtFirst.set(machine.getProcessCpuTime());
                    }
                });
        SearchResult result = StripSearch.solve(task, search);
        heap.look();
        int shapes =
                (int) task.demands().stream().map(Demand::outline).distinct().count();
        if (!(result instanceof SearchResult.Solved solved)) {
            throw new IllegalArgumentException("Not all pieces of " + instance.name() + " fit the strip.");
        }
        long moves = solved.progress().moves();
        long length = solved.layout().length();
        return new ScaleRow(
                instance.name(),
                options.firstSeed(),
                task.demands().size(),
                shapes,
                first.get() / 1e9,
                (machine.getProcessCpuTime() - processorAtFirst.get()) / 1e3 / Math.max(1, moves),
                moves,
                heap.afterCollection(),
                heap.used(),
                instance.units(length),
                instance.density(length),
                Judge.isLegal(task, solved.layout()));
    }
}
