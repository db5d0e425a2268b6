package lengthwise.svg;

import java.nio.charset.StandardCharsets;
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
        return read(file.toString(), SafeXml.read(file), scale);
    }

    /**
     * Recognises the pieces of a drawing that stands in no file.
     *
     * @param name what complaints call it
     * @throws DrawingException likewise
     */
    public static PatternDrawing read(String name, String svg, ScaleStatement scale) throws DrawingException {
        return read(name, SafeXml.read(name, svg.getBytes(StandardCharsets.UTF_8)), scale);
    }

    private static PatternDrawing read(String name, SafeXml.Read source, ScaleStatement scale) throws DrawingException {
        SvgReader reader = new SvgReader(name, source);
        Drawing drawing = reader.draw(scale.millimetresPerUnit());
        OptionalDouble byScaleBox = Recognition.millimetresPerUnit(drawing, scale);
        // Curves are flattened at the true scale, so the file is drawn again rather than enlarged.
        return Recognition.of(byScaleBox.isPresent() ? reader.draw(byScaleBox) : drawing, scale);
    }
}
