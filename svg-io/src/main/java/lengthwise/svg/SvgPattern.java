package lengthwise.svg;

import java.nio.file.Path;
import java.util.OptionalDouble;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.Recognition;
import lengthwise.drawing.ScaleStatement;

/** Reads pattern pieces from an SVG file, plain or gzip-compressed. */
public final class SvgPattern {
    private SvgPattern() {}

    /**
     * Reads a file and recognises its pieces.
     *
     * @throws DrawingException if the file cannot be read as an SVG drawing, is hostile, or its scale box does not
     *     measure what it should
     */
    public static PatternDrawing read(Path file, ScaleStatement scale) throws DrawingException {
        SvgReader reader = new SvgReader(file.toString(), SafeXml.read(file));
        Drawing drawing = reader.draw(scale.millimetresPerUnit());
        OptionalDouble byScaleBox = Recognition.millimetresPerUnit(drawing, scale);
        // Curves are flattened at the true scale, so the file is drawn again rather than enlarged.
        return Recognition.of(byScaleBox.isPresent() ? reader.draw(byScaleBox) : drawing, scale);
    }
}
