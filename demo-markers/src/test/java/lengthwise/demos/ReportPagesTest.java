package lengthwise.demos;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import lengthwise.demos.PrintedPages.Glyph;
import lengthwise.demos.PrintedPages.Paper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** The page of every demo's run, printed by a browser: all of it is on the paper, and it can be read in grey. */
class ReportPagesTest {
    /** As the page asks for. */
    private static final double MARGIN_MM = 12;

    private static final double POINT_MM = 25.4 / 72;

    @TempDir
    private Path folder;

    static Stream<Arguments> sheets() {
        return DemoRun.jobs().flatMap(job -> Stream.of(Paper.values()).map(paper -> Arguments.of(job, paper)));
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("sheets")
    void allOfItIsOnThePaper(String job, Paper paper) throws Exception {
        DemoRun run = DemoRun.of(job);
        try (PrintedPages pages = PrintedPages.of(Files.readString(run.html()), paper, folder)) {
            assertNothingIsCutOff(pages, paper);
            assertRowsAreWhole(Elements.of(run.page(), "tr"), pages);
            String whole = String.join("", pages.texts());
            for (Element words : Elements.of(run.page(), "h1", "h2", "h3", "li", "p", "b")) {
                assertThat(whole).contains(PrintedPages.compact(words.getTextContent()));
            }
            assertCautionsArePrintedOnce(whole);
        }
    }

    @Test
    void whatIsTooWideForThePaperIsFound() throws Exception {
        String wide = "</h1><table><tbody><tr><td style=\"white-space: nowrap\">" + "wide ".repeat(60)
                + "</td></tr></tbody></table>";
        String html = Files.readString(DemoRun.of("smock/border.yaml").html()).replace("</h1>", wide);
        try (PrintedPages pages = PrintedPages.of(html, Paper.A4, folder)) {
            assertThatThrownBy(() -> assertNothingIsCutOff(pages, Paper.A4)).isInstanceOf(AssertionError.class);
        }
    }

    /** A browser makes a page smaller that is too wide for its paper: then the title is not of its size any more. */
    private static void assertNothingIsCutOff(PrintedPages pages, Paper paper) throws Exception {
        assertThat(pages.glyphs(0).get(0).points()).as("title").isCloseTo(19, within(0.1));
        for (int page = 0; page < pages.count(); page++) {
            assertThat(pages.widthMm(page)).isCloseTo(paper.width, within(0.3));
            assertThat(pages.heightMm(page)).isCloseTo(paper.height, within(0.3));
            for (Glyph glyph : pages.glyphs(page)) {
                assertThat(glyph.left()).as("%s on page %s", glyph, page + 1).isGreaterThan(MARGIN_MM - 0.3);
                assertThat(glyph.right())
                        .as("%s on page %s", glyph, page + 1)
                        .isLessThan(paper.width - MARGIN_MM + 0.6);
                assertThat(glyph.bottom())
                        .as("%s on page %s", glyph, page + 1)
                        .isLessThan(paper.height - MARGIN_MM + 0.3);
            }
            assertMarginIsBlank(pages.grey(page, 72), page);
        }
    }

    private static void assertMarginIsBlank(BufferedImage image, int page) {
        int margin = (int) Math.floor(MARGIN_MM / 25.4 * 72) - 1;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                boolean inside =
                        x >= margin && y >= margin && x < image.getWidth() - margin && y < image.getHeight() - margin;
                if (!inside) {
                    assertThat(PrintedPages.value(image, x, y))
                            .as("page %s, %s right and %s down", page + 1, x, y)
                            .isGreaterThan(250);
                }
            }
        }
    }

    /** Rows are painted one after the other, cell by cell: each is found whole on one page, behind the row before. */
    private static void assertRowsAreWhole(List<Element> rows, PrintedPages pages) {
        List<String> texts = pages.texts();
        assertThat(rows).isNotEmpty();
        int page = 0;
        int from = 0;
        for (Element row : rows) {
            String words = PrintedPages.compact(row.getTextContent());
            int found = texts.get(page).indexOf(words, from);
            while (found < 0 && page + 1 < texts.size()) {
                page++;
                found = texts.get(page).indexOf(words);
            }
            assertThat(found).as("row %s", Elements.cells(row)).isNotNegative();
            from = found + words.length();
        }
    }

    private static void assertCautionsArePrintedOnce(String whole) {
        for (String caution : List.of(
                "Blades:closeorlock",
                "Electricknives:",
                "Needlesandpins:",
                "Lasers:",
                "hydrogenchloride",
                "harmfulfumes")) {
            assertThat(whole).containsOnlyOnce(caution);
        }
        assertThat(whole).containsOnlyOnce("Themachine'smanual,localcodesandtrainedpeoplegobeforeanythingsaidhere.");
    }

    /** WCAG 2.1, success criterion 1.4.3: 4.5 to 1, from the luminances, which are what grey keeps of a colour. */
    @ParameterizedTest
    @MethodSource("lengthwise.demos.DemoRun#jobs")
    void wordsStandOutFromWhatIsBehindThem(String job) throws Exception {
        DemoRun run = DemoRun.of(job);
        String html = Files.readString(run.html());
        List<String> inks = Colours.named(html, "[^-]color: (#[0-9a-f]{6})");
        assertThat(inks).hasSizeGreaterThan(2);
        assertThat(inks)
                .allSatisfy(ink ->
                        assertThat(Colours.contrast(ink, "#ffffff")).as(ink).isGreaterThanOrEqualTo(4.5));
        for (Element picture : Elements.of(run.page(), "svg")) {
            List<String> behind = Elements.of(picture, "path", "rect").stream()
                    .map(shape -> shape.getAttribute("fill"))
                    .filter(fill -> fill.startsWith("#"))
                    .distinct()
                    .toList();
            assertThat(behind).isNotEmpty();
            for (Element words : Elements.of(picture, "text")) {
                String ink = Colours.inherited(words, "fill");
                assertThat(behind)
                        .allSatisfy(fill -> assertThat(Colours.contrast(ink, fill))
                                .as("%s on %s", ink, fill)
                                .isGreaterThanOrEqualTo(4.5));
            }
        }
    }

    /** The same in the pixels of a page printed grey: around every figure of a table there is dark on light. */
    @Test
    void figuresStandOutOnAGreyPrint() throws Exception {
        DemoRun run = DemoRun.of("bucket-hats/job.yaml");
        try (PrintedPages pages = PrintedPages.of(Files.readString(run.html()), Paper.A4, folder)) {
            int figures = 0;
            for (int page = 0; page < pages.count(); page++) {
                BufferedImage image = pages.grey(page, 300);
                for (Glyph glyph : pages.glyphs(page)) {
                    if (glyph.points() >= 8 && Character.isDigit(glyph.text().charAt(0))) {
                        assertThat(contrast(image, glyph))
                                .as("%s on page %s", glyph, page + 1)
                                .isGreaterThanOrEqualTo(4.5);
                        figures++;
                    }
                }
            }
            assertThat(figures).isGreaterThan(100);
        }
    }

    private static double contrast(BufferedImage image, Glyph glyph) {
        double dot = 25.4 / 300;
        double darkest = 1;
        double lightest = 0;
        for (double y = glyph.bottom() - 0.7 * glyph.points() * POINT_MM; y < glyph.bottom(); y += dot) {
            for (double x = glyph.left(); x < glyph.right(); x += dot) {
                double light = Colours.linear(PrintedPages.value(image, (int) (x / dot), (int) (y / dot)));
                darkest = Math.min(darkest, light);
                lightest = Math.max(lightest, light);
            }
        }
        return (lightest + 0.05) / (darkest + 0.05);
    }

    /** What the bar's tints mean is said by letters in it and beside it, and by their order. */
    @ParameterizedTest
    @MethodSource("markers")
    void noTintIsAlone(String job) throws Exception {
        List<Element> tints = Elements.of(DemoRun.of(job).page(), "span").stream()
                .filter(span -> span.getAttribute("class").equals("tint"))
                .toList();
        assertThat(tints)
                .isNotEmpty()
                .allSatisfy(tint -> assertThat(tint.getTextContent()).matches("[A-F]"));
        for (Element bar : Elements.of(DemoRun.of(job).page(), "svg")) {
            if (bar.getAttribute("aria-label").startsWith("Shares")) {
                assertThat(Elements.of(bar, "text")).hasSizeGreaterThan(1);
            }
        }
    }

    static Stream<String> markers() {
        return Stream.of(DemoRun.MARKERS);
    }
}
