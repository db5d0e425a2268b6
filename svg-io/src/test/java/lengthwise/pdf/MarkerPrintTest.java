package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import lengthwise.drawing.Painted;
import lengthwise.svg.MarkerPainting;
import lengthwise.svg.MarkerSvg;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MarkerPrintTest {
    private static final MarkerPainting SMALL = Sheets.painting(SampleMarkers.singleLayer());

    private static String text(Printed printed, int from, int to) throws IOException {
        try (PDDocument document = Sheets.open(printed)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(from);
            stripper.setEndPage(to);
            return stripper.getText(document);
        }
    }

    @Test
    void theFirstPagesSayHowToPrintAndWhereEveryPieceIs() throws IOException {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on("A4"));
        int read = printed.pages() - printed.sheets();
        assertThat(text(printed, 1, 1))
                .contains("4 in", "10 cm", "101.6 mm", "100 %", "reef-print", "Plover set", "Blades");
        String map = text(printed, 2, read);
        assertThat(map).contains("Map of the sheets", "cup", "brief-back", "neck-tie");
        // What the marker says beside the cloth is not lost, its assumptions above all.
        assertThat(map).contains("Seam allowance is included.", "Cuttable width", "RIGHT SIDE UP");
    }

    @Test
    void everySheetIsNamedAndSaysWhatItBelongsTo() throws IOException {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on("A4"));
        int read = printed.pages() - printed.sheets();
        // Words that run down the sheet are read letter by letter.
        String first = text(printed, read + 1, read + 1).replaceAll("\\s", "");
        assertThat(first).contains("A1", "A2", "B1", "reef-print", "sheet1of" + printed.sheets());
        assertThat(text(printed, printed.pages(), printed.pages()))
                .contains("sheet %s of %s".formatted(printed.sheets(), printed.sheets()));
    }

    /** Between cups that lie metres apart there is nothing to cut. */
    @Test
    void sheetsWithNothingToCutAreLeftOutAndSaid() throws IOException {
        Printed printed = MarkerPrint.of(Sheets.painting(SampleMarkers.farApart(4000)), Sheets.on("A3"));
        assertThat(printed.sheets() + printed.leftOut().size()).isEqualTo(printed.columns() * printed.rows());
        assertThat(printed.leftOut())
                .hasSizeGreaterThan(printed.sheets())
                .contains("A4", "D5")
                .doesNotContain("A1");
        int read = printed.pages() - printed.sheets();
        assertThat(text(printed, 1, read)).contains("Left out", "D5");
        assertThat(text(printed, read + 1, printed.pages())).doesNotContain("D5");
    }

    @ParameterizedTest
    @ValueSource(strings = {"A4", "Letter", "A3"})
    void everyNotchIsWholeOnSomeSheet(String paper) throws IOException {
        PageSetup setup = Sheets.on(paper);
        Extent extent;
        try (Book book = new Book("")) {
            extent = book.extent(MarkerPrint.drawing(SMALL)).grown(1);
        }
        Tiles tiles = new Tiles(setup, extent, cell -> true);
        List<Extent> notches = new ArrayList<>();
        SMALL.pieces()
                .forEach(piece -> piece.forEach(one -> {
                    if (one instanceof Painted.Path path && path.mark().equals("notch")) {
                        path.chains()
                                .forEach(chain -> notches.add(Extent.of(new Painted.Path(
                                        List.of(chain), path.fill(), path.line(), List.of(), "notch"))));
                    }
                }));
        assertThat(notches).hasSize(9); // one on every cup and back
        for (Extent notch : notches) {
            assertThat(tiles.tiles().stream().map(tiles::shown))
                    .anyMatch(cell -> cell.minX() <= notch.minX()
                            && cell.minY() <= notch.minY()
                            && cell.maxX() >= notch.maxX()
                            && cell.maxY() >= notch.maxY());
        }
    }

    @Test
    void sixtyPagesStaySmallBecauseTheDrawingIsStoredOnce() throws IOException {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on("A4"));
        assertThat(printed.pages()).isGreaterThan(25);
        Printed more = MarkerPrint.of(Sheets.painting(SampleMarkers.farApart(6000)), Sheets.on("A4"));
        assertThat(printed.bytes().length + more.bytes().length).isLessThan(2_000_000);
    }

    @Test
    void theSameMarkerGivesTheSameBytesInEveryLanguage() throws IOException {
        byte[] here = MarkerPrint.of(SMALL, Sheets.on("A4")).bytes();
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(MarkerPrint.of(SMALL, Sheets.on("A4")).bytes()).isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void lettersOfManyKindsAreShownAndMissingOnesAreSeen() throws IOException {
        String svg = MarkerSvg.of(SampleMarkers.singleLayer(), Sheets.NOTES)
                .replace(">cup<", ">Körbchen чашка κύπελλο<")
                .replace("data-piece=\"cup\"", "data-piece=\"Körbchen чашка κύπελλο\"")
                .replace("data-piece=\"brief-back\"", "data-piece=\"胸 &#x1F459; e&#x301; \"");
        Printed printed = MarkerPrint.of(Sheets.painting(svg), Sheets.on("A4"));
        assertThat(printed.missingLetters()).containsExactlyInAnyOrder("胸", "\uD83D\uDC59");
        String list = text(printed, 2, printed.pages() - printed.sheets());
        assertThat(list).contains("Körbchen чашка κύπελλο").contains("□ □ é");
    }

    /** Hebrew reads from right to left: the first letter stands at the right. */
    @Test
    void lettersFromRightToLeftStandInThatOrder() throws IOException {
        try (Book book = new Book("")) {
            assertThat(new Typeface(new PDDocument()).shown("אבג 12")).isEqualTo("12 גבא");
            assertThat(book.missingLetters()).isEmpty();
        }
    }
}
