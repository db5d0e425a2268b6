package lengthwise.pdf;

import static lengthwise.pdf.WrittenByHand.millimetres;
import static lengthwise.pdf.WrittenByHand.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Box;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What ISO 32000-1 says of pages, layers and lettering, in files written by hand. */
class PdfReaderTest {
    private static PatternDrawing read(byte[] pdf) throws DrawingException {
        return PdfPattern.read("p.pdf", pdf, ScaleStatement.NONE, Optional.empty());
    }

    private static DrawnPiece only(byte[] pdf) throws DrawingException {
        List<DrawnPiece> pieces = read(pdf).pieces();
        assertThat(pieces).hasSize(1);
        return pieces.get(0);
    }

    /** A rectangle of 144 × 72 points, 36 from the left and 18 from the foot of a page of 720 × 360 points. */
    private static Drawing turned(String dictionary) throws DrawingException {
        byte[] pdf = new WrittenByHand()
                .page("/MediaBox [0 0 720 360] " + dictionary, "36 18 144 72 re S")
                .bytes();
        return PdfPattern.draw("p.pdf", pdf, OptionalDouble.empty(), Optional.empty());
    }

    /** 8.3.2.3 and table 30: the page is turned clockwise when shown. Points are 25.4/72 mm; 36 pt = 12.7 mm. */
    @ParameterizedTest(name = "turned by {0}")
    @CsvSource({
        "0, 254, 127, 12.7, 95.25, 50.8, 25.4",
        "90, 127, 254, 6.35, 12.7, 25.4, 50.8",
        "180, 254, 127, 190.5, 6.35, 50.8, 25.4",
        "270, 127, 254, 95.25, 190.5, 25.4, 50.8",
        "-90, 127, 254, 95.25, 190.5, 25.4, 50.8",
        "450, 127, 254, 6.35, 12.7, 25.4, 50.8"
    })
    void aTurnedPageIsReadAsItIsShown(
            int degrees, double pageWidth, double pageHeight, double x, double y, double width, double height)
            throws DrawingException {
        Drawing drawing = turned("/Rotate " + degrees);
        assertThat(drawing.pages()).containsExactly(box(0, 0, pageWidth, pageHeight));
        assertThat(boxOf(drawing)).isEqualTo(box(x, y, width, height));
    }

    /** Table 30: the size of a unit in multiples of 1/72 inch. */
    @Test
    void userUnitMakesEverythingLarger() throws DrawingException {
        Drawing drawing = turned("/UserUnit 2.5");
        assertThat(drawing.pages()).containsExactly(box(0, 0, 635, 317.5));
        assertThat(boxOf(drawing)).isEqualTo(box(31.75, 238.125, 127, 63.5));
    }

    /** 14.11.2: what is shown is the crop box, cut to the media box. */
    @Test
    void placesAreMeasuredFromTheVisiblePage() throws DrawingException {
        Drawing drawing = turned("/CropBox [18 -50 730 324]");
        assertThat(drawing.pages()).containsExactly(box(0, 0, 702 * 25.4 / 72, 324 * 25.4 / 72));
        assertThat(boxOf(drawing)).isEqualTo(box(18 * 25.4 / 72, 234 * 25.4 / 72, 50.8, 25.4));
    }

    /** A reader shows nothing of what lies beside the page. */
    @Test
    void whatLiesBesideThePageIsLeftOutAndSaid() throws DrawingException {
        PatternDrawing drawing = read(millimetres(rectangle(20, 20, 120, 60) + rectangle(500, 20, 120, 60)));
        assertThat(drawing.pieces()).hasSize(1);
        assertThat(drawing.leftOut()).containsExactly("1 shape beside its page");
    }

    /** Table 30: boxes, turning and resources may stand in the page tree. */
    @Test
    void whatThePageTreeSaysHoldsForThePage() throws DrawingException {
        WrittenByHand file = new WrittenByHand();
        int form = file.stream(
                "/Type /XObject /Subtype /Form /BBox [0 0 720 360] /Matrix [2 0 0 2 10 20]", "0 0 72 36 re S");
        byte[] pdf = file.inPageTree("/Rotate 90 /Resources << /XObject << /F " + form + " 0 R >> >>")
                .page("/MediaBox [0 0 720 360]", "q 1 0 0 1 5 6 cm /F Do Q")
                .bytes();
        Drawing drawing = PdfPattern.draw("p.pdf", pdf, OptionalDouble.empty(), Optional.empty());
        // The lower left corner lies at 15, 26 points; turned by a quarter, at the left of a page 360 wide.
        assertThat(boxOf(drawing)).isEqualTo(box(26 * 25.4 / 72, 15 * 25.4 / 72, 25.4, 50.8));
    }

