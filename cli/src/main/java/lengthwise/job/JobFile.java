package lengthwise.job;

import java.nio.file.Path;
import java.util.List;

/** A job as read from a file, which still knows where each key stands. */
public final class JobFile {
    private final Path path;
    private final Job job;
    private final List<String> warnings;
    private final Places places;

    JobFile(Path path, Job job, List<String> warnings, Places places) {
        this.path = path;
        this.job = job;
        this.warnings = List.copyOf(warnings);
        this.places = places;
    }

    public Job job() {
        return job;
    }

    /** Returns what looks odd and does not stop the job: sentences with their place. */
    public List<String> warnings() {
        return warnings;
    }

    /** Returns the folder that the file lies in, which the drawings' paths are relative to. */
    public Path folder() {
        Path folder = path.toAbsolutePath().getParent();
        return folder == null ? path.toAbsolutePath() : folder;
    }

    /**
     * Returns the same job with a cloth in the place of one of its fabrics.
     *
     * @param label of the cloth, for the complaint
     * @throws JobException if what the job says of the fabric does not go with that cloth
     */
    public JobFile cutFrom(JobFabric cloth, String label) throws JobException {
        Job other = job.withFabric(cloth);
        try {
            // whatever is refused in a file is refused here
            JobReader.read(path, JobWriter.text(other, List.of()));
        } catch (JobException wrong) {
            throw error(
                    "fabrics." + cloth.name() + ".from",
                    "%s does not go with it: %s"
                            .formatted(label, wrong.getMessage().replaceFirst("^.*?:[0-9]+:[0-9]+: ", "")));
        }
        return with(other);
    }

    /** Returns the same job planned with these bolts. */
    public JobFile withBolts(List<JobPlan.Bolt> bolts) {
        return with(job.withPlan(job.plan().orElse(JobPlan.UNSAID).withBolts(bolts)));
    }

    /** Returns the same file with another job in it, whose keys are taken to stand where they stood. */
    JobFile with(Job other) {
        return new JobFile(path, other, warnings, places);
    }

    /** Returns where a drawing of the job lies. */
    public Path path(JobDrawing drawing) {
        return path.resolveSibling(drawing.file());
    }

    /**
     * Returns a complaint about a key, for what only shows when the drawings are read.
     *
     * @param key the whole way to it: {@code pieces.cup}, {@code order[2].size}; items count from 1. Where the file
     *     does not have it, the nearest key above it gives the place
     */
    public JobException error(String key, String what) {
        return places.complaint(key, what);
    }
}
