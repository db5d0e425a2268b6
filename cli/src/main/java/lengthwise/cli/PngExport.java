package lengthwise.cli;

import java.nio.file.Path;
import java.util.Set;
import lengthwise.drawing.DrawingException;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerPng;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A picture in pixels. */
final class PngExport implements ExportFormat {
    private static final int FEWEST = 16;
    private static final int MOST = 30_000;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--pixels",
            paramLabel = "N",
            description = "png: how wide the picture is (default: ${DEFAULT-VALUE})")
    private int pixels = 2000;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    PngExport() {}

    @Override
    public String word() {
        return "png";
    }

    @Override
    public Set<String> options() {
        return Set.of("--pixels");
    }

    @Override
    public byte[] write(Path file, MarkerDrawing marker) throws DrawingException {
        if (pixels < FEWEST || pixels > MOST) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--pixels takes a number from " + FEWEST + " to " + MOST + ", not " + pixels + ".");
        }
        return MarkerPng.of(file, pixels);
    }
}
