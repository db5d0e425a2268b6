package lengthwise.pdf;

import static lengthwise.pdf.WrittenByHand.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnPiece;
import lengthwise.drawing.PageGrid;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A drawing of 560 × 330 mm on six pages of 200 × 180 mm, three to a row, as programs write it: the whole on every page, or
 * each page with its own ends of the lines. All sizes follow from the coordinates written here.
 */
class TapedPagesTest {
    private static final double WIDE = 200;
    private static final double HIGH = 180;

    /** A hexagon over all six pages and a rectangle on one; corners in mm, y up from the lower left of the drawing. */
    private static final double[][] HEXAGON = {{30, 165}, {120, 300}, {420, 310}, {520, 170}, {400, 25}, {130, 20}};

    private static final double[][] SMALL = {{35, 35}, {65, 35}, {65, 75}, {35, 75}};

    /** By the shoelace formula, from the corners above. */
    private static final double AREA = 109_400;

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f ", value);
    }

    /** The whole drawing on each page, of which a page shows its part. */
    private static byte[] wholeOnEach(double overlap, int rows) {
        WrittenByHand file = new WrittenByHand();
        for (int row = rows - 1; row >= 0; row--) {
            for (int column = 0; column < 3; column++) {
                StringBuilder content = new StringBuilder("2.834645669 0 0 2.834645669 0 0 cm 1 0 0 1 ");
                content.append(number(-column * (WIDE - overlap)))
                        .append(number(-row * (HIGH - overlap)))
                        .append("cm\n");
                for (double[][] shape : List.of(HEXAGON, SMALL)) {
                    for (int i = 0; i < shape.length; i++) {
                        content.append(number(shape[i][0]))
                                .append(number(shape[i][1]))
                                .append(i == 0 ? "m " : "l ");
                    }
                    content.append("h S\n");
                }
                file.page(box(), content.toString());
            }
        }
        return file.bytes();
    }

    private static String box() {
        return "/MediaBox [0 0 " + number(WIDE * 72 / 25.4) + number(HIGH * 72 / 25.4) + "]";
    }

    /** On each page the ends of the lines that it shows, all but the left ones off by so much upwards. */
    private static byte[] cutApart(double overlap, double drift) {
        return cutApart(overlap, drift, "");
    }

    static byte[] cutApart(double overlap, double drift, String onEach) {
        WrittenByHand file = new WrittenByHand();
        for (int row = 1; row >= 0; row--) {
            for (int column = 0; column < 3; column++) {
                StringBuilder content = new StringBuilder("2.834645669 0 0 2.834645669 0 0 cm\n");
                double left = column * (WIDE - overlap);
                double low = row * (HIGH - overlap);
                for (double[][] shape : List.of(HEXAGON, SMALL)) {
                    for (int i = 0; i < shape.length; i++) {
                        double[] end = shape[(i + 1) % shape.length];
                        segment(shape[i], end, left, low)
                                .ifPresent(s -> content.append(number(s[0] - left))
                                        .append(number(s[1] - low + s[4] * drift))
                                        .append("m ")
                                        .append(number(s[2] - left))
                                        .append(number(s[3] - low + s[4] * drift))
                                        .append("l S\n"));
                    }
                }
                file.page(box(), content + onEach);
            }
        }
        return file.bytes();
    }

    /** Returns the part of a line within a page, by bisection of its ends; with a 1 for all pages but the left ones. */
    private static Optional<double[]> segment(double[] from, double[] to, double left, double low) {
        double first = -1;
        double last = -1;
        int steps = 200_000;
        for (int i = 0; i <= steps; i++) {
            double x = from[0] + (to[0] - from[0]) * i / steps;
            double y = from[1] + (to[1] - from[1]) * i / steps;
            if (x >= left && x <= left + WIDE && y >= low && y <= low + HIGH) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first < 0 || first == last) {
            return Optional.empty();
        }
        double a = first / steps;
        double b = last / steps;
        return Optional.of(new double[] {
            from[0] + (to[0] - from[0]) * a,
            from[1] + (to[1] - from[1]) * a,
            from[0] + (to[0] - from[0]) * b,
            from[1] + (to[1] - from[1]) * b,
            left > 0 ? 1 : 0
        });
    }

    private static Optional<PageGrid> grid(double overlap) {
        return Optional.of(new PageGrid(3, OptionalInt.empty(), Length.ofMillimetres(overlap), 1));
    }

    private static PatternDrawing read(byte[] pdf, Optional<PageGrid> grid) throws DrawingException {
        return PdfPattern.read("p.pdf", pdf, ScaleStatement.NONE, grid);
    }

    private static void assertWhole(PatternDrawing drawing, double off) {
        assertThat(drawing.pieces()).as("%s", drawing).hasSize(2);
        List<DrawnPiece> bySize = new ArrayList<>(drawing.pieces());
        bySize.sort((a, b) ->
                Double.compare(b.outline().squareMillimetres(), a.outline().squareMillimetres()));
        assertThat(bySize.get(0).outline().squareMillimetres()).isCloseTo(AREA, within(2 + off * 600));
        assertThat(bySize.get(0).outline().box().width() / 1000.0).isCloseTo(490, within(0.02));
        assertThat(bySize.get(0).outline().box().height() / 1000.0).isCloseTo(290, within(0.02 + off));
        assertThat(bySize.get(1).outline().squareMillimetres()).isCloseTo(1200, within(0.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 25})
    void theWholeOnEachPageIsTakenOnce(double overlap) throws DrawingException {
        PatternDrawing drawing = read(wholeOnEach(overlap, 2), grid(overlap));
        assertWhole(drawing, 0);
        assertThat(drawing.warnings()).isEmpty();
    }

    /** Where each page shows the whole, a wrong overlap would make a piece of every page. */
    @ParameterizedTest
    @ValueSource(doubles = {8, 9, 12, 18})
    void theWholeOnEachPageAtAWrongOverlapIsRefused(double stated) {
        assertThatThrownBy(() -> read(wholeOnEach(10, 2), grid(stated)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("would lie %s mm beside itself"
                        .formatted(number(Math.abs(stated - 10)).substring(0, 3)))
                .hasMessageContaining("overlap");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 25})
    void linesGoOnFromPageToPage(double overlap) throws DrawingException {
        assertWhole(read(cutApart(overlap, 0), grid(overlap)), 0);
    }

    /** Where pages are off by 0.3 mm, that is said, and lines meet in the middle. */
    @Test
    void driftIsSaid() throws DrawingException {
        PatternDrawing drawing = read(cutApart(10, 0.3), grid(10));
        assertWhole(drawing, 0.3);
        assertThat(drawing.warnings())
                .anyMatch(line -> line.matches("The pages do not meet exactly: lines are up to 0\\.\\d\\d mm apart.*"));
    }

    @Test
    void pagesThatDoNotFitAreSaidOrRefused() throws DrawingException {
        PatternDrawing near = read(cutApart(10, 0), grid(14));
        assertThat(near.pieces()).hasSize(1);
        assertThat(near.warnings())
                .anyMatch(line -> line.matches("\\d lines end where two pages meet and do not go on"
                        + " \\(the nearest is \\d\\.\\d mm off\\): check the overlap.*"));
        assertThatThrownBy(() -> read(cutApart(10, 0), grid(60)))
                .isInstanceOf(DrawingException.class)
                .hasMessageContaining("where two pages meet")
                .hasMessageContaining("check the overlap");
    }

    /** Frames and the like, that stand at the same place on each page, are no part of the drawing. */
    @Test
    void whatIsOnEveryPageIsLeftOutAndSaid() throws DrawingException {
        String frame = rectangle(10, 10, WIDE - 20, HIGH - 20) + "10 5 m 30 5 l S\n";
        PatternDrawing drawing = read(cutApart(25, 0, frame), grid(25));
        assertWhole(drawing, 0);
        assertThat(drawing.leftOut()).contains("12 shapes that stand at the same place on every page");
    }

    /** A band of 500 × 60 mm on three pages in a row, and a line over all of them, alike on each. */
    @Test
    void theEdgesOfALongPieceAreNoFrame() throws DrawingException {
        WrittenByHand file = new WrittenByHand();
        for (int column = 0; column < 3; column++) {
            String edges = column == 0
                    ? "200 50 m 50 50 l 50 110 l 200 110 l S "
                    : column == 1 ? "0 50 m 200 50 l S 0 110 m 200 110 l S " : "0 50 m 150 50 l 150 110 l 0 110 l S ";
            file.page(box(), "2.834645669 0 0 2.834645669 0 0 cm 0 20 m 200 20 l S " + edges);
        }
        PatternDrawing drawing = read(file.bytes(), grid(0));
        assertThat(drawing.pieces()).hasSize(1);
        assertThat(drawing.pieces().get(0).outline().squareMillimetres()).isCloseTo(500 * 60, within(0.5));
        assertThat(drawing.leftOut()).noneMatch(line -> line.contains("on every page"));
    }

    @Test
    void otherPagesAreLeftOut() throws DrawingException {
        byte[] three = wholeOnEach(10, 3);
        // The upper row of three has nothing on it; the drawing begins with page 4.
        PatternDrawing drawing =
                read(three, Optional.of(new PageGrid(3, OptionalInt.of(2), Length.ofMillimetres(10), 4)));
        assertWhole(drawing, 0);
        assertWhole(read(three, grid(10)), 0);
    }

    @Test
    void aGridThatTheFileHasNotIsRefused() {
        byte[] six = wholeOnEach(10, 2);
        PageGrid late = new PageGrid(3, OptionalInt.empty(), Length.ZERO, 7);
        assertThatThrownBy(() -> read(six, Optional.of(late))).hasMessageContaining("p.pdf has 6 pages");
        PageGrid tall = new PageGrid(3, OptionalInt.of(3), Length.ZERO, 1);
        assertThatThrownBy(() -> read(six, Optional.of(tall))).hasMessageContaining("3 × 3 are 9");
        assertThatThrownBy(() -> read(six, grid(180))).hasMessageContaining("cannot overlap by 180 mm");
        byte[] mixed = new WrittenByHand()
                .page("/MediaBox [0 0 500 500]", "")
                .page("/MediaBox [0 0 500 600]", "")
                .bytes();
        assertThatThrownBy(() -> read(mixed, grid(0))).hasMessageContaining("page 2 is of another size than page 1");
    }

    /** Without a word on tiles each page stands alone, and the maker is told how to say it. */
    @Test
    void linesOverTheEdgeOfAPageAreSaid() throws DrawingException {
        PatternDrawing drawing = read(wholeOnEach(10, 2), Optional.empty());
        assertThat(drawing.warnings())
                .anyMatch(line -> line.contains("reaches over the edge") && line.contains("tiles:"));
    }
}
