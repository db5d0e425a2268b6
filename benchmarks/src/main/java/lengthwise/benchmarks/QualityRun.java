package lengthwise.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;
import lengthwise.solver.SearchResult;
import lengthwise.solver.StripSearch;

/** Runs the product's own search on instances × seeds, judges every result, and tells the figures. */
final class QualityRun {
    private final Options options;
    private final PrintStream out;

    QualityRun(Options options, PrintStream out) {
        this.options = options;
        this.out = out;
    }

    /**
     * Prints a line of CSV for each run as it ends, then the table beside the published figures.
     *
     * <p>With a file to save to, each line is appended to it at once, and what stands there already is not run again.
     *
     * @return whether every result was legal
     */
    boolean run() throws IOException {
        Optional<RunFile> file = options.runFile("quality", Row.HEADER);
        List<Row> saved = file.isPresent() ? Row.read(file.get().path()) : List.of();
        out.println(Row.HEADER);
        List<Row> rows = new ArrayList<>();
        for (String name : options.names()) {
            Instance instance = Instances.named(name, options.instances()).times(options.copies());
            for (long seed = options.firstSeed(); seed <= options.lastSeed(); seed++) {
                Optional<Row> before = find(saved, instance.name(), seed);
                Row row = before.isPresent() ? before.get() : run(instance, seed);
                out.println(row.csv());
                if (file.isPresent() && before.isEmpty()) {
                    file.get().append(row.csv());
                }
                rows.add(row);
            }
        }
        out.println();
        out.print(Table.beside(rows));
        return rows.stream().allMatch(Row::legal);
    }

    private Row run(Instance instance, long seed) {
        AtomicReference<Duration> first = new AtomicReference<>();
        Search search = Search.of(options.stop(), seed, options.workers()).watchedBy(event -> {
            if (event instanceof SearchEvent.Improved improved) {
                first.compareAndSet(null, improved.progress().elapsed());
            }
        });
        Instant start = Instant.now();
        SearchResult result = StripSearch.solve(instance.task(), search);
        double seconds = seconds(Duration.between(start, Instant.now()));
        double firstSeconds = first.get() == null ? Double.NaN : seconds(first.get());
        if (result instanceof SearchResult.Solved solved) {
            long length = solved.layout().length();
            return new Row(
                    instance.name(),
                    seed,
                    seconds,
                    options.workers(),
                    instance.units(length),
                    instance.density(length),
                    Judge.isLegal(instance.task(), solved.layout()),
                    firstSeconds,
                    solved.progress().iteration());
        }
        return new Row(instance.name(), seed, seconds, options.workers(), Double.NaN, 0, false, firstSeconds, 0);
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    private static Optional<Row> find(List<Row> rows, String instance, long seed) {
        return rows.stream()
                .filter(row -> row.instance().equals(instance) && row.seed() == seed)
                .findFirst();
    }
}
