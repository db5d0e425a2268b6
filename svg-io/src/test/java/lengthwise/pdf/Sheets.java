package lengthwise.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lengthwise.drawing.DrawingException;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerPainting;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Markers as they come from files, and prints as a reader shows them. */
final class Sheets {
    static final MarkerNotes NOTES =
            new MarkerNotes("Plover set", "Lengthwise test", "1 m", List.of("Seam allowance is included."), List.of());

    private Sheets() {}

    static MarkerPainting painting(Marker marker) {
        return painting(MarkerSvg.of(marker, NOTES));
    }

    static MarkerPainting painting(String svg) {
        try {
            Path file = Files.createTempFile("marker", ".svg");
            try {
                return MarkerSvgReader.painting(Files.writeString(file, svg));
            } finally {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (DrawingException e) {
            throw new IllegalStateException(e);
        }
    }

    static PageSetup on(Paper paper) {
        return new PageSetup(paper, PageSetup.USUAL_MARGIN, PageSetup.USUAL_OVERLAP, false);
    }

    static PageSetup on(String paper) {
        return on(Paper.named(paper).orElseThrow());
    }

    static Paper roll(double millimetres) {
        return Paper.roll(Length.ofMillimetres(millimetres));
    }

    static PDDocument open(Printed printed) throws IOException {
        return Loader.loadPDF(printed.bytes());
    }

    /** A page in colour, with so many picture elements to the millimetre. */
    static BufferedImage seen(PDDocument document, int page, double perMillimetre) throws IOException {
        return new PDFRenderer(document).renderImageWithDPI(page, (float) (perMillimetre * 25.4), ImageType.RGB);
    }

    static int red(int rgb) {
        return rgb >> 16 & 0xff;
    }

    static int green(int rgb) {
        return rgb >> 8 & 0xff;
    }

    static int blue(int rgb) {
        return rgb & 0xff;
    }

    /** Black or nearly so; neither grey nor blue. */
    static boolean isDark(int rgb) {
        return green(rgb) < 110 && blue(rgb) - red(rgb) < 40;
    }
}
