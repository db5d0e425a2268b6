package lengthwise.dxf;

import java.nio.file.Path;
import java.util.OptionalDouble;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.Recognition;
import lengthwise.drawing.ScaleStatement;

/** Reads pattern pieces from an ASCII DXF file of any release. */
public final class DxfPattern {
    private DxfPattern() {}

    /**
     * Reads a file and recognises its pieces.
     *
     * @throws DrawingException if the file cannot be read as a DXF drawing, is hostile, or its scale box does not measure
     *     what it should
     */
    public static PatternDrawing read(Path file, ScaleStatement scale) throws DrawingException {
        return read(DxfFile.read(file), scale);
    }

    /**
     * Recognises the pieces of a drawing that stands in no file.
     *
     * @param name what complaints call it
     * @throws DrawingException likewise
     */
    public static PatternDrawing read(String name, byte[] dxf, ScaleStatement scale) throws DrawingException {
        return read(DxfFile.read(name, dxf), scale);
    }

    private static PatternDrawing read(DxfFile file, ScaleStatement scale) throws DrawingException {
        Drawing drawing = new DxfReader(file, scale.millimetresPerUnit()).draw();
        OptionalDouble byScaleBox = Recognition.millimetresPerUnit(drawing, scale);
        // Curves are flattened at the true scale, so the file is drawn again rather than enlarged.
        return Recognition.of(byScaleBox.isPresent() ? new DxfReader(file, byScaleBox).draw() : drawing, scale);
    }
}