    @Test
    void theMakersUnitIsTakenBeforeTheFiles() throws DrawingException {
        byte[] pdf =
                new WrittenByHand().page("/UserUnit 3", "10 10 100 50 re S").bytes();
        DrawnPiece piece = PdfPattern.read(
                        "p.pdf", pdf, new ScaleStatement(OptionalDouble.of(1), Optional.empty()), Optional.empty())
                .pieces()
                .get(0);
        assertThat(piece.outline().box().width()).isEqualTo(100_000);
        assertThat(piece.outline().box().height()).isEqualTo(50_000);
    }

    /** 8.5.2: after h the point is the start of the part; f closes what is open; v and y repeat a point. */
    @Test
    void partsGoOnWhereTheyWereClosed() throws DrawingException {
        PatternDrawing two = read(millimetres("10 10 m 60 10 l 60 40 l h 10 40 l 60 40 l f\n"));
        assertThat(two.pieces())
                .extracting(piece -> piece.outline().squareMillimetres())
                .containsExactly(750.0, 750.0);
        assertThat(only(millimetres("10 10 m 60 10 l 60 40 l 10 40 l f\n"))
                        .outline()
                        .squareMillimetres())
                .isEqualTo(1500);
    }

    /** A circle of four curves with the usual handles of 0.5523 r (Goldapp 1991): its area is within 0.1 % of π r². */
    @Test
    void curvesAreCurves() throws DrawingException {
        double k = 40 * 0.5522847498;
        String circle = "140 100 m 140 %1$s %2$s 140 100 140 c %3$s 140 60 %1$s 60 100 c 60 %4$s %3$s 60 100 60 c"
                + " %2$s 60 140 %4$s 140 100 c h S";
        DrawnPiece piece = only(millimetres(circle.formatted(100 + k, 100 + k, 100 - k, 100 - k)));
        assertThat(piece.outline().squareMillimetres()).isCloseTo(Math.PI * 1600, within(5.0));
    }

    @Test
    void evenOddFillsHaveHolesAndClipsAreNone() throws DrawingException {
        DrawnPiece piece = only(millimetres("50 50 20 20 re W n\n10 10 200 100 re 40 40 30 30 re f*\n"));
        assertThat(piece.outline().holes()).hasSize(1);
        assertThat(piece.outline().squareMillimetres()).isEqualTo(20_000 - 900);
    }

    /** Dashes and widths change no outline; what is painted with no ink at all does not show. */
    @Test
    void dashesAndWidthsChangeNothing() throws DrawingException {
        WrittenByHand file = new WrittenByHand();
        int clear = file.add("<< /CA 0 /ca 0 >>");
        byte[] pdf = file.page(
                        "/Resources << /ExtGState << /No " + clear + " 0 R >> >>",
                        "[6 3] 0 d 9 w 72 72 144 72 re S q /No gs 300 300 100 100 re S Q")
                .bytes();
        assertThat(only(pdf).outline().box().width()).isEqualTo(50_800);
        assertThat(read(pdf).leftOut()).contains("1 hidden shape: the shape on page 1");
    }

    static byte[] layered(String configuration) {
        WrittenByHand file = new WrittenByHand();
        int small = file.add("<< /Type /OCG /Name (S) >>");
        int medium = file.add("<< /Type /OCG /Name (M) >>");
        int large = file.add("<< /Type /OCG /Name <FEFF004C> >>");
        int either = file.add("<< /Type /OCMD /OCGs [" + small + " 0 R " + large + " 0 R] /P /AllOn >>");
        String all = small + " 0 R " + medium + " 0 R " + large + " 0 R";
        return file.inCatalog("/OCProperties << /OCGs [" + all + "] /D << "
                        + configuration.replace("LARGE", large + " 0 R").replace("SMALL", small + " 0 R") + " >> >>")
                .page(
                        "/Resources << /Properties << /S %s 0 R /M %s 0 R /L %s 0 R /E %s 0 R >> >>"
                                .formatted(small, medium, large, either),
                        """
                        2.834645669 0 0 2.834645669 0 0 cm
                        /OC /S BDC 10 10 100 60 re S EMC
                        /OC /M BDC 10 10 110 66 re S EMC
                        /OC /L BDC /Other BMC 10 10 120 72 re S EMC EMC
                        /OC /E BDC 200 10 50 50 re S EMC
                        """)
                .bytes();
    }

