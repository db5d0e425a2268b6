package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lengthwise.drawing.DrawingException;
import lengthwise.job.JobException;
import lengthwise.report.WholeFile;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvgReader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes a marker as another kind of file, for machines and other programs. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {"Writes a marker as another kind of file, at true scale."})
final class ExportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "MARKER", description = "a marker (.svg) that Lengthwise wrote")
    private Path marker;

    @Option(
            names = "--as",
            required = true,
            paramLabel = "FORMAT",
            description = {
                "dxf: pieces with their marks, one block each, layer numbers after ASTM D6673;",
                "dxf-lines: the lines to cut and nothing else;",
                "cutter-svg: hairlines in the order of cutting, for a cutting machine;",
                "hpgl: HP-GL/2 for a pen plotter;",
                "png: a picture in pixels, for a screen"
            })
    private String as;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "the file to write")
    private Path out;

    @Option(
            names = "--job",
            paramLabel = "JOB",
            description = "the job file that it was made for; the marker is checked against it first")
    private @Nullable Path job;

    @Mixin
    private CutterExport cutter;

    @Mixin
    private HpglExport plotter;

    @Mixin
    private PngExport picture;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    ExportCommand() {}

    private List<ExportFormat> formats() {
        return List.of(DxfExport.PIECES, DxfExport.LINES, cutter, plotter, picture);
    }

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        ExportFormat format = format();
        refuseOptionsOfOthers(format);
        refuseBadTarget("--out", out);
        try {
            MarkerDrawing drawing = MarkerSvgReader.read(marker);
            if (job == null) {
                err.println("note: not checked before writing; --job JOB checks it.");
            } else if (!CheckCommand.isRight(err, marker, drawing, job, "written for a machine")) {
                return ExitCode.CHECK_FAILED.number();
            }
            byte[] bytes = format.write(marker, drawing);
            Optional<ExportFormat.Beside> beside = format.beside(drawing);
            List<String> remarks = format.remarks(drawing);
            if (beside.isPresent()) {
                refuseBadTarget("--preview", beside.get().file());
                if (beside.get()
                        .file()
                        .toAbsolutePath()
                        .normalize()
                        .equals(out.toAbsolutePath().normalize())) {
                    throw wrong("--out and --preview name the same file.");
                }
                WholeFile.write(beside.get().file(), beside.get().text());
            }
            WholeFile.write(out, bytes);
            format.cautions().forEach(caution -> err.println("caution: " + caution));
            spec.commandLine()
                    .getOut()
                    .println(String.format(
                            Locale.ROOT,
                            "%s: %d contours.",
                            out,
                            drawing.pieces().size()));
            remarks.forEach(remark -> spec.commandLine().getOut().println(remark));
            return ExitCode.DONE.number();
        } catch (JobException | DrawingException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
        }
    }

    private void refuseBadTarget(String option, Path file) throws IOException {
        if (Files.isDirectory(file)) {
            throw wrong(option + " " + file + " is a folder; name a file.");
        }
        if (Files.exists(file) && Files.exists(marker) && Files.isSameFile(marker, file)) {
            throw wrong(option + " would replace the marker itself; name another file.");
        }
    }

    private void refuseOptionsOfOthers(ExportFormat format) {
        for (OptionSpec given : spec.commandLine().getParseResult().matchedOptions()) {
            List<String> owners = formats().stream()
                    .filter(other -> other.options().contains(given.longestName()))
                    .map(ExportFormat::word)
                    .toList();
            if (!owners.isEmpty() && !owners.contains(format.word())) {
                throw wrong("%s goes with --as %s, not with %s."
                        .formatted(given.longestName(), String.join(" or ", owners), format.word()));
            }
        }
    }

    private ExportFormat format() {
        return formats().stream()
                .filter(known -> known.word().equals(as.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> wrong("--as takes %s, not %s."
                        .formatted(formats().stream().map(ExportFormat::word).collect(Collectors.joining(", ")), as)));
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
