package lengthwise.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.DrawingException;
import lengthwise.model.Length;
import lengthwise.svg.MarkerDrawing;
import lengthwise.toolpath.Cautions;
import lengthwise.toolpath.CutterSvg;
import lengthwise.toolpath.Kerf;
import lengthwise.toolpath.ToolPath;
import lengthwise.toolpath.ToolPathPicture;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Cut lines for a cutting machine, and a picture of its way. */
final class CutterExport implements ExportFormat {
    private static final Length WIDEST_KERF = Length.ofMillimetres(10);

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--kerf",
            paramLabel = "LENGTH",
            description = "cutter-svg: how wide the tool cuts, as \"0.2 mm\"; its path keeps half of it off the pieces"
                    + " (default: 0)")
    private @Nullable String kerf;

    @Option(
            names = "--kerf-side",
            paramLabel = "SIDE",
            description = "cutter-svg: outward, so that pieces measure as drawn, or inward, so that the openings do"
                    + " (default: ${DEFAULT-VALUE})")
    private Kerf.Side side = Kerf.Side.OUTWARD;

    @Option(names = "--lettering", description = "cutter-svg: the names of the pieces too, to be drawn or engraved")
    private boolean lettering;

    @Option(
            names = "--preview",
            paramLabel = "FILE",
            description = "cutter-svg: draw the way of the tool into an SVG file")
    private @Nullable Path preview;

    @Option(
            names = "--speed",
            paramLabel = "MM/S",
            description =
                    "cutter-svg: how fast the tool goes, for the time it takes (default: ${DEFAULT-VALUE}, a guess:"
                            + " say your machine's own)")
    private double speed = 100;

    private @Nullable ToolPath path;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    CutterExport() {}

    @Override
    public String word() {
        return "cutter-svg";
    }

    @Override
    public Set<String> options() {
        return Set.of("--kerf", "--kerf-side", "--lettering", "--preview", "--speed");
    }

    @Override
    public byte[] write(Path file, MarkerDrawing marker) throws DrawingException {
        if (!(speed > 0 && speed <= 100_000)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--speed takes millimetres a second, above 0 and up to 100000, not " + speed + ".");
        }
        return CutterSvg.of(marker, path(marker), kerf(), lettering).getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public Optional<Beside> beside(MarkerDrawing marker) throws DrawingException {
        return preview == null
                ? Optional.empty()
                : Optional.of(new Beside(preview, ToolPathPicture.of(marker, path(marker), speed)));
    }

    @Override
    public List<String> remarks(MarkerDrawing marker) throws DrawingException {
        return List.of(ToolPathPicture.summary(path(marker), speed));
    }

    @Override
    public List<String> cautions() {
        return Cautions.forCutting();
    }

    private Kerf kerf() {
        return kerf == null
                ? new Kerf(Length.ZERO, side)
                : new Kerf(LengthOption.parse(spec, "--kerf", kerf, Length.ZERO, WIDEST_KERF), side);
    }

    /** The way through the one marker of this run. */
    private ToolPath path(MarkerDrawing marker) throws DrawingException {
        if (path == null) {
            path = ToolPath.of(marker, kerf());
        }
        return path;
    }
}
