package lengthwise.pdf;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.Recognition;
import lengthwise.drawing.ScaleStatement;

/** Reads pattern pieces from the lines and lettering of a PDF file. */
public final class PdfPattern {
    private PdfPattern() {}

    /**
     * Reads a file and recognises its pieces.
     *
     * @param grid how its pages are laid to make one drawing; where not said, each page stands alone, but for pages that
     *     say themselves where they lie
     * @throws DrawingException if the file cannot be read as a PDF, is locked, damaged or hostile, its pages do not fit
     *     together, or its scale box does not measure what it should
     */
    public static PatternDrawing read(Path file, ScaleStatement scale, Optional<PageGrid> grid)
            throws DrawingException {
        return read(file.toString(), PdfFile.bytes(file), scale, grid);
    }

    /**
     * Recognises the pieces of a drawing that stands in no file.
     *
     * @param name what complaints call it
     * @throws DrawingException likewise
     */
    public static PatternDrawing read(String name, byte[] pdf, ScaleStatement scale, Optional<PageGrid> grid)
            throws DrawingException {
        return Recognition.of(draw(name, pdf, scale.millimetresPerUnit(), grid), scale);
    }

    static Drawing draw(String name, byte[] pdf, OptionalDouble millimetresPerUnit, Optional<PageGrid> grid)
            throws DrawingException {
        try (PdfFile file = PdfFile.open(name, pdf)) {
            return new PdfReader(file, millimetresPerUnit, grid).draw();
        } catch (StackOverflowError | OutOfMemoryError | RuntimeException e) {
            // The library takes files apart as they come; what it cannot is no pattern.
            throw new DrawingException(name + " is damaged or made to be slow; export the pattern again.", e);
        }
    }
}
