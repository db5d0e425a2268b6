package lengthwise.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.model.Size;

/** Every piece of a job's drawings, to be found by name and size. */
final class PatternBook {
    private final List<Page> pages;

    private PatternBook(List<Page> pages) {
        this.pages = pages;
    }

    /**
     * A drawn piece, the drawing it comes from, and the size it is drawn in, if any.
     *
     * @param leftAndRight whether its mirror image is drawn beside it under the same name
     */
    record Page(JobDrawing drawing, DrawnPiece piece, Optional<String> size, boolean leftAndRight) {}

    /**
     * Reads a job's drawings.
     *
     * @param folder what the drawings' paths are relative to
     * @param complaints words what is wrong with one of them
     * @param warnings gets what the drawings' readers warn of
     * @throws JobException if a drawing is missing or unreadable, states no scale, or draws a piece twice in one size
     */
    static PatternBook read(Job job, Path folder, Orders.Complaints complaints, List<String> warnings)
            throws JobException {
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < job.drawings().size(); i++) {
            try {
                pages.addAll(pages(job, job.drawings().get(i), folder, warnings));
            } catch (JobException unusable) {
                throw complaints.at("drawings[" + (i + 1) + "]", String.valueOf(unusable.getMessage()));
            }
        }
        PatternBook book = new PatternBook(List.copyOf(pages));
        book.refuseDoubles();
        return book;
    }

    private static List<Page> pages(Job job, JobDrawing drawing, Path folder, List<String> warnings)
            throws JobException {
        Path file = folder.resolve(drawing.file()).normalize();
        if (!Files.isRegularFile(file)) {
            throw new JobException("%s: there is no such drawing (looked in %s)."
                    .formatted(drawing.file(), folder.toAbsolutePath().normalize()));
        }
        PatternDrawing read = read(drawing, file);
        if (!read.scaleStated()) {
            throw new JobException(("%s does not state its size: draw a square of known size in it and say scale-box:"
                            + " {id: …, measures: 10 cm}, or say what one of its units measures, such as drawing-unit: 1 mm or"
                            + " drawing-unit: 1 in.")
                    .formatted(drawing.file()));
        }
        if (!read.uncuttable().isEmpty()) {
            throw new JobException("%s: %s Mend the drawing."
                    .formatted(drawing.file(), read.uncuttable().get(0)));
        }
        if (read.pieces().isEmpty()) {
            throw new JobException("%s holds no closed outline to cut. %s"
                    .formatted(drawing.file(), String.join(" ", read.leftOut())));
        }
        read.warnings().forEach(warning -> warnings.add(drawing.file() + ": " + warning));
        return read.pieces().stream()
                .filter(piece -> !piece.mirrored())
                .map(piece -> new Page(drawing, piece, size(job, drawing, piece), hasMirrorImage(piece, read.pieces())))
                .toList();
    }

    private static boolean hasMirrorImage(DrawnPiece piece, List<DrawnPiece> all) {
        return all.stream()
                .anyMatch(other -> other.mirrored()
                        && other.name().equals(piece.name())
                        && other.size().equals(piece.size()));
    }

    private static PatternDrawing read(JobDrawing drawing, Path file) throws JobException {
        try {
            return PatternFile.read(file, drawing.scale(), drawing.tiles());
        } catch (DrawingException unreadable) {
            throw new JobException(String.valueOf(unreadable.getMessage()));
        }
    }

    private static Optional<String> size(Job job, JobDrawing drawing, DrawnPiece piece) {
        return piece.size().or(drawing::size).or(() -> sizeInFileName(job, drawing.file()));
    }

    /** A file named as a size of the order is that size: top-M.svg, "top M.svg". */
    private static Optional<String> sizeInFileName(Job job, String file) {
        String stem = file.replaceAll(".*[/\\\\]", "").replaceAll("\\.[^.]*$", "");
        return job.order().stream()
                .map(line -> line.size().name())
                .filter(size -> !size.isEmpty()
                        && Pattern.compile("(^|[-_ .])" + Pattern.quote(size) + "$", Pattern.CASE_INSENSITIVE)
                                .matcher(stem)
                                .find())
                .findFirst();
    }

    private void refuseDoubles() throws JobException {
        Set<String> seen = new LinkedHashSet<>();
        for (Page page : pages) {
            String key = page.piece().name() + "\n" + page.size().orElse("");
            if (!seen.add(key)) {
                throw new JobException(
                        "%s is drawn twice%s (the second time in %s). Give every piece a name of its own, and every size a layer or a file."
                                .formatted(
                                        page.piece().name(),
                                        page.size()
                                                .map(size -> " in size " + size)
                                                .orElse(""),
                                        page.drawing().file()));
            }
        }
    }

    /** Returns the names of the drawn pieces, in the order of the drawings. */
    List<String> names() {
        return pages.stream().map(page -> page.piece().name()).distinct().toList();
    }

    /** Returns all pages of a piece. */
    List<Page> pages(String name) {
        return pages.stream().filter(page -> page.piece().name().equals(name)).toList();
    }

    /**
     * Returns the page of a piece in a size; a piece drawn in no size serves every size.
     *
     * @throws JobException if it is not drawn in that size
     */
    Page page(String name, Size size) throws JobException {
        List<Page> all = pages(name);
        Optional<Page> found = all.stream()
                .filter(page -> page.size().map(s -> same(s, size.name())).orElse(false))
                .findFirst()
                .or(() -> all.stream().filter(page -> page.size().isEmpty()).findFirst())
                .or(() -> size.equals(Size.ONE) && all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty());
        return found.orElseThrow(() -> new JobException("%s is not drawn in size %s; it is drawn in %s."
                .formatted(
                        name,
                        size.name().isEmpty() ? "(none: the order names no size)" : size.name(),
                        String.join(
                                ", ",
                                all.stream()
                                        .flatMap(page -> page.size().stream())
                                        .toList()))));
    }

    private static boolean same(String a, String b) {
        return a.strip().toLowerCase(Locale.ROOT).equals(b.strip().toLowerCase(Locale.ROOT));
    }
}
