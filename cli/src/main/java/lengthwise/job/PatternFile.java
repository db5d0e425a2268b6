package lengthwise.job;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawingException;
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
     * @throws DrawingException if the file cannot be read, with its place and what to do
     */
    public static PatternDrawing read(Path file, ScaleStatement scale) throws DrawingException {
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".dxf")) {
            return DxfPattern.read(file, scale);
        }
        return name.endsWith(".pdf") ? PdfPattern.read(file, scale, Optional.empty()) : SvgPattern.read(file, scale);
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
