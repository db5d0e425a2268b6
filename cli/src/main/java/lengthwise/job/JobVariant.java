package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.model.Direction;

/**
 * A job with one of its fabrics in another width and direction, as text that needs no other place than a folder with its
 * drawings.
 */
public final class JobVariant {
    private JobVariant() {}

    /** Returns where the drawing of this index lies beside the text: in a folder of its own, since its name may say its size. */
    public static String drawing(int index, JobDrawing drawing) {
        Path name = Path.of(drawing.file()).getFileName();
        return index + "/" + (name == null ? "drawing" : name);
    }

    /**
     * Returns the text of the job file. All cloth is whole, and only the fabric that is asked for is changed.
     *
     * @param fabric by its name
     */
    public static String text(Job job, String fabric, JobBuying.Offer offer, Direction direction) {
        List<JobDrawing> drawings = new ArrayList<>();
        for (JobDrawing each : job.drawings()) {
            drawings.add(each.in(drawing(drawings.size(), each)));
        }
        List<JobFabric> fabrics = job.fabrics().stream()
                .map(each -> each.withCutAlready(Optional.empty()))
                .map(each -> each.name().equals(fabric) ? each.at(offer).withDirection(direction) : each)
                .toList();
        Job variant = new Job(
                job.title(),
                job.units(),
                drawings,
                fabrics,
                job.pieces(),
                job.gap(),
                job.cuttingTool(),
                job.sizes(),
                job.order(),
                Optional.empty(),
                job.sewing());
        return JobWriter.text(variant, List.of());
    }
}
