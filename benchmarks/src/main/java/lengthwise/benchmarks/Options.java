package lengthwise.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import lengthwise.solver.StopRule;

/**
 * What a quality run is asked to do. Without seconds and iterations it runs for 60 s; iterations alone switch the clock
 * off.
 */
record Options(
        Optional<Path> instances,
        OptionalDouble seconds,
        OptionalLong iterations,
        long firstSeed,
        long lastSeed,
        int workers,
        int copies,
        Optional<Path> save,
        List<String> names) {
    static final String USAGE = """
            quality --instances DIR [--seconds S] [--iterations N] [--seeds A..B] [--workers N] [--copies K]
                    [--save FILE] NAME…
              NAME is a file of DIR without .json, or jigsaw:PIECES:SEED or graded:PIECES:SEED, which need no DIR.
            scale [--seconds S] [--iterations N] [--seeds A] [--workers N] [--save FILE] NAME…
            compare A.csv B.csv
            jmh [-prof gc] [NAME…]
            """;

    static Options parse(List<String> arguments) {
        Optional<Path> instances = Optional.empty();
        OptionalDouble seconds = OptionalDouble.empty();
        OptionalLong iterations = OptionalLong.empty();
        long[] seeds = {1, 1};
        int workers = Runtime.getRuntime().availableProcessors();
        int copies = 1;
        Optional<Path> save = Optional.empty();
        List<String> names = new ArrayList<>();
        Iterator<String> rest = arguments.iterator();
        while (rest.hasNext()) {
            String argument = rest.next();
            switch (argument) {
                case "--instances" -> instances = Optional.of(Path.of(value(argument, rest)));
                case "--seconds" -> seconds = OptionalDouble.of(positive(argument, value(argument, rest)));
                case "--iterations" -> iterations = OptionalLong.of((long) positive(argument, value(argument, rest)));
                case "--seeds" -> seeds = seeds(value(argument, rest));
                case "--workers" -> workers = (int) positive(argument, value(argument, rest));
                case "--copies" -> copies = (int) positive(argument, value(argument, rest));
                case "--save" -> save = Optional.of(Path.of(value(argument, rest)));
                default -> {
                    if (argument.startsWith("--")) {
                        throw new IllegalArgumentException("There is no option " + argument + ".\n" + USAGE);
                    }
                    names.add(argument);
                }
            }
        }
        if (names.isEmpty()) {
            throw new IllegalArgumentException("Name the instances to run.\n" + USAGE);
        }
        return new Options(instances, seconds, iterations, seeds[0], seeds[1], workers, copies, save, names);
    }

    StopRule stop() {
        StopRule clock = StopRule.elapsed(Duration.ofMillis(StrictMath.round(1000 * seconds.orElse(60))));
        if (iterations.isEmpty()) {
            return clock;
        }
        StopRule count = StopRule.iterations(iterations.getAsLong());
        return seconds.isPresent() ? count.or(clock) : count;
    }

    /**
     * Returns the file to save the rows of a command to, begun.
     *
     * @throws IllegalArgumentException if runs of other settings stand there
     */
    Optional<RunFile> runFile(String command, String header) throws IOException {
        Optional<RunFile> file = save.map(path -> new RunFile(path, settings(command), header));
        if (file.isPresent()) {
            file.get().begin();
        }
        return file;
    }

    private String settings(String command) {
        String budget = iterations.isEmpty()
                ? " --seconds " + seconds.orElse(60)
                : " --iterations "
                        + iterations.getAsLong()
                        + (seconds.isPresent() ? " --seconds " + seconds.getAsDouble() : "");
        return "# " + command + budget + " --workers " + workers;
    }

    private static String value(String option, Iterator<String> rest) {
        if (!rest.hasNext()) {
            throw new IllegalArgumentException("The option " + option + " needs a value.\n" + USAGE);
        }
        return rest.next();
    }

    private static double positive(String option, String text) {
        try {
            double value = Double.parseDouble(text);
            if (value > 0 && value < 1e9) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below, like a number out of range
        }
        throw new IllegalArgumentException("The option " + option + " needs a number above 0, not " + text + ".");
    }

    private static long[] seeds(String text) {
        String[] ends = text.split("\\.\\.", -1);
        try {
            long first = Long.parseLong(ends[0]);
            long last = ends.length == 1 ? first : Long.parseLong(ends[1]);
            if (ends.length <= 2 && first <= last) {
                return new long[] {first, last};
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new IllegalArgumentException("The option --seeds needs a range such as 1..3, not " + text + ".");
    }
}