    /** Layers named as sizes are sizes: grades drawn on one another are neither holes nor doubles. */
    @Test
    void layersAreSizes() throws DrawingException {
        PatternDrawing drawing = read(layered(""));
        assertThat(drawing.pieces())
                .extracting(piece -> piece.size().orElse(""))
                .containsExactly("S", "M", "L", "");
        assertThat(drawing.pieces())
                .extracting(piece -> piece.outline().box().width())
                .containsExactly(100_000L, 110_000L, 120_000L, 50_000L);
    }

    /** 8.11.4.3: layers are off as the default configuration says; what needs all of several on is off with one. */
    @Test
    void layersThatAreSwitchedOffAreLeftOutAndSaid() throws DrawingException {
        PatternDrawing drawing = read(layered("/OFF [LARGE]"));
        assertThat(drawing.pieces())
                .extracting(piece -> piece.size().orElse(""))
                .containsExactly("S", "M");
        assertThat(drawing.leftOut()).anyMatch(line -> line.contains("layer 'L'") && line.contains("switched off"));
        assertThat(read(layered("/BaseState /OFF /ON [SMALL]")).pieces())
                .extracting(piece -> piece.size().orElse(""))
                .containsExactly("S");
    }

    @Test
    void piecesOfSeveralPagesStandAlone() throws DrawingException {
        byte[] pdf = new WrittenByHand()
                .page("", rectangle(28.346457, 28.346457, 283.46457, 141.732283))
                .page("", "")
                .page("", rectangle(28.346457, 28.346457, 141.732283, 141.732283))
                .bytes();
        PatternDrawing drawing = read(pdf);
        assertThat(drawing.pieces()).extracting(DrawnPiece::name).containsExactly("page 1", "page 3");
        assertThat(drawing.pieces())
                .extracting(piece -> piece.outline().box().width())
                .containsExactly(100_000L, 50_000L);
        Box first = drawing.pieces().get(0).outline().box();
        Box second = drawing.pieces().get(1).outline().box();
        assertThat(first.contains(second) || second.contains(first)).isFalse();
    }

    /** Pieces without any name are told apart by number; a left beside its right is the same piece. */
    @Test
    void piecesWithoutNamesAreNumbered() throws DrawingException {
        String left = "20 20 m 80 20 l 60 90 l 20 60 l s ";
        String right = "180 20 m 120 20 l 140 90 l 180 60 l s ";
        PatternDrawing drawing =
                read(millimetres(left + right + rectangle(20, 120, 50, 50) + rectangle(200, 20, 90, 40)));
        assertThat(drawing.pieces())
                .extracting(DrawnPiece::name)
                .containsExactly("piece 1", "piece 1", "piece 2", "piece 3");
        assertThat(drawing.pieces()).extracting(DrawnPiece::mirrored).containsExactly(false, true, false, false);
        assertThat(only(millimetres(left)).name()).isEqualTo("(unnamed)");
    }

    private static final String HELVETICA = "/F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>";

    /** 9.4: lines by T*, Td and Tm, words moved apart by numbers and by spacing; 9.10: what the codes mean. */
    @Test
    void letteringIsReadLineByLine() throws DrawingException {
        DrawnPiece piece = only(lettered());
        assertThat(piece.lettering()).containsExactly("Plover back", "cut 1 pair", "grain");
        assertThat(piece.name()).isEqualTo("Plover back");
    }

    static byte[] lettered() {
        return new WrittenByHand()
                .page(
                        "/Resources << /Font << " + HELVETICA + " >> >>",
                        "100 100 400 300 re S BT /F 12 Tf 14 TL 150 300 Td [(Pl) 20 (over ba) -10 (ck)] TJ T*"
                                + " (cut) Tj 30 0 Td (1 pair) Tj (grain) ' 1 0 0 1 700 100 Tm (elsewhere) Tj ET")
                .bytes();
    }

