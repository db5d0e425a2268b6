package lengthwise.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import lengthwise.drawing.Painted;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentGroup;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentProperties;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.jspecify.annotations.Nullable;

/**
 * A document in the making: pages of true size, and a wish in it that printers neither scale them nor print on both
 * sides. The same pages give the same bytes.
 */
final class Book implements AutoCloseable {
    /** The longest side of a page that every reader takes (ISO 32000-1, annex C: 14 400 units of 1/72 inch). */
    static final Length LONGEST_SIDE = new Length(5_080_000);

    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

    private final PDDocument document = new PDDocument();
    private final Typeface typeface;
    private @Nullable Canvas open;

    Book(String title) throws IOException {
        typeface = new Typeface(document);
        document.setVersion(1.7f);
        document.setDocumentId(1L);
        document.getDocumentInformation().setTitle(title);
        document.getDocumentInformation().setCreator("Lengthwise");
        PDViewerPreferences wishes = new PDViewerPreferences(new COSDictionary());
        wishes.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        wishes.setDuplex(PDViewerPreferences.DUPLEX.Simplex);
        document.getDocumentCatalog().setViewerPreferences(wishes);
    }

    /** Adds a page, to be painted before the next one; the origin is its upper left corner. */
    Canvas page(Length width, Length height) throws IOException {
        return page(width, height, 1);
    }

    /** Adds a page measured in units of so many points, for pages longer than {@link #LONGEST_SIDE}. */
    Canvas page(Length width, Length height, int unit) throws IOException {
        finishPage();
        double scale = POINTS_PER_MILLIMETRE / unit;
        PDPage page = new PDPage(
                new PDRectangle((float) (width.millimetres() * scale), (float) (height.millimetres() * scale)));
        if (unit > 1) {
            page.setUserUnit(unit);
        }
        document.addPage(page);
        page.setContents(millimetres(scale, height.millimetres() * scale));
        PDPageContentStream out = new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true);
        open = new Canvas(out, typeface);
        return open;
    }

    /** The library writes numbers with five decimals, which is 25 µm on 12 m for this one. */
    private PDStream millimetres(double scale, double height) throws IOException {
        String matrix = String.format(Locale.ROOT, "%.10f 0 0 %.10f 0 %.10f cm\n", scale, -scale, height);
        return new PDStream(document, new ByteArrayInputStream(matrix.getBytes(StandardCharsets.US_ASCII)));
    }

    /** Says in the page itself where it lies in what is printed on several. */
    void place(int drawing, double x, double y) {
        PagePlace place = new PagePlace(drawing, new Point(Math.round(x * 1000), Math.round(y * 1000)));
        place.write(document.getPage(document.getNumberOfPages() - 1).getCOSObject());
    }

    private void finishPage() throws IOException {
        if (open != null) {
            open.close();
            open = null;
        }
    }

    /** What paints a canvas. */
    interface Painter {
        void paint(Canvas canvas) throws IOException;
    }

    /** Returns something that is painted on several pages and stored once. */
    PDFormXObject form(Extent extent, Painter painter) throws IOException {
        PDAppearanceStream stream = new PDAppearanceStream(document);
        stream.setResources(new PDResources());
        stream.setBBox(new PDRectangle(
                (float) extent.minX(), (float) extent.minY(), (float) extent.width(), (float) extent.height()));
        try (Canvas canvas = new Canvas(
                new PDPageContentStream(document, stream, stream.getStream().createOutputStream(COSName.FLATE_DECODE)),
                typeface)) {
            painter.paint(canvas);
        }
        return stream;
    }

    /** Adds what a reader can switch on and off. */
    PDOptionalContentGroup layer(String name) {
        PDOptionalContentProperties layers = document.getDocumentCatalog().getOCProperties();
        if (layers == null) {
            layers = new PDOptionalContentProperties();
            document.getDocumentCatalog().setOCProperties(layers);
        }
        PDOptionalContentGroup layer = new PDOptionalContentGroup(name);
        layers.addGroup(layer);
        return layer;
    }

    /** Returns the room that something takes, words included. */
    Extent extent(Iterable<? extends Painted> all) throws IOException {
        Extent.Around around = new Extent.Around();
        for (Painted one : all) {
            around.add(one, typeface);
        }
        return around.extent();
    }

    double width(String words, double size) throws IOException {
        return typeface.width(typeface.shown(words)) * size;
    }

    int pages() {
        return document.getNumberOfPages();
    }

    Set<String> missingLetters() {
        return typeface.missing();
    }

    byte[] bytes() throws IOException {
        finishPage();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        document.save(bytes);
        return bytes.toByteArray();
    }

    @Override
    public void close() throws IOException {
        finishPage();
        document.close();
    }
}
