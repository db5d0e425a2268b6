package lengthwise.job;

import java.util.Optional;
import lengthwise.drawing.ScaleStatement;

/**
 * A pattern drawing of the job.
 *
 * @param file its path, relative to the job file
 * @param scale what is said about its scale
 * @param size the size that the whole file is drawn in, where said
 * @param seamAllowance whether the outlines are cut lines, where said
 * @param arrowMeans what the arrows on its pieces mean, where said
 */
public record JobDrawing(
        String file,
        ScaleStatement scale,
        Optional<String> size,
        Optional<SeamAllowance> seamAllowance,
        Optional<ArrowMeaning> arrowMeans) {}
