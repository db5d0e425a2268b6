package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import lengthwise.model.Length;
import lengthwise.svg.MarkerPainting;
import lengthwise.testing.OutsideReader;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences.DUPLEX;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences.PRINT_SCALING;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PageSizesTest {
    /** Millimetres to a point of PDF: 72 to the inch (ISO 32000-1, section 8.3.2.3). */
    private static final double POINT = 25.4 / 72;

    private static final MarkerPainting SMALL = Sheets.painting(SampleMarkers.singleLayer());

    @TempDir
    Path folder;

    /** ISO 216; ANSI/ASME Y14.1 in inches of 25.4 mm. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "A4, 210, 297",
        "A3, 297, 420",
        "A2, 420, 594",
        "A1, 594, 841",
        "A0, 841, 1189",
        "Letter, 215.9, 279.4",
        "Legal, 215.9, 355.6",
        "tabloid, 279.4, 431.8"
    })
    void pagesAreAsLargeAsTheirPaper(String name, double width, double height) throws Exception {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on(name));
        try (PDDocument document = Sheets.open(printed)) {
            assertThat(document.getNumberOfPages()).isEqualTo(printed.pages()).isGreaterThan(2);
            for (PDPage page : document.getPages()) {
                assertThat(page.getMediaBox().getWidth() * POINT).isCloseTo(width, within(0.01));
                assertThat(page.getMediaBox().getHeight() * POINT).isCloseTo(height, within(0.01));
                assertThat(page.getUserUnit()).isEqualTo(1);
            }
        }
    }

    @Test
    void landscapeLiesOnItsSide() throws Exception {
        PageSetup setup = Sheets.on(Paper.named("letter").orElseThrow().landscape());
        try (PDDocument document = Sheets.open(MarkerPrint.of(SMALL, setup))) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(792);
            assertThat(document.getPage(0).getMediaBox().getHeight()).isEqualTo(612);
        }
    }

    @Test
    void printersAreAskedNeitherToScaleNorToPrintOnBothSides() throws Exception {
        try (PDDocument document = Sheets.open(MarkerPrint.of(SMALL, Sheets.on("A4")))) {
            var wishes = document.getDocumentCatalog().getViewerPreferences();
            assertThat(wishes.getPrintScaling()).isEqualTo(PRINT_SCALING.None.toString());
            assertThat(wishes.getDuplex()).isEqualTo(DUPLEX.Simplex.toString());
        }
    }

    @Test
    void aRollIsAsWideAsItIsAndAsLongAsTheMarker() throws Exception {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on(Sheets.roll(1370)));
        assertThat(printed.sheets()).isEqualTo(1);
        try (PDDocument document = Sheets.open(printed)) {
            PDPage page = document.getPage(printed.pages() - 1);
            assertThat(page.getMediaBox().getHeight() * POINT).isCloseTo(1370, within(0.01));
            // The cloth of 910 mm, its squares beside it, two margins.
            assertThat(page.getMediaBox().getWidth() * POINT).isBetween(910 + 101.6 + 24, 1060.0);
        }
    }

    /** The classic limit of readers is 14 400 units of 1/72 in: 5 080 mm (ISO 32000-1, annex C). */
    @Test
    void aRollIsSplitWhereReadersEnd() throws Exception {
        Printed printed = MarkerPrint.of(longMarker(), Sheets.on(Sheets.roll(1370)));
        assertThat(printed.columns()).isEqualTo(3);
        assertThat(printed.sheets()).isEqualTo(3);
        try (PDDocument document = Sheets.open(printed)) {
            for (PDPage page : document.getPages()) {
                assertThat(page.getMediaBox().getWidth()).isLessThanOrEqualTo(14_400);
                assertThat(page.getUserUnit()).isEqualTo(1);
            }
        }
    }

    @Test
    void aLargerUnitKeepsItOnePage() throws Exception {
        PageSetup setup = new PageSetup(Sheets.roll(1370), PageSetup.USUAL_MARGIN, PageSetup.USUAL_OVERLAP, true);
        Printed printed = MarkerPrint.of(longMarker(), setup);
        assertThat(printed.sheets()).isEqualTo(1);
        try (PDDocument document = Sheets.open(printed)) {
            PDPage page = document.getPage(printed.pages() - 1);
            assertThat(page.getMediaBox().getWidth()).isLessThanOrEqualTo(14_400);
            assertThat(page.getUserUnit()).isEqualTo(3);
            assertThat(page.getMediaBox().getHeight() * POINT * page.getUserUnit())
                    .isCloseTo(1370, within(0.01));
        }
    }

    /** A marker of 12 m: the small one's cloth drawn out. */
    private static MarkerPainting longMarker() {
        return Sheets.painting(SampleMarkers.farApart(12_000));
    }

    /** Another reader than the library that wrote it: pdfinfo of poppler. */
    @Test
    void anotherReaderFindsTheSameSizes() throws Exception {
        Path file = Files.write(
                folder.resolve("a3.pdf"), MarkerPrint.of(SMALL, Sheets.on("A3")).bytes());
        List<String> said = OutsideReader.PDFINFO.says("-l", "4", file.toString());
        Matcher size =
                Pattern.compile("Page +\\d+ size: +([0-9.]+) x ([0-9.]+) pts.*").matcher("");
        List<String> sizes =
                said.stream().filter(line -> size.reset(line).matches()).toList();
        assertThat(sizes).hasSize(4);
        IntStream.range(0, 4).forEach(i -> {
            assertThat(size.reset(sizes.get(i)).matches()).isTrue();
            assertThat(Double.parseDouble(size.group(1)) * POINT).isCloseTo(297, within(0.01));
            assertThat(Double.parseDouble(size.group(2)) * POINT).isCloseTo(420, within(0.01));
        });
    }

    @Test
    void paperThatCannotBeIsRefusedWithAReason() {
        Length margin = PageSetup.USUAL_MARGIN;
        assertThat(PageSetup.whyNot(Sheets.roll(100), margin, margin).orElseThrow())
                .contains("roll");
        assertThat(PageSetup.whyNot(Sheets.roll(6000), margin, margin).orElseThrow())
                .contains("roll");
        assertThat(PageSetup.whyNot(Paper.named("a4").orElseThrow(), Length.ofMillimetres(40), margin)
                        .orElseThrow())
                .contains("margin");
        assertThat(PageSetup.whyNot(Paper.named("a4").orElseThrow(), margin, Length.ofMillimetres(-1))
                        .orElseThrow())
                .contains("overlap");
        assertThat(Paper.named("B5")).isEmpty();
    }
}
