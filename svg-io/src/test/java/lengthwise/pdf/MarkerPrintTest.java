package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Painted;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.svg.MarkerPainting;
import lengthwise.svg.MarkerSvg;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("written")
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
    void theFirstPagesSayHowToPrintAndWhereEveryPieceIs() throws Exception {
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
    void everySheetIsNamedAndSaysWhatItBelongsTo() throws Exception {
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
    void sheetsWithNothingToCutAreLeftOutAndSaid() throws Exception {
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

    /** A sheet in the corner of the box round a disc shows none of it, though the sew line has a box of its own. */
    @Test
    void whatAPieceIsOnIsToldByItsLinesAndNotByTheBoxesRoundThem() {
        MarkerPrint.Shape disc = MarkerPrint.Shape.of(List.of(circle(100), circle(90)));
        for (int x : new int[] {-1, 1}) {
            for (int y : new int[] {-1, 1}) {
                Extent corner = new Extent(x * 87, y * 87, x * 87, y * 87).grown(12);
                assertThat(disc.meets(corner)).as("%s, %s", x, y).isFalse();
                assertThat(disc.meets(corner.grown(5))).as("%s, %s", x, y).isTrue();
            }
            assertThat(disc.meets(new Extent(x * 105, 0, x * 105, 0).grown(6))).isTrue();
        }
        assertThat(disc.meets(new Extent(-20, -20, 20, 20))).isTrue();
    }

    private static Painted.Path circle(int radius) {
        List<Point> points = IntStream.range(0, 360)
                .mapToObj(degree -> new Point(
                        Math.round(radius * 1000 * Math.cos(Math.toRadians(degree))),
                        Math.round(radius * 1000 * Math.sin(Math.toRadians(degree)))))
                .toList();
        return new Painted.Path(
                List.of(new Chain(points, true)),
                Optional.empty(),
                Optional.of(Painted.Line.of(Canvas.BLACK, 0.3)),
                List.of(),
                "");
    }

    /** Wherever the page ends: what follows a heading is not torn from it. */
    @Test
    void noHeadingStandsAloneAtTheFootOfAPage() throws Exception {
        List<String> headings = List.of("RIGHT SIDE UP", "How to read it", "Take care", "Pieces", "reef-print");
        Set<String> seen = new HashSet<>();
        for (int height = 240; height < 360; height += 6) {
            Paper paper = new Paper("sheet", Length.ofMillimetres(210), Length.ofMillimetres(height));
            Printed printed =
                    MarkerPrint.of(SMALL, new PageSetup(paper, PageSetup.USUAL_MARGIN, PageSetup.USUAL_OVERLAP, false));
            for (int page = 2; page <= printed.pages() - printed.sheets(); page++) {
                List<String> lines = text(printed, page, page).strip().lines().toList();
                seen.addAll(lines);
                assertThat(headings).as("height %s, page %s", height, page).doesNotContain(lines.get(lines.size() - 1));
            }
        }
        assertThat(seen).containsAll(headings);
    }

    @ParameterizedTest
    @ValueSource(strings = {"A4", "Letter", "A3"})
    void everyNotchIsWholeOnSomeSheet(String paper) throws Exception {
        PageSetup setup = Sheets.on(paper);
        Extent extent;
        try (Book book = new Book("")) {
            extent = MarkerPrint.extent(SMALL, book);
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
    void sixtyPagesStaySmallBecauseTheDrawingIsStoredOnce() throws Exception {
        Paper a5 = new Paper("A5", Length.ofMillimetres(148), Length.ofMillimetres(210));
        PageSetup small = new PageSetup(a5, PageSetup.USUAL_MARGIN, Length.ofMillimetres(50), false);
        Printed printed = MarkerPrint.of(SMALL, small);
        assertThat(printed.pages()).isGreaterThanOrEqualTo(60);
        assertThat(printed.bytes()).hasSizeLessThan(2_000_000);
        Printed fewer = MarkerPrint.of(SMALL, Sheets.on("A1"));
        assertThat(printed.bytes().length - fewer.bytes().length)
                .as("60 pages more than " + fewer.pages())
                .isLessThan(60 * 4_000);
    }

    /** A word that strayed far away in a drawing program must not be paid for in paper. */
    @Test
    void whatStrayedFarAwayTakesNoPaper() throws Exception {
        String svg = MarkerSvg.of(SampleMarkers.singleLayer(), Sheets.NOTES)
                .replace("</svg>", "<text x=\"900000\" y=\"5\" font-size=\"9\">lost</text></svg>");
        Printed printed = MarkerPrint.of(Sheets.painting(svg), Sheets.on("A4"));
        assertThat(printed.columns()).isLessThan(8);
    }

    @Test
    void moreSheetsThanAnybodyJoinsAreRefused() {
        String svg = MarkerSvg.of(SampleMarkers.farApart(900), Sheets.NOTES)
                .replaceFirst(
                        "(<g id=\"pieces\".*?>)",
                        "$1<g data-piece=\"sail\" data-size=\"\" data-garment=\"1\" data-hand=\"\""
                                + " data-number=\"9\"><path d=\"M0 0H90000V90000H0Z\"/></g>");
        assertThatThrownBy(() -> MarkerPrint.of(Sheets.painting(svg), Sheets.on("A4")))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("sheets of A4")
                .hasMessageContaining("roll");
    }

    @Test
    void theSameMarkerGivesTheSameBytesInEveryLanguage() throws Exception {
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
    void lettersOfManyKindsAreShownAndMissingOnesAreSeen() throws Exception {
        String svg = MarkerSvg.of(SampleMarkers.singleLayer(), Sheets.NOTES)
                .replace(">cup<", ">Körbchen чашка κύπελλο<")
                .replace("data-piece=\"cup\"", "data-piece=\"Körbchen чашка κύπελλο\"")
                .replace("data-piece=\"brief-back\"", "data-piece=\"胸 &#x1F459; e&#x301; \"");
        Printed printed = MarkerPrint.of(Sheets.painting(svg), Sheets.on("A4"));
        assertThat(printed.missingLetters()).containsExactlyInAnyOrder("胸", "\uD83D\uDC59");
        // A name that is longer than its column goes on below.
        String list = text(printed, 2, printed.pages() - printed.sheets()).replaceAll("\\s+", " ");
        assertThat(list).contains("Körbchen чашка κύπελλο").contains("□ □ é");
    }

    /** Two parts of the list of pieces stand side by side on A4, and so it takes half of the height. */
    @Test
    void aLongListOfPiecesGoesOnBesideItself() throws Exception {
        Printed printed = MarkerPrint.of(Sheets.painting(SampleMarkers.singleLayer()), Sheets.on("A4"));
        String list = text(printed, 2, printed.pages() - printed.sheets());
        assertThat(list.split("on sheets", -1)).hasSize(3);
        for (int number = 1; number <= 18; number++) {
            assertThat(list.lines())
                    .as("no. %d", number)
                    .anyMatch(Pattern.compile("\\b" + number + " [a-z]").asPredicate());
        }
    }

    /** Hebrew reads from right to left: the first letter stands at the right. */
    @Test
    void lettersFromRightToLeftStandInThatOrder() throws Exception {
        try (Book book = new Book("")) {
            assertThat(new Typeface(new PDDocument()).shown("אבג 12")).isEqualTo("12 גבא");
            assertThat(book.missingLetters()).isEmpty();
        }
    }
}
