package lengthwise.job;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.workshop.SizeTable;

/**
 * What a maker asks for: her drawings, her fabrics, how the pieces are cut, and how many garments of which size.
 *
 * @param title the job's name; without one, the file's
 * @param units what a bare number is measured in, where the file says so
 * @param pieces what is said about single pieces; a piece of the drawings that is not listed is cut as its lettering says
 * @param gap the least distance between any two pieces, where said
 * @param cuttingTool gives the gap where nothing is said of it
 * @param sizes choose the size of an order line by its measures, where said; the lines of the order have theirs
 * @param plan how the order may be shared out over lays, where said
 * @param sewing what the garments are sewn with
 */
public record Job(
        String title,
        Optional<LengthUnit> units,
        List<JobDrawing> drawings,
        List<JobFabric> fabrics,
        List<JobPiece> pieces,
        Optional<Length> gap,
        Optional<CuttingTool> cuttingTool,
        Optional<SizeTable> sizes,
        List<OrderLine> order,
        Optional<JobPlan> plan,
        JobSewing sewing) {
    /** The version of the job file that this Lengthwise reads and writes. */
    public static final int VERSION = 1;

    public Job {
        drawings = List.copyOf(drawings);
        fabrics = List.copyOf(fabrics);
        pieces = List.copyOf(pieces);
        order = List.copyOf(order);
    }

    /** Returns the same job with another order. */
    Job withOrder(List<OrderLine> lines) {
        return new Job(title, units, drawings, fabrics, pieces, gap, cuttingTool, sizes, lines, plan, sewing);
    }

    /** Returns the same job with another cloth in the place of the fabric of its name. */
    public Job withFabric(JobFabric other) {
        List<JobFabric> others = fabrics.stream()
                .map(fabric -> fabric.name().equals(other.name()) ? other : fabric)
                .toList();
        return new Job(title, units, drawings, others, pieces, gap, cuttingTool, sizes, order, plan, sewing);
    }

    Job withPlan(JobPlan other) {
        return new Job(
                title, units, drawings, fabrics, pieces, gap, cuttingTool, sizes, order, Optional.of(other), sewing);
    }

    /** Returns the same pieces cut from other fabrics for another order; what is planned is not planned again. */
    Job cutFrom(List<JobFabric> others, List<OrderLine> lines) {
        return new Job(
                title, units, drawings, others, pieces, gap, cuttingTool, sizes, lines, Optional.empty(), sewing);
    }

    /** Returns the same job with its drawings' paths as seen from another folder. */
    public Job seenFrom(Path other, Path folder) {
        List<JobDrawing> moved = drawings.stream()
                .map(drawing -> drawing.in(seenFrom(other, folder, drawing.file())))
                .toList();
        List<JobFabric> cutFrom = fabrics.stream()
                .map(fabric -> fabric.withRepeat(fabric.repeat()
                        .map(print -> print.withImage(print.image().map(image -> seenFrom(other, folder, image))))))
                .map(fabric -> fabric.withCutAlready(
                        fabric.cutAlready().map(cut -> cut.withMarker(seenFrom(other, folder, cut.marker())))))
                .toList();
        return new Job(title, units, moved, cutFrom, pieces, gap, cuttingTool, sizes, order, plan, sewing);
    }

    private static String seenFrom(Path other, Path folder, String file) {
        return other.toAbsolutePath()
                .normalize()
                .relativize(folder.resolve(file).toAbsolutePath().normalize())
                .toString()
                .replace('\\', '/');
    }

    /** Returns what is said about a piece. */
    public Optional<JobPiece> piece(String name) {
        return pieces.stream().filter(piece -> piece.name().equals(name)).findFirst();
    }
}
