package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line's entry. */
@Command(
        name = "lengthwise",
        description = {
            "Lays pattern pieces on cloth: how much to buy, and a marker to cut by.",
            "Start with: lengthwise marker JOB --out FOLDER"
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        subcommands = {
            MarkerCommand.class,
            EstimateCommand.class,
            ChartCommand.class,
            CheckCommand.class,
            InspectCommand.class,
            ExportCommand.class,
            PlanCommand.class,
            PrintCommand.class,
            ShopCommand.class,
            StashCommand.class
        })
public final class Main implements Runnable {
    @Spec
    private CommandSpec spec;

    @Option(
            names = "--stacktrace",
            scope = CommandLine.ScopeType.INHERIT,
            hidden = true,
            description = "Show where in the program a fault happened.")
    private boolean stackTrace;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    private Main() {}

    public static void main(String... args) {
        System.exit(run(args));
    }

    /** Runs a command, results to stdout and the rest to stderr, and returns its exit code. */
    public static int run(String... args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        if (args.length == 1 && args[0].equals("--version")) {
            // no need to wake the option parser for this
            out.println(new Version().getVersion()[0]);
            return ExitCode.DONE.number();
        }
        if (args.length > 1 && args[0].equals(MarkerCommand.NAME)) {
            WarmUp.start();
        }
        return run(out, err, args);
    }

    static int run(PrintWriter out, PrintWriter err, String... args) {
        // figures are written the same everywhere, whatever the machine's language
        Locale.setDefault(Locale.ROOT);
        Main main = new Main();
        CommandLine line = new CommandLine(main);
        line.setOut(out);
        line.setErr(err);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setAbbreviatedOptionsAllowed(false);
        Map<String, String> codes = new LinkedHashMap<>();
        Arrays.stream(ExitCode.values()).forEach(code -> codes.put(String.valueOf(code.number()), code.meaning()));
        allWithin(line)
                .forEach(command -> command.getCommandSpec()
                        .usageMessage()
                        .exitCodeListHeading("%nExit codes:%n")
                        .exitCodeList(codes));
        line.setParameterExceptionHandler((wrong, given) -> {
            err.println("lengthwise: " + wrong.getMessage());
            err.println("Try lengthwise " + nameOf(wrong.getCommandLine()) + "--help.");
            return ExitCode.WRONG_USE.number();
        });
        line.setExecutionExceptionHandler((fault, command, given) -> {
            err.println("lengthwise: a fault of ours (" + fault
                    + "). Nothing was half-written. Please report it with the job.");
            if (main.stackTrace) {
                fault.printStackTrace(err);
            }
            return ExitCode.OUR_FAULT.number();
        });
        return line.execute(args);
    }

    private static List<CommandLine> allWithin(CommandLine line) {
        List<CommandLine> all = new ArrayList<>(List.of(line));
        line.getSubcommands().values().forEach(command -> all.addAll(allWithin(command)));
        return all;
    }

    private static String nameOf(CommandLine line) {
        return line.getParent() == null ? "" : nameOf(line.getParent()) + line.getCommandName() + " ";
    }

    @Override
    public void run() {
        throw new CommandLine.ParameterException(
                spec.commandLine(),
                "Say what to do: marker, estimate, chart, plan, shop, check, inspect, export, print or stash.");
    }
}
