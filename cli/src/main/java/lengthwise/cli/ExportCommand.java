package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lengthwise.drawing.DrawingException;
import lengthwise.report.WholeFile;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerSvgReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
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
                "dxf-lines: the lines to cut and nothing else"
            })
    private String as;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "the file to write")
    private Path out;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    ExportCommand() {}

    private static List<ExportFormat> formats() {
        return List.of(DxfExport.PIECES, DxfExport.LINES);
    }

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        ExportFormat format = format();
        if (Files.isDirectory(out)) {
            throw wrong("--out " + out + " is a folder; name a file.");
        }
        if (Files.exists(out) && Files.exists(marker) && Files.isSameFile(marker, out)) {
            throw wrong("--out would replace the marker itself; name another file.");
        }
        try {
            MarkerDrawing drawing = MarkerSvgReader.read(marker);
            WholeFile.write(out, format.write(marker, drawing));
            format.cautions().forEach(caution -> err.println("caution: " + caution));
            spec.commandLine()
                    .getOut()
                    .println(String.format(
                            Locale.ROOT,
                            "%s: %d contours.",
                            out,
                            drawing.pieces().size()));
            return ExitCode.DONE.number();
        } catch (DrawingException bad) {
            err.println("lengthwise: " + bad.getMessage());
            return ExitCode.BAD_INPUT.number();
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
