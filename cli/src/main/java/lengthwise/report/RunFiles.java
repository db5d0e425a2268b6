package lengthwise.report;

import java.io.IOException;
import java.nio.file.Path;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.model.LengthWords;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;

/** Every file of a run, in one folder. */
public final class RunFiles {
    private RunFiles() {}

    /** Writes the markers of a run. */
    public static void write(Run run, Path folder) throws IOException {
        for (FabricRun fabric : run.fabrics()) {
            MarkerNotes notes = new MarkerNotes(
                    run.job(),
                    "Lengthwise " + run.version(),
                    LengthWords.toBuy(fabric.purchase().buy()),
                    fabric.assumptions().stream()
                            .map(FabricRun.Assumption::text)
                            .toList(),
                    fabric.surplus());
            WholeFile.write(
                    folder.resolve(fabric.marker().order().fabric().name() + ".svg"),
                    MarkerSvg.of(fabric.marker(), notes));
        }
    }
}
