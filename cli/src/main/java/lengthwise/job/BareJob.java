package lengthwise.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.ScaleStatement;
import lengthwise.model.Direction;
import lengthwise.model.Length;
import lengthwise.model.Size;

/**
 * Fills a job from bare drawings and what the command line says: counts and "on fold" come from the drawings' own
 * lettering, sizes from their layers. What cannot be assumed is asked when the orders are worked out.
 */
public final class BareJob {
    /** The words for the outer cloth; one job has one of them. */
    private static final List<String> SHELL_WORDS = Lettering.ROLE_WORDS.subList(0, 4);

    private static final List<String> OTHER_WORDS = Lettering.ROLE_WORDS.subList(4, Lettering.ROLE_WORDS.size());

    private BareJob() {}

    /**
     * What the maker says beside the drawings.
     *
     * @param width of every cloth, from selvedge to selvedge
     * @param sizes to make; empty: every size that is drawn
     * @param make garments of each size
     * @param scale of the drawings
     * @param tiles how the pages of each drawing are laid
     */
    public record Wishes(
            Length width,
            Optional<Direction> direction,
            List<String> sizes,
            int make,
            ScaleStatement scale,
            Optional<PageGrid> tiles) {
        public Wishes {
            sizes = List.copyOf(sizes);
        }

        /** Drawings that state their scale themselves. */
        public Wishes(Length width, Optional<Direction> direction, List<String> sizes, int make) {
            this(width, direction, sizes, make, ScaleStatement.NONE, Optional.empty());
        }
    }

    /**
     * Returns the job.
     *
     * @param drawings their files
     * @param folder the folder that the job file will lie in; paths are made relative to it
     * @throws JobException if a drawing cannot be read
     */
    public static Job of(List<Path> drawings, Path folder, Wishes wishes) throws JobException {
        if (wishes.width().micrometres() <= 0 || wishes.width().compareTo(FabricReading.WIDEST) > 0) {
            throw new JobException(
                    "The cloth cannot be %s wide; say how wide it is from selvedge to selvedge, such as 150 cm."
                            .formatted(LengthText.print(wishes.width(), LengthUnit.CM)));
        }
        List<DrawnPiece> pieces = new ArrayList<>();
        List<JobDrawing> jobDrawings = new ArrayList<>();
        for (Path drawing : drawings) {
            try {
                pieces.addAll(PatternFile.read(drawing, wishes.scale(), wishes.tiles())
                        .pieces());
            } catch (DrawingException unreadable) {
                throw new JobException(String.valueOf(unreadable.getMessage()));
            }
            jobDrawings.add(new JobDrawing(relative(folder, drawing), wishes.scale(), wishes.tiles()));
        }
        List<String> roles = roles(pieces);
        List<JobFabric> fabrics =
                roles.stream().map(role -> fabric(role, wishes)).toList();
        String title = drawings.get(0).getFileName().toString().replaceAll("\\.[^.]*$", "");
        return new Job(
                title,
                Optional.empty(),
                jobDrawings,
                fabrics,
                lettered(pieces, roles),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                order(pieces, wishes),
                Optional.empty(),
                JobSewing.UNSAID);
    }

    /** No path leads from one root to another, as between two drives: then the drawing is named by its whole path. */
    static String relative(Path folder, Path drawing) {
        Path from = folder.toAbsolutePath().normalize();
        Path to = drawing.toAbsolutePath().normalize();
        Path path = Objects.equals(from.getRoot(), to.getRoot()) ? from.relativize(to) : to;
        return path.toString().replace(to.getFileSystem().getSeparator(), "/");
    }

    private static List<String> roles(List<DrawnPiece> pieces) {
        Set<String> found = new LinkedHashSet<>();
        for (List<String> words : List.of(SHELL_WORDS, OTHER_WORDS)) {
            for (DrawnPiece piece : pieces) {
                Lettering.cuts(piece.lettering(), words)
                        .forEach(cut -> cut.role().ifPresent(found::add));
            }
            if (found.isEmpty()) {
                found.add("cloth");
            }
        }
        return List.copyOf(found);
    }

    private static JobFabric fabric(String role, Wishes wishes) {
        return new JobFabric(
                role,
                role,
                wishes.width(),
                Optional.empty(),
                wishes.direction(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                JobSpread.UNSAID,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    /** Pieces with lettered cuts; the others are left to be assumed, and said, or asked about. */
    private static List<JobPiece> lettered(List<DrawnPiece> pieces, List<String> roles) {
        List<JobPiece> said = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (DrawnPiece piece : pieces) {
            List<CutRequest> cuts = Lettering.cuts(piece.lettering(), roles).stream()
                    .map(cut -> new CutRequest(cut.role().orElse(roles.get(0)), cut.count(), cut.manner()))
                    .toList();
            boolean once = cuts.stream().map(CutRequest::role).distinct().count() == cuts.size();
            if (!cuts.isEmpty() && once && seen.add(piece.name())) {
                said.add(new JobPiece(
                        piece.name(),
                        cuts,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()));
            }
        }
        return said;
    }

    private static List<OrderLine> order(List<DrawnPiece> pieces, Wishes wishes) {
        List<String> sizes = wishes.sizes().isEmpty()
                ? pieces.stream()
                        .flatMap(piece -> piece.size().stream())
                        .filter(size -> !size.isBlank())
                        .distinct()
                        .toList()
                : wishes.sizes();
        if (sizes.isEmpty()) {
            return List.of(new OrderLine(Size.ONE, wishes.make(), List.of()));
        }
        return sizes.stream()
                .map(size -> new OrderLine(new Size(size), wishes.make(), List.of()))
                .toList();
    }
}
