package lengthwise.job;

import java.util.Optional;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.ScaleStatement;

/**
 * A pattern drawing of the job.
 *
 * @param file its path, relative to the job file
 * @param scale what is said about its scale
 * @param tiles how its pages are laid to make one drawing, where said
 * @param size the size that the whole file is drawn in, where said
 * @param seamAllowance whether the outlines are cut lines, where said
 * @param arrowMeans what the arrows on its pieces mean, where said
 */
public record JobDrawing(
        String file,
        ScaleStatement scale,
        Optional<PageGrid> tiles,
        Optional<String> size,
        Optional<SeamAllowance> seamAllowance,
        Optional<ArrowMeaning> arrowMeans) {
    /** A drawing of which nothing more is said. */
    JobDrawing(String file, ScaleStatement scale, Optional<PageGrid> tiles) {
        this(file, scale, tiles, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Returns the same of another file. */
    JobDrawing in(String otherFile) {
        return new JobDrawing(otherFile, scale, tiles, size, seamAllowance, arrowMeans);
    }
}
