package lengthwise.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.job.JobException;
import lengthwise.job.LengthText;
import lengthwise.job.PatternFile;
import lengthwise.model.Length;
import lengthwise.report.WholeFile;
import lengthwise.svg.PatternPicture;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Shows what pattern drawings hold, before anything is laid or cut. */
@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        description = {
            "Shows what a pattern drawing holds: each piece with its size and marks.",
            "Also what was left out, and why. Warnings go to stderr."
        })
final class InspectCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "DRAWING", description = "pattern drawings (.svg, .svgz, .dxf, .pdf)")
    private List<Path> drawings;

    @Option(names = "--picture", paramLabel = "FILE", description = "draw what was recognised into an SVG file")
    private @Nullable Path picture;

    @Option(
            names = "--edges",
            description = "print how long each edge is, between the corners and notches that --picture numbers")
    private boolean edges;

    @Option(names = "--json", description = "print the pieces as JSON, for other programs")
    private boolean json;

    @Option(
            names = "--scale-box",
            paramLabel = "ID=LENGTH",
            description = "the drawing's test square by its id or label, and what its sides measure, as box=\"10 cm\"")
    private @Nullable String scaleBox;

    @Option(
            names = "--drawing-unit",
            paramLabel = "LENGTH",
            description = "what one unit of the drawing measures, as \"1 mm\" or \"1 in\", whatever the file says")
    private @Nullable String drawingUnit;

    @Mixin
    private TileOptions tiles;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    InspectCommand() {}

    @Override
    public Integer call() throws IOException {
        PrintWriter err = spec.commandLine().getErr();
        ScaleStatement scale = scale();
        Optional<PageGrid> grid = tiles.grid();
        if (picture != null && Files.isDirectory(picture)) {
            throw wrong("--picture " + picture + " is a folder; name a file.");
        }
        List<PatternDrawing> read = new ArrayList<>();
        boolean allRead = true;
        for (Path drawing : drawings) {
            try {
                read.add(PatternFile.read(drawing, scale, grid));
            } catch (DrawingException bad) {
                err.println("lengthwise: " + bad.getMessage());
                allRead = false;
            }
        }
        for (PatternDrawing drawing : read) {
            drawing.warnings().forEach(warning -> err.println("warning: " + drawing.file() + ": " + warning));
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(InspectJson.of(read, edges));
        } else {
            read.forEach(drawing -> InspectTable.of(drawing).forEach(out::println));
            if (edges) {
                read.forEach(drawing -> InspectEdges.of(drawing).forEach(out::println));
            }
        }
        if (picture != null
                && read.stream().anyMatch(drawing -> !drawing.pieces().isEmpty())) {
            WholeFile.write(picture, PatternPicture.of(read));
        } else if (picture != null) {
            err.println("warning: no piece was found, so no picture is drawn.");
        }
        out.flush();
        return (allRead ? ExitCode.DONE : ExitCode.BAD_INPUT).number();
    }

    private ScaleStatement scale() {
        OptionalDouble unit = OptionalDouble.empty();
        if (drawingUnit != null) {
            try {
                unit = PatternFile.scale(drawingUnit).millimetresPerUnit();
            } catch (JobException notALength) {
                throw wrong("--drawing-unit: " + notALength.getMessage() + ".");
            }
        }
        if (scaleBox == null) {
            return new ScaleStatement(unit, Optional.empty());
        }
        int equals = scaleBox.lastIndexOf('=');
        if (equals <= 0) {
            throw wrong("--scale-box takes the name of the test square and its length, as box=\"10 cm\", not "
                    + scaleBox + ".");
        }
        try {
            Length measures = LengthText.parse(scaleBox.substring(equals + 1));
            if (measures.micrometres() <= 0) {
                throw wrong("--scale-box takes a length above zero, not " + scaleBox + ".");
            }
            return new ScaleStatement(
                    unit, Optional.of(new ScaleStatement.ScaleBox(scaleBox.substring(0, equals), measures)));
        } catch (JobException notALength) {
            throw wrong("--scale-box: " + notALength.getMessage() + ".");
        }
    }

    private ParameterException wrong(String why) {
        return new ParameterException(spec.commandLine(), why);
    }
}
