package lengthwise.job;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.dxf.DxfPattern;
import lengthwise.pdf.PdfPattern;
import lengthwise.svg.SvgPattern;

/** Reads a pattern drawing of any kind: DXF or PDF if its name ends so, else SVG. */
public final class PatternFile {
    private PatternFile() {}

    /**
     * Reads a file and recognises its pieces.
     *
     * @param tiles how its pages are laid to make one drawing, where said
     * @throws DrawingException if the file cannot be read, with its place and what to do
     */
    public static PatternDrawing read(Path file, ScaleStatement scale, Optional<PageGrid> tiles)
            throws DrawingException {
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".pdf")) {
            return PdfPattern.read(file, scale, tiles);
        }
        if (tiles.isPresent()) {
            throw new DrawingException(file + " is one drawing; tiles are said of a PDF of several pages.");
        }
        return name.endsWith(".dxf") ? DxfPattern.read(file, scale) : SvgPattern.read(file, scale);
    }

    /**
     * Returns the scale of drawings one unit of which measures a length, as {@code drawing-unit} says in a job.
     *
     * @throws JobException if that is no such length
     */
    public static ScaleStatement scale(String unit) throws JobException {
        return new ScaleStatement(
                OptionalDouble.of(Measuring.millimetresPerUnit(unit, Optional.empty())), Optional.empty());
    }
}
