package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import lengthwise.svg.MarkerPainting;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The page for a projector, and paper pieces. */
class OtherPrintsTest {
    private static final MarkerPainting SMALL = Sheets.painting(SampleMarkers.singleLayer());

    @Test
    void theProjectorPageIsOnePageOfTheWholeClothInLayers() throws IOException {
        Printed printed = ProjectorPrint.of(SMALL, false);
        assertThat(printed.pages()).isEqualTo(1);
        try (PDDocument document = Sheets.open(printed)) {
            var page = document.getPage(0).getMediaBox();
            // The cloth of 910 × 1240 mm, its lettering and the air round it.
            assertThat(page.getWidth() * 25.4 / 72).isBetween(910.0, 960.0);
            assertThat(page.getHeight() * 25.4 / 72).isBetween(1240.0, 1310.0);
            assertThat(document.getDocumentCatalog().getOCProperties().getGroupNames())
                    .containsExactly("grid of 10 cm", "cloth", "size M", "size S");
        }
    }

    @Test
    void theProjectorPageIsBlackOnWhiteWithThickLines() throws IOException {
        double dots = 4;
        try (PDDocument document = Sheets.open(ProjectorPrint.of(SMALL, false))) {
            BufferedImage page = Sheets.seen(document, 0, dots);
            int thick = 0;
            int tinted = 0;
            int row = page.getHeight() * 2 / 3;
            int run = 0;
            for (int x = 0; x < page.getWidth(); x++) {
                int dot = page.getRGB(x, row);
                tinted += Math.abs(Sheets.red(dot) - Sheets.blue(dot)) > 30 ? 1 : 0;
                run = Sheets.isDark(dot) ? run + 1 : 0;
                thick += run == dots ? 1 : 0;
            }
            assertThat(thick).as("lines of a millimetre and more").isGreaterThan(10);
            assertThat(tinted).isZero();
        }
    }

    @Test
    void everyPieceIsThereOncePerSizeAndFitsItsPages() throws IOException {
        Printed printed = PiecePrint.of(SMALL, Sheets.on("A3"));
        try (PDDocument document = Sheets.open(printed)) {
            PDFTextStripper stripper = new PDFTextStripper();
            String text = stripper.getText(document);
            for (String piece : new String[] {"cup", "brief-back", "neck-tie", "tab"}) {
                assertThat(text).contains(piece + " · size S", piece + " · size M");
            }
            // Two garments of size S with a left and a right cup each.
            assertThat(text).contains("4 times: 2 L, 2 R");
            int read = printed.pages() - printed.sheets();
            stripper.setStartPage(read + 1);
            assertThat(stripper.getText(document)).contains("cup · size S").doesNotContain("garment");
            assertThat(document.getPage(read).getMediaBox().getWidth() * 25.4 / 72)
                    .satisfiesAnyOf(
                            w -> assertThat(w).isCloseTo(297, within(0.01)),
                            w -> assertThat(w).isCloseTo(420, within(0.01)));
        }
        // 8 pieces; a tie of 450 mm is longer than the 396 mm of an A3 sheet, the larger back of 275 mm wider than its
        // 273.
        assertThat(printed.sheets()).isEqualTo(8 + 2 + 1);
    }

    /** On the marker a half piece lies along the fold of the cloth; alone on paper it must say so. */
    @Test
    void aPieceOnTheFoldSaysWhichEdgeThatIs() throws IOException {
        Printed printed = PiecePrint.of(Sheets.painting(SampleMarkers.folded()), Sheets.on("A3"));
        try (PDDocument document = Sheets.open(printed)) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text).contains("brief-back · on fold", "this edge on the fold", "cup · L + R");
            BufferedImage page = Sheets.seen(document, printed.pages() - printed.sheets() + order(text), 4);
            int thick = 0;
            for (int y = 0; y + 4 < page.getHeight(); y++) {
                int run = 0;
                for (int x = 0; x < page.getWidth(); x++) {
                    boolean dark = Sheets.isDark(page.getRGB(x, y)) && Sheets.isDark(page.getRGB(x, y + 3));
                    run = dark ? run + 1 : 0;
                    // A dash of 14 mm, more than 0.75 mm thick.
                    thick += run == 13 * 4 ? 1 : 0;
                }
            }
            assertThat(thick).as("thick dashes along the fold").isGreaterThan(5);
        }
    }

    /** Which page of the pieces shows the back: every piece here fits its page. */
    private static int order(String text) {
        return text.indexOf("1 of 3: brief-back") >= 0 ? 0 : text.indexOf("2 of 3: brief-back") >= 0 ? 1 : 2;
    }
}
