package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import lengthwise.drawing.DrawingException;
import lengthwise.job.JobException;
import lengthwise.job.LengthText;
import lengthwise.model.Length;
import lengthwise.pdf.MarkerPrint;
import lengthwise.pdf.MeasuredSquare;
import lengthwise.pdf.PageSetup;
import lengthwise.pdf.Paper;
import lengthwise.pdf.PiecePrint;
import lengthwise.pdf.Printed;
import lengthwise.pdf.ProjectorPrint;
import lengthwise.report.WholeFile;
import lengthwise.svg.MarkerPainting;
import lengthwise.svg.MarkerSvgReader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Puts a marker on paper, at true size. */
@Command(
        name = "print",
        mixinStandardHelpOptions = true,
        description = {
            "Puts a marker on paper at true size: pages to join, a roll, a projector, or paper pieces (PDF).",
            "Print the first page alone, measure both squares on it, then print the rest at 100 %%."
        })
final class PrintCommand implements Callable<Integer> {
    private static final Pattern IN_INCHES = Pattern.compile(".*[0-9] ?(in|inch|inches|\"|″|″)\\s*");

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "MARKER", description = "a marker (.svg) that Lengthwise wrote")
    private @Nullable Path marker;

    @Option(
            names = "--paper",
            paramLabel = "PAPER",
            description =
                    "A4, Letter, Legal, A3, Tabloid, A2, A1, A0, or a roll by its width, as roll:914mm or roll:36in")
    private @Nullable String paper;

    @Option(names = "--landscape", description = "sheets lie on their side")
    private boolean landscape;

    @Option(
            names = "--margin",
            paramLabel = "LENGTH",
            description = "what the printer leaves white along each edge (12 mm)")
    private @Nullable String margin;

    @Option(names = "--overlap", paramLabel = "LENGTH", description = "what neighbouring pages show both (10 mm)")
    private @Nullable String overlap;

    @Option(
            names = "--user-unit",
            description = {
                "on a roll: one page even beyond 5.08 m, measured in larger units (UserUnit);",
                "many programs ignore that and print it too small, so measure first"
            })
    private boolean userUnit;

    @Option(
            names = "--projector",
            description = "one page to project on the cloth: thick lines, a grid of 10 cm, no tints, layers by size")
    private boolean projector;

    @Option(names = "--pieces", description = "every piece on a page of its own, once per size, and no marker")
    private boolean pieces;

    @Option(
            names = "--job",
            paramLabel = "JOB",
            description = "the job file that it was made for; the marker is checked against it first")
    private @Nullable Path job;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "the PDF to write; beside the marker, and named like it, if not given")
    private @Nullable Path to;

    @Option(
            names = "--measured",
            paramLabel = "LENGTH",
            description = {
                "what the printed square measured, instead of printing: 97mm is taken for the square of 10 cm,",
                "\"3 7/8 in\" for that of 4 in; ends with 5 if the print is not true"
            })
    private @Nullable String measured;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    PrintCommand() {}

    @Override
    public Integer call() throws IOException {
        if (measured != null) {
            return answer(measured);
        }
        if (marker == null) {
            throw wrong("Name the marker to print, or say --measured.");
        }
        if (projector && pieces) {
            throw wrong("--projector and --pieces are two documents; print one after the other.");
        }
        Optional<PageSetup> setup = projector ? Optional.empty() : Optional.of(setup());
        Path file = to == null ? beside(marker) : to;
        if (Files.isDirectory(file)) {
            throw wrong("--out " + file + " is a folder; name a file.");
        }
        PrintWriter err = spec.commandLine().getErr();
        try {
            MarkerPainting painting = MarkerSvgReader.painting(marker);
            if (painting.pieces().isEmpty()) {
                throw new DrawingException(marker + ": there is no piece on the marker; nothing is printed.");
            }
            if (job == null) {
                err.println("note: not checked before printing; --job JOB checks it.");
            } else if (!CheckCommand.isRight(err, marker, painting.marker(), job, "printed")) {
                return ExitCode.CHECK_FAILED.number();
            }
            Printed printed = setup.isEmpty()
                    ? ProjectorPrint.of(painting, userUnit)
                    : pieces ? PiecePrint.of(painting, setup.get()) : MarkerPrint.of(painting, setup.get());
            WholeFile.write(file, printed.bytes());
            say(file, printed);
            return ExitCode.DONE.number();
        } catch (JobException | DrawingException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
    }

    private int answer(String text) {
        Length length = length("--measured", text);
        if (length.micrometres() < 10_000 || length.micrometres() > 1_000_000) {
            throw wrong("--measured is what one of the two squares measured, about 10 cm, not " + text + ".");
        }
        boolean inches = IN_INCHES.matcher(text).matches();
        MeasuredSquare square =
                new MeasuredSquare(length, inches ? MeasuredSquare.FOUR_INCHES : MeasuredSquare.TEN_CENTIMETRES);
        spec.commandLine().getOut().println(square.answer());
        return (square.isTrue() ? ExitCode.DONE : ExitCode.CHECK_FAILED).number();
    }

    private PageSetup setup() {
        if (paper == null) {
            throw wrong("Say --paper: %s, or roll:914mm.".formatted(String.join(", ", Paper.names())));
        }
        Paper chosen = paper(paper);
        if (userUnit && !chosen.isRoll()) {
            throw wrong("--user-unit is for rolls and projectors; sheets are short enough.");
        }
        if (pieces && chosen.isRoll()) {
            throw wrong("--pieces goes to sheets: %s.".formatted(String.join(", ", Paper.names())));
        }
        Length white = margin == null ? PageSetup.USUAL_MARGIN : length("--margin", margin);
        Length both = overlap == null ? PageSetup.USUAL_OVERLAP : length("--overlap", overlap);
        PageSetup.whyNot(chosen, white, both).ifPresent(why -> {
            throw wrong(why);
        });
        return new PageSetup(landscape ? chosen.landscape() : chosen, white, both, userUnit);
    }

    private Paper paper(String name) {
        if (name.toLowerCase(Locale.ROOT).startsWith("roll:")) {
            return Paper.roll(length("--paper roll", name.substring(5)));
        }
        return Paper.named(name)
                .orElseThrow(() -> wrong("--paper %s is not known; it is one of %s, or a roll, as roll:914mm."
                        .formatted(name, String.join(", ", Paper.names()))));
    }

    private Length length(String option, String text) {
        try {
            return LengthText.parse(text);
        } catch (JobException notALength) {
            throw wrong(option + ": " + notALength.getMessage() + ".");
        }
    }

    private Path beside(Path drawing) {
        String name = drawing.getFileName().toString().replaceFirst("\\.svgz?$", "");
        return drawing.resolveSibling(name + (projector ? "-projector" : pieces ? "-pieces" : "") + ".pdf");
    }

    private void say(Path file, Printed printed) {
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        if (printed.columns() > 0 && printed.sheets() > 0) {
            out.println("%s: %s pages: %s to read and measure first, then %s sheet%s of a grid of %s × %s."
                    .formatted(
                            file,
                            printed.pages(),
                            printed.pages() - printed.sheets(),
                            printed.sheets(),
                            printed.sheets() == 1 ? "" : "s",
                            printed.columns(),
                            printed.rows()));
        } else {
            out.println("%s: %s page%s.".formatted(file, printed.pages(), printed.pages() == 1 ? "" : "s"));
        }
        if (!printed.leftOut().isEmpty()) {
            out.println(
                    "Left out, because there is nothing to cut on them: " + String.join(", ", printed.leftOut()) + ".");
        }
        if (!printed.missingLetters().isEmpty()) {
            err.println(
                    "warning: the typeface of the print lacks %s; a hollow box stands for each. Numbers tell the pieces"
                                    .formatted(String.join(
                                            " ",
                                            printed.missingLetters().stream()
                                                    .sorted()
                                                    .toList()))
                            + " apart.");
        }
        if (printed.columns() > 0 || pieces) {
            out.println("Print page 1 alone at its actual size, and measure both squares before you print the rest.");
        } else {
            out.println("Move or zoom the projector until 10 cm of the grid measure 10 cm, along and across.");
        }
    }

    private ParameterException wrong(String why) {
        return new ParameterException(spec.commandLine(), why);
    }
}
