package lengthwise.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.DrawingException;
import lengthwise.hpgl.Frames;
import lengthwise.hpgl.HpglMarker;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.svg.MarkerDrawing;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A plot for pens. */
final class HpglExport implements ExportFormat {
    private static final Length LONGEST_FRAME = Length.ofMillimetres(200_000);

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--frame",
            paramLabel = "LENGTH",
            description = "hpgl: split a longer marker into frames of this length, as \"80 cm\", one after the other")
    private @Nullable String frame;

    @Option(
            names = "--overlap-marks",
            description = "hpgl: frames overlap by 20 mm and bear crosses there, to lay one on the other")
    private boolean overlapMarks;

    @Option(
            names = "--roll-axis",
            paramLabel = "AXIS",
            description = "hpgl: which of the plotter's axes runs along the roll, x or y (default: ${DEFAULT-VALUE})")
    private HpglMarker.Axis rollAxis = HpglMarker.Axis.X;

    @Option(
            names = "--plotter-units",
            description =
                    "hpgl: count whole plotter units of 0.025 mm, for a plotter that passes over SC and so draws the check square 250 mm wide")
    private boolean plotterUnits;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields
    HpglExport() {}

    @Override
    public String word() {
        return "hpgl";
    }

    @Override
    public Set<String> options() {
        return Set.of("--frame", "--overlap-marks", "--roll-axis", "--plotter-units");
    }

    @Override
    public byte[] write(Path file, MarkerDrawing marker) throws DrawingException {
        HpglMarker.Coordinates coordinates =
                plotterUnits ? HpglMarker.Coordinates.PLOTTER_UNITS : HpglMarker.Coordinates.SCALED;
        return HpglMarker.of(marker, frames(), rollAxis, coordinates).getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public List<String> remarks(MarkerDrawing marker) {
        List<String> remarks = new ArrayList<>();
        remarks.add("Pen 1 draws what is cut, pen 2 marks, pen 3 letters; coordinates count "
                + (plotterUnits ? "plotter units of 0.025 mm." : "hundredths of a millimetre."));
        if (plotterUnits && HpglMarker.longestPlot(marker, frames()).compareTo(HpglMarker.OLD_LARGEST) > 0) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "A plotter that knows HP-GL and not HP-GL/2 may stop at %s: split the marker for it with --frame.",
                    LengthWords.both(HpglMarker.OLD_LARGEST)));
        }
        return remarks;
    }

    @Override
    public List<String> cautions() {
        return List.of(
                "Measure the check square on the plot before you cut by it"
                        + (plotterUnits ? "." : "; where it is 250 mm, write the plot with --plotter-units."),
                "With a knife in the plotter's holder, its manual, local safety codes and trained people go first.");
    }

    private Optional<Frames> frames() {
        if (frame == null) {
            if (overlapMarks) {
                throw new ParameterException(spec.commandLine(), "--overlap-marks goes with --frame.");
            }
            return Optional.empty();
        }
        return Optional.of(
                new Frames(LengthOption.parse(spec, "--frame", frame, Frames.SHORTEST, LONGEST_FRAME), overlapMarks));
    }
}
