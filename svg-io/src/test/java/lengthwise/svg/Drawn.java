package lengthwise.svg;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.model.Length;

/** Drawings made of text, for tests. */
final class Drawn {
    private Drawn() {}

    /** Returns a page of 400 × 300 mm, one unit a millimetre, with this content. */
    static String page(String content) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\""
                + " xmlns:inkscape=\"http://www.inkscape.org/namespaces/inkscape\""
                + " width=\"400mm\" height=\"300mm\" viewBox=\"0 0 400 300\" fill=\"none\" stroke=\"#000\">\n"
                + "<defs><marker id=\"head\" orient=\"auto\" refX=\"7\" refY=\"2.5\"><path d=\"M0 0 L7 2.5 L0 5 Z\"/></marker>"
                + "<marker id=\"both\" orient=\"auto-start-reverse\"><path d=\"M0 0 L7 2.5 L0 5\"/></marker>"
                + "<marker id=\"dot\" orient=\"auto\"><circle r=\"3\"/></marker></defs>\n" + content + "\n</svg>";
    }

    static PatternDrawing read(String svg) throws DrawingException {
        return read(svg, ScaleStatement.NONE);
    }

    static PatternDrawing read(String svg, ScaleStatement scale) throws DrawingException {
        return read(svg.getBytes(StandardCharsets.UTF_8), scale);
    }

    static PatternDrawing read(byte[] bytes, ScaleStatement scale) throws DrawingException {
        try {
            Path file = Files.createTempFile("drawn", ".svg");
            try {
                Files.write(file, bytes);
                return SvgPattern.read(file, scale);
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Reads a page and returns the only piece on it. */
    static DrawnPiece piece(String content) throws DrawingException {
        PatternDrawing drawing = read(page(content));
        if (drawing.pieces().size() != 1) {
            throw new AssertionError("not one piece but " + drawing);
        }
        return drawing.pieces().get(0);
    }

    static ScaleStatement box(String id, double millimetres) {
        return new ScaleStatement(
                OptionalDouble.empty(),
                Optional.of(new ScaleStatement.ScaleBox(id, Length.ofMillimetres(millimetres))));
    }
}