    @Test
    void codesMeanWhatTheirTableSays() throws DrawingException {
        assertThat(only(coded()).lettering()).containsExactly("ABafiα");
        assertThat(read(coded()).leftOut()).contains("1 letters of which the file does not say what they mean");
    }

    /** A table that claims more codes than there are letters would be put down one by one, for minutes. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<0001> <2147483648> <0041>",
                "<00000001> <7FFFFFFF> <00000041>",
                "<99999999> <0002> <0041>",
                "<9999999> <0002> <0041>",
                "<80000000> <FFFFFFFF> <0041>",
                "<0001> 7 <00000001> <7FFFFFFF> <0041>",
                "<0001> <0002> <0041> 1 beginbfrange <00000001> <7FFFFFFF> <0041>"
            })
    void rangesOfMoreCodesThanLettersAreNotRead(String range) {
        assertTimeout(
                Duration.ofSeconds(60),
                () -> assertThat(only(coded(range)).lettering()).isEmpty());
    }

    static byte[] coded() {
        return coded("<0001> <0002> <0041>");
    }

    private static byte[] coded(String range) {
        WrittenByHand file = new WrittenByHand();
        int table = file.stream("", """
                /CIDInit /ProcSet findresource begin 12 dict begin begincmap /CMapName /T def
                1 begincodespacerange <0000> <FFFF> endcodespacerange
                2 beginbfrange %s <0003> <0003> [<006100660069>] endbfrange
                1 beginbfchar <0010> <03B1> endbfchar endcmap end end""".formatted(range));
        int below = file.add("<< /Type /Font /Subtype /CIDFontType2 /BaseFont /X /DW 600 /W [1 [500 700] 3 9 400] >>");
        int font = file.add("<< /Type /Font /Subtype /Type0 /BaseFont /X /Encoding /Identity-H /DescendantFonts ["
                + below + " 0 R] /ToUnicode " + table + " 0 R >>");
        return file.page(
                        "/Resources << /Font << /F " + font + " 0 R >> >>",
                        "100 100 400 300 re S BT /F 12 Tf 150 300 Td <00010002000300100099> Tj ET")
                .bytes();
    }

    @Test
    void picturesAreLeftOutAndSaid() throws DrawingException {
        WrittenByHand file = new WrittenByHand();
        int picture = file.stream(
                "/Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8", "x");
        byte[] pdf = file.page(
                        "/Resources << /XObject << /P " + picture + " 0 R >> >>",
                        "q 500 0 0 500 0 0 cm /P Do Q BI /W 1 /H 1 /CS /G /BPC 8 ID x EI")
                .bytes();
        PatternDrawing drawing = read(pdf);
        assertThat(drawing.pieces()).isEmpty();
        assertThat(drawing.leftOut())
                .containsExactly("2 pictures placed in the file: a picture or scan has no outlines, trace it first");
    }

    /** Outlines are mended as in any other drawing: joined from lines, closed, said. */
    @Test
    void outlinesAreMendedAsInAnyDrawing() throws DrawingException {
        PatternDrawing exploded =
                read(millimetres("10 10 m 110 10 l S 110 60 m 110 10 l S 110 60 m 10 60 l S" + " 10 10 m 10 60 l S"));
        assertThat(exploded.pieces().get(0).outline().squareMillimetres()).isEqualTo(5000);
        assertThat(exploded.warnings())
                .containsExactly("An outline is joined from 4 lines, the first the shape on page 1.");
        PatternDrawing open = read(millimetres("10 10 m 110 10 l 110 60 l 10 60 l 10 10.3 l S"));
        assertThat(open.pieces()).hasSize(1);
        assertThat(open.warnings())
                .containsExactly("The outline the shape on page 1 was open by 0.30 mm and is closed.");
        assertThat(read(millimetres("10 10 m 110 10 l 110 60 l 10 60 l 10 12 l S"))
                        .pieces())
                .isEmpty();
    }

    private static Box boxOf(Drawing drawing) {
        return Box.around(drawing.shapes().get(0).chains().get(0).points().stream())
                .orElseThrow();
    }

    private static Box box(double x, double y, double width, double height) {
        return new Box(um(x), um(y), um(x + width), um(y + height));
    }

    private static long um(double millimetres) {
        return Math.round(millimetres * 1000);
    }
}
