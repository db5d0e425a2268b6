package lengthwise.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.geometry.Box;
import lengthwise.job.JobFabric.PrintMotif;
import lengthwise.job.JobFabric.PrintRepeat;
import lengthwise.job.JobFabric.There;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Repeat;
import lengthwise.model.Shrinkage;
import lengthwise.model.Spread;
import lengthwise.plan.Leftovers;

/**
 * The whole cloth that markers leave, as fabrics that another job can take. The grain runs as before, along the length;
 * what is known of the cloth is carried over, as it measures now.
 */
public final class Remnants {
    private static final int LONGEST_NAME = 48;

    private Remnants() {}

    /** Returns the text of a file with a block for each rectangle that is left over; it may be none. */
    public static String text(Job job, Run run) {
        List<JobFabric> remnants = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        notes.add(
                "Whole cloth left over by this job, each piece as a fabric. To cut from one, put its block under fabrics:");
        notes.add(
                "of another job, beside the cloth that it is for or in its place. Lengths are those of the cloth as it is now.");
        for (FabricRun fabricRun : run.fabrics()) {
            JobFabric said = job.fabrics().stream()
                    .filter(fabric -> fabric.name()
                            .equals(fabricRun.marker().order().fabric().name()))
                    .findFirst()
                    .orElseThrow();
            List<JobFabric> ofFabric = of(said, fabricRun);
            remnants.addAll(ofFabric);
            notes.addAll(notes(said, fabricRun, ofFabric.isEmpty()));
        }
        return JobWriter.fabrics(job, remnants, notes);
    }

    private static List<String> notes(JobFabric said, FabricRun run, boolean none) {
        Spread spread = run.marker().order().fabric().spread();
        List<String> notes = new ArrayList<>();
        if (none) {
            notes.add("Of %s no rectangle worth keeping is left.".formatted(said.name()));
        } else if (spread.layers() > 1) {
            notes.add("Of %s there is each piece %s times, once in each layer."
                    .formatted(said.name(), Integer.toString(spread.layers())));
            if (spread.mirrors() && said.repeat().isPresent()) {
                notes.add(
                        "Where its print lies is not the same in each layer: measure it, and add the repeat's origin.");
            }
        }
        return notes;
    }

    /** Returns the rectangles that the marker of a fabric leaves, the largest first. */
    static List<JobFabric> of(JobFabric said, FabricRun run) {
        return of(said, run.marker().order().fabric(), Leftovers.of(run.marker(), run.purchase()));
    }

    /** Returns rectangles of a laid fabric, in marker coordinates, as cloths of their own. */
    public static List<JobFabric> of(JobFabric said, Fabric fabric, List<Box> boxes) {
        List<JobFabric> remnants = new ArrayList<>();
        for (Box box : boxes) {
            String name =
                    said.name().substring(0, Math.min(LONGEST_NAME, said.name().length()));
            remnants.add(new JobFabric(
                    name + "-left-" + (remnants.size() + 1),
                    said.role(),
                    new Length(box.height()),
                    Optional.of(Fabric.UnusableEdge.eachSide(Length.ZERO)),
                    Optional.of(fabric.direction()),
                    said.mostStretch(),
                    said.rightSide(),
                    said.repeat().map(repeat -> print(repeat, fabric, box)),
                    Optional.of(shrinkage(fabric)),
                    new JobSpread(
                            Optional.of(Spread.Form.SINGLE_LAYER),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(Length.ZERO),
                            Optional.empty()),
                    Optional.empty(),
                    Optional.of(fabric.soldBy()),
                    List.of(),
                    Optional.of(new There(new Length(box.width()), List.of())),
                    said.pile()));
        }
        return remnants;
    }

    /** Cloth that was washed first does not shrink again. */
    private static Shrinkage shrinkage(Fabric fabric) {
        return fabric.isWashedFirst() ? new Shrinkage(0, 0, Shrinkage.Handling.IN_PATTERN) : fabric.shrinkage();
    }

    /** Returns the print as it lies on a rectangle, with the first point of it that comes at or after its corner. */
    private static PrintRepeat print(PrintRepeat said, Fabric fabric, Box box) {
        Repeat repeat = fabric.repeatOnTable().orElseThrow();
        if (fabric.spread().mirrors()) {
            return new PrintRepeat(
                    repeat.lengthwise(),
                    repeat.crosswise(),
                    repeat.halfDrop(),
                    said.mirrored(),
                    said.uneven(),
                    Length.ZERO,
                    Length.ZERO,
                    motifs(said, fabric),
                    said.image());
        }
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        long x = repeat.originX().micrometres() - box.minX();
        long y = repeat.originY().micrometres() - box.minY();
        boolean dropped = repeat.halfDrop() && across > 0 && Math.floorMod(Math.floorDiv(y, across), 2) == 1;
        long moved = dropped ? x + along / 2 : x;
        return new PrintRepeat(
                repeat.lengthwise(),
                repeat.crosswise(),
                repeat.halfDrop(),
                said.mirrored(),
                said.uneven(),
                new Length(along == 0 ? 0 : Math.floorMod(moved, along)),
                new Length(across == 0 ? 0 : Math.floorMod(y, across)),
                motifs(said, fabric),
                said.image());
    }

    /** Returns the motifs as they are on cloth that was washed, if it is washed first. */
    private static List<PrintMotif> motifs(PrintRepeat said, Fabric fabric) {
        return said.motifs().stream()
                .map(motif -> new PrintMotif(
                        motif.name(),
                        motif.lengthwise().scaled(fabric.lengthKept()),
                        motif.crosswise().scaled(fabric.widthKept()),
                        motif.length().scaled(fabric.lengthKept()),
                        motif.width().scaled(fabric.widthKept()),
                        motif.round()))
                .toList();
    }
}
