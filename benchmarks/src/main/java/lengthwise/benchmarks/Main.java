package lengthwise.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * The entry: {@code quality}, {@code scale}, {@code compare} and {@code jmh}. Exit code 0: done; 2: wrong use or input; 5: a result was
 * illegal.
 */
public final class Main {
    private Main() {}

    public static void main(String... arguments) {
        System.exit(run(System.out, System.err, arguments));
    }

    static int run(PrintStream out, PrintStream err, String... arguments) {
        List<String> rest = Arrays.asList(arguments).subList(Math.min(1, arguments.length), arguments.length);
        try {
            return switch (arguments.length == 0 ? "" : arguments[0]) {
                case "quality" -> new QualityRun(Options.parse(rest), out).run() ? 0 : 5;
                case "scale" -> new ScaleRun(Options.parse(rest), out).run() ? 0 : 5;
                case "compare" -> compare(rest, out);
                case "jmh" -> jmh(rest);
                default -> throw new IllegalArgumentException(Options.USAGE);
            };
        } catch (IllegalArgumentException | IOException e) {
            err.println(e.getMessage());
            return 2;
        }
    }

    /** Hands the arguments on to JMH, which prints to the console itself. */
    private static int jmh(List<String> arguments) throws IOException {
        org.openjdk.jmh.Main.main(arguments.toArray(String[]::new));
        return 0;
    }

    private static int compare(List<String> files, PrintStream out) throws IOException {
        if (files.size() != 2) {
            throw new IllegalArgumentException("compare needs two files.\n" + Options.USAGE);
        }
        out.print(Table.compared(Row.read(Path.of(files.get(0))), Row.read(Path.of(files.get(1)))));
        return 0;
    }
}
