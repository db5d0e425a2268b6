package lengthwise.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lengthwise.svg.MarkerPainting;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is measured on pages that were drawn dot by dot, as with a ruler on paper. */
class TrueScaleTest {
    private static final double DOTS = 10;
    private static final MarkerPainting SMALL = Sheets.painting(SampleMarkers.singleLayer());

    static Stream<Arguments> papers() {
        return Stream.of(
                Arguments.of("A4 upright", Paper.named("A4").orElseThrow()),
                Arguments.of("A4 on its side", Paper.named("A4").orElseThrow().landscape()),
                Arguments.of("Letter", Paper.named("Letter").orElseThrow()),
                Arguments.of(
                        "Letter on its side",
                        Paper.named("Letter").orElseThrow().landscape()),
                Arguments.of(
                        "Legal on its side", Paper.named("Legal").orElseThrow().landscape()));
    }

    /** 10 cm and 4 in = 101.6 mm exactly (International Yard and Pound Agreement, 1959). */
    @ParameterizedTest(name = "{0}")
    @MethodSource("papers")
    void theSquaresMeasureWhatTheySay(String name, Paper paper) throws Exception {
        BufferedImage page = page(MarkerPrint.of(SMALL, Sheets.on(paper)), 0);
        boolean beside = paper.width().millimetres() > paper.height().millimetres();
        double top = 12 + 16;
        double nextX = beside ? 12 + 101.6 + 5 : 12;
        double nextY = beside ? top : top + 101.6 + 5;
        assertThat(across(page, top + 70, 10, 12 + 101.6 + 2)).isCloseTo(101.6, within(0.5));
        assertThat(down(page, 12 + 80, top - 2, top + 101.6 + 2)).isCloseTo(101.6, within(0.5));
        assertThat(across(page, nextY + 70, nextX - 2, nextX + 102)).isCloseTo(100, within(0.5));
        assertThat(down(page, nextX + 80, nextY - 2, nextY + 102)).isCloseTo(100, within(0.5));
    }

    /** A square measured by its lines rather than looked for: a strip of 32 × 450 mm lies 35 mm beside the next. */
    @Test
    void aPieceMeasuresOnARollWhatItMeasuresInTheMarker() throws Exception {
        Printed printed = MarkerPrint.of(SMALL, Sheets.on(Sheets.roll(1370)));
        BufferedImage page = page(printed, printed.pages() - 1, 4);
        // Strips stand at 20 + 290 k (end allowance, then 290 mm a garment), 20 + 720 mm from the edge of the cloth.
        List<Double> lines = linesAcross(page, 12 + 12 + 20 + 720 + 300, 4);
        List<Double> strips = new ArrayList<>();
        for (double k = 0; k < 3; k++) {
            for (double x : new double[] {0, 32, 35, 67}) {
                strips.add(x + 290 * k);
            }
        }
        double first = lines.stream()
                .filter(from ->
                        strips.stream().allMatch(x -> lines.stream().anyMatch(line -> Math.abs(line - from - x) < 0.5)))
                .findFirst()
                .orElse(-1.0);
        assertThat(first).as("strips among the lines at %s", lines).isPositive();
    }

    private static BufferedImage page(Printed printed, int page) throws IOException {
        return page(printed, page, DOTS);
    }

    private static BufferedImage page(Printed printed, int page, double dots) throws IOException {
        try (PDDocument document = Sheets.open(printed)) {
            return Sheets.seen(document, page, dots);
        }
    }

    /** The distance between the first and the last dark line that a row of dots crosses, middle to middle (mm). */
    private static double across(BufferedImage page, double y, double fromX, double toX) {
        List<Double> lines = middles(i -> page.getRGB(i, (int) (y * DOTS)), (int) (fromX * DOTS), (int) (toX * DOTS));
        return (lines.get(lines.size() - 1) - lines.get(0)) / DOTS;
    }

    private static double down(BufferedImage page, double x, double fromY, double toY) {
        List<Double> lines = middles(i -> page.getRGB((int) (x * DOTS), i), (int) (fromY * DOTS), (int) (toY * DOTS));
        return (lines.get(lines.size() - 1) - lines.get(0)) / DOTS;
    }

    private static List<Double> linesAcross(BufferedImage page, double y, double dots) {
        return middles(i -> page.getRGB(i, (int) (y * dots)), 0, page.getWidth()).stream()
                .map(x -> x / dots)
                .toList();
    }

    private interface Dots {
        int at(int i);
    }

    /** The middles of runs of dots darker than half. */
    private static List<Double> middles(Dots dots, int from, int to) {
        List<Double> middles = new ArrayList<>();
        int start = -1;
        for (int i = from; i <= to; i++) {
            boolean dark = i < to && Sheets.green(dots.at(i)) < 150;
            if (dark && start < 0) {
                start = i;
            } else if (!dark && start >= 0) {
                middles.add((start + i) / 2.0);
                start = -1;
            }
        }
        return middles;
    }
}
