package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import lengthwise.testing.OutsideReader;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** A page of ours as Chromium prints it and PDFBox reads it back. */
final class PrintedPages implements AutoCloseable {
    /** A sheet, in millimetres: ISO 216, and ANSI/ASME Y14.1 for letter. */
    enum Paper {
        A4(210, 297),
        LETTER(215.9, 279.4);

        final double width;
        final double height;

        Paper(double width, double height) {
            this.width = width;
            this.height = height;
        }
    }

    /** A glyph on a page, in millimetres from its upper left corner; {@code points} is the size it is printed at. */
    record Glyph(String text, double left, double right, double bottom, double points) {}

    /** Unicode's Latin ligatures, ff to st. */
    private static final Pattern LIGATURE = Pattern.compile("[\\x{FB00}-\\x{FB06}]");

    private final PDDocument document;

    private PrintedPages(PDDocument document) {
        this.document = document;
    }

    static PrintedPages of(String html, Paper paper, Path folder) throws IOException, InterruptedException {
        Path page = Files.writeString(
                folder.resolve("page.html"),
                html.replace(
                        "</head>",
                        "<style>@page { size: %smm %smm; }</style></head>".formatted(paper.width, paper.height)));
        Path pdf = folder.resolve("page.pdf");
        List<String> said = OutsideReader.CHROMIUM.says(
                "--user-data-dir=" + folder.resolve("browser"),
                "--no-pdf-header-footer",
                "--print-to-pdf=" + pdf,
                page.toUri().toString());
        assertThat(pdf).as(String.join("\n", said)).isRegularFile();
        return new PrintedPages(Loader.loadPDF(pdf.toFile()));
    }

    int count() {
        return document.getNumberOfPages();
    }

    double widthMm(int page) {
        return document.getPage(page).getMediaBox().getWidth() * 25.4 / 72;
    }

    double heightMm(int page) {
        return document.getPage(page).getMediaBox().getHeight() * 25.4 / 72;
    }

    BufferedImage grey(int page, int dotsPerInch) throws IOException {
        return new PDFRenderer(document).renderImageWithDPI(page, dotsPerInch, ImageType.GRAY);
    }

    /** The value as printed; what Java calls the colour of a grey pixel is lighter. */
    static int value(BufferedImage grey, int x, int y) {
        return grey.getRaster().getSample(x, y, 0);
    }

    /** Returns what is written on each page, in the order in which it is painted, without blanks. */
    List<String> texts() {
        return IntStream.range(0, count())
                .mapToObj(page -> {
                    StringBuilder text = new StringBuilder();
                    glyphs(page).forEach(glyph -> text.append(glyph.text));
                    return compact(text.toString());
                })
                .toList();
    }

    /** Without blanks, and ligatures as their letters (Unicode's form KC): whether a browser names a ligature is its own. */
    static String compact(String text) {
        return LIGATURE.matcher(text.replaceAll("\\s", ""))
                .replaceAll(found -> Normalizer.normalize(found.group(), Normalizer.Form.NFKC));
    }

    List<Glyph> glyphs(int page) {
        List<Glyph> glyphs = new ArrayList<>();
        try {
            PDFTextStripper reader = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition at) {
                    double mm = 25.4 / 72;
                    glyphs.add(new Glyph(
                            at.getUnicode(),
                            at.getX() * mm,
                            (at.getX() + (at.getDir() == 0 ? at.getWidthDirAdj() : 0)) * mm,
                            at.getY() * mm,
                            at.getDir() == 0 ? at.getYScale() : 0));
                }
            };
            reader.setStartPage(page + 1);
            reader.setEndPage(page + 1);
            reader.writeText(document, new OutputStreamWriter(new ByteArrayOutputStream(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return glyphs;
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
