package lengthwise.hpgl;

import static lengthwise.testing.MarkerDrawings.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.hpgl.HpglMarker.Axis;
import lengthwise.hpgl.HpglMarker.Coordinates;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.Segment;
import lengthwise.svg.LaidState;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.testing.MarkerDrawings;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("written")
class HpglMarkerTest {
    /** Half of a hundredth of a millimetre, and the rounding of the comparison. */
    private static final double RESOLUTION = 0.005 + 1e-9;

    private static final double HEAD = PlotDrawing.HEAD / 1000.0;

    @TempDir
    Path folder;

    private MarkerDrawing read(Marker marker) throws Exception {
        Path file = folder.resolve("marker.svg");
        Files.writeString(
                file, MarkerSvg.of(marker, new MarkerNotes("Süß & Co", "Lengthwise", "", List.of(), List.of())));
        return MarkerSvgReader.read(file);
    }

    private static String plot(MarkerDrawing marker) throws Exception {
        return plot(marker, Optional.empty(), Axis.X);
    }

    private static String plot(MarkerDrawing marker, Optional<Frames> split, Axis axis) throws Exception {
        return HpglMarker.of(marker, split, axis, Coordinates.SCALED);
    }

    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    /** Pen 1 draws every outline and hole, vertex by vertex within 0.005 mm, x along the roll and y up. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aPlotterDrawsEveryCutLineWhereItIs(long seed) throws Exception {
        MarkerDrawing marker = read(SampleMarkers.random(seed));
        PlotterReader plotted = new PlotterReader(plot(marker));
        assertThat(plotted.pages).hasSize(1);
        List<List<double[]>> lines = plotted.pages.get(0).lines(1);
        List<Ring> rings = new ArrayList<>();
        for (int i = 0; i < marker.pieces().size(); i++) {
            Outline outline = marker.pieces().get(i).outline();
            rings.add(outline.shell().withoutFlatVertices());
            rings.addAll(outline.holes());
        }
        assertThat(lines).hasSameSizeAs(rings);
        // Random pieces may reach beyond the cloth; the plot then begins with them.
        double left = Math.min(
                0,
                HEAD + rings.stream().mapToLong(ring -> ring.box().minX()).min().orElse(0) / 1000.0);
        double bottom = Math.max(
                marker.cuttableWidth().millimetres(),
                rings.stream().mapToLong(ring -> ring.box().maxY()).max().orElse(0) / 1000.0);
        for (int i = 0; i < rings.size(); i++) {
            Ring ring = rings.get(i);
            List<double[]> line = lines.get(i);
            assertThat(line).hasSize(ring.size() + 1);
            for (int k = 0; k <= ring.size(); k++) {
                Point vertex = ring.vertex(k % ring.size());
                assertThat(line.get(k)[0]).isEqualTo(HEAD - left + vertex.x() / 1000.0, within(RESOLUTION));
                assertThat(line.get(k)[1]).isEqualTo(bottom - vertex.y() / 1000.0, within(RESOLUTION));
            }
        }
    }

    /** 10 cm are 4000 plotter units (40 a millimetre), which are called 10 000. */
    @Test
    void tenCentimetresAreTenThousandHundredths() throws Exception {
        String plot = plot(MarkerDrawings.of(rectangle(0, 0, 100, 50)));
        // The head takes 140 mm; the square's upper edge is at the top of the cloth, 1 m wide.
        assertThat(plot).startsWith("IN;\nPS").contains(";IP0,0,4000,4000;SC0,10000,0,10000;PA;\n");
        assertThat(plot).contains("PU14000,100000;PD24000,100000,24000,95000,14000,95000,14000,100000;");
        assertThat(plot).endsWith("PU;SP0;PG;\n");
        assertThat(StandardCharsets.US_ASCII.newEncoder().canEncode(plot)).isTrue();
    }

    /** 10 cm are 4000 plotter units; a plotter that knows no scale draws the same lines, to half a unit. */
    @Test
    void withoutAScaleTenCentimetresAreFourThousandUnits() throws Exception {
        String square = HpglMarker.of(
                MarkerDrawings.of(rectangle(0, 0, 100, 50)), Optional.empty(), Axis.X, Coordinates.PLOTTER_UNITS);
        assertThat(square)
                .contains("PU5600,40000;PD9600,40000,9600,38000,5600,38000,5600,40000;")
                .doesNotContain("IP", "SC");
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        PlotterReader.Page fine = new PlotterReader(plot(marker)).pages.get(0);
        PlotterReader.Page whole = new PlotterReader(
                        HpglMarker.of(marker, Optional.empty(), Axis.X, Coordinates.PLOTTER_UNITS))
                .pages.get(0);
        for (int pen = 1; pen <= 3; pen++) {
            assertThat(whole.lines(pen)).hasSameSizeAs(fine.lines(pen));
            for (int i = 0; i < fine.lines(pen).size(); i++) {
                for (int k = 0; k < fine.lines(pen).get(i).size(); k++) {
                    assertThat(whole.lines(pen).get(i).get(k))
                            .containsExactly(fine.lines(pen).get(i).get(k), within(0.0125 + RESOLUTION));
                }
            }
        }
    }

    /** Each frame states the scale again: a new page size takes it back. */
    @Test
    void everyFrameHasTheScale() throws Exception {
        String plot = plot(
                read(SampleMarkers.singleLayer()), Optional.of(new Frames(Length.ofMillimetres(300), false)), Axis.Y);
        assertThat(plot.split("PS", -1)).hasSameSizeAs(plot.split("SC0,10000,0,10000;", -1));
    }

    /** A letter drawn with y the wrong way would be its mirror image, and so would every piece. */
    @ParameterizedTest
    @ValueSource(strings = {"X", "Y"})
    void nothingIsMirrored(String axis) throws Exception {
        // An L with its foot to the right, y down the page: seen with y up it must turn the other way round.
        Outline ell = Outline.of(Ring.of(0, 0, 20_000, 0, 20_000, 80_000, 60_000, 80_000, 60_000, 100_000, 0, 100_000));
        PlotterReader plotted = new PlotterReader(plot(MarkerDrawings.of(ell), Optional.empty(), Axis.valueOf(axis)));
        List<double[]> line = plotted.pages.get(0).lines(1).get(0);
        double doubleArea = 0;
        for (int i = 1; i < line.size(); i++) {
            doubleArea += line.get(i - 1)[0] * line.get(i)[1] - line.get(i)[0] * line.get(i - 1)[1];
        }
        // Positive with y down, so negative with y up.
        assertThat(ell.shell().doubleArea()).isPositive();
        assertThat(doubleArea / 2).isEqualTo(-(20 * 80 + 60 * 20), within(1e-6));
    }

    @Test
    void theLengthRunsAlongTheAxisOfTheRoll() throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        double along = HEAD + marker.length().millimetres();
        double[] x = new PlotterReader(plot(marker, Optional.empty(), Axis.X)).sizes.get(0);
        double[] y = new PlotterReader(plot(marker, Optional.empty(), Axis.Y)).sizes.get(0);
        assertThat(x).containsExactly(along, marker.cuttableWidth().millimetres());
        assertThat(y).containsExactly(marker.cuttableWidth().millimetres(), along);
    }

    @Test
    void marksAndLettersHavePensOfTheirOwn() throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        PlotterReader.Page pens = new PlotterReader(plot(marker)).pages.get(0);
        assertThat(pens.byPen().keySet()).containsExactly(1, 2, 3);
        // 18 outlines and the eyelets of three backs.
        assertThat(pens.lines(1)).hasSize(21);
        List<double[]> notch = List.of(
                units(marker.marks().get(0).notches().get(0).from(), marker),
                units(marker.marks().get(0).notches().get(0).to(), marker));
        assertThat(pens.lines(2)).anySatisfy(line -> {
            assertThat(line).hasSize(2);
            assertThat(line.get(0)).containsExactly(notch.get(0), within(RESOLUTION));
            assertThat(line.get(1)).containsExactly(notch.get(1), within(RESOLUTION));
        });
    }

    private static double[] units(Point point, MarkerDrawing marker) {
        return new double[] {HEAD + point.x() / 1000.0, marker.cuttableWidth().millimetres() - point.y() / 1000.0};
    }

    /** The fold of a half piece 100 mm by 60 mm is drawn with the pen of the marks. */
    @Test
    void theFoldIsNoCutLine() throws Exception {
        MarkerDrawing marker = MarkerDrawings.withState(
                MarkerDrawings.of(rectangle(0, 0, 100, 60)),
                0,
                new LaidState(Optional.of(new Segment(new Point(0, 0), new Point(100_000, 0))), List.of(), false));
        PlotterReader.Page pens = new PlotterReader(plot(marker)).pages.get(0);
        assertThat(pens.lines(1)).hasSize(1);
        assertThat(length(pens.lines(1).get(0))).isEqualTo(220, within(1e-9));
        assertThat(pens.lines(2))
                .anySatisfy(line -> assertThat(line)
                        .usingElementComparator((a, b) -> Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9 ? 0 : 1)
                        .containsExactly(new double[] {HEAD, 1000}, new double[] {HEAD + 100, 1000}));
    }

    private static double length(List<double[]> line) {
        double sum = 0;
        for (int i = 1; i < line.size(); i++) {
            sum += Math.hypot(line.get(i)[0] - line.get(i - 1)[0], line.get(i)[1] - line.get(i - 1)[1]);
        }
        return sum;
    }

    /** An edge on the selvedge lies outside the cuttable width: the plot is as much wider, and begins at 0 all the same. */
    @ParameterizedTest
    @ValueSource(strings = {"X", "Y"})
    void whatReachesBeyondTheCuttableWidthIsOnThePlot(String axis) throws Exception {
        MarkerDrawing marker = MarkerDrawings.of(rectangle(0, -15, 100, 80), rectangle(200, 900, 100, 120));
        PlotterReader plotted = new PlotterReader(plot(marker, Optional.empty(), Axis.valueOf(axis)));
        double across = plotted.sizes.get(0)[axis.equals("X") ? 1 : 0];
        assertThat(across).isEqualTo(1000 + 15 + 20);
        for (int pen = 1; pen <= 3; pen++) {
            for (List<double[]> line : plotted.pages.get(0).lines(pen)) {
                assertThat(line)
                        .allSatisfy(point ->
                                assertThat(point[axis.equals("X") ? 1 : 0]).isBetween(0.0, across));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void framesTogetherDrawWhatOnePlotDraws(boolean overlap) throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        Frames frames = new Frames(Length.ofMillimetres(300), overlap);
        PlotterReader whole = new PlotterReader(plot(marker));
        PlotterReader split = new PlotterReader(plot(marker, Optional.of(frames), Axis.X));
        double step = overlap ? 280 : 300;
        double all = HEAD + marker.length().millimetres();
        assertThat(split.pages).hasSize((int) Math.ceil((all - (overlap ? 20 : 0)) / step));
        double together = 0;
        for (int i = 0; i < split.pages.size(); i++) {
            assertThat(split.sizes.get(i)[0]).isLessThanOrEqualTo(300);
            for (List<double[]> line : split.pages.get(i).lines(1)) {
                assertThat(line).allSatisfy(point -> assertThat(point[0]).isBetween(0.0, 300.0));
                together += lengthBehind(line, overlap && i > 0 ? 20 : 0);
            }
        }
        double once = whole.pages.get(0).lines(1).stream()
                .mapToDouble(HpglMarkerTest::length)
                .sum();
        // Each vertex is off by half a unit at most.
        assertThat(together).isEqualTo(once, within(once * 2e-3));
    }

    /** Returns the length of what lies behind a line across; before it, it is drawn on the frame before. */
    private static double lengthBehind(List<double[]> line, double from) {
        double sum = 0;
        for (int i = 1; i < line.size(); i++) {
            double[] a = line.get(i - 1);
            double[] b = line.get(i);
            double least = Math.min(a[0], b[0]);
            double most = Math.max(a[0], b[0]);
            double share = most <= from ? 0 : least >= from ? 1 : (most - from) / (most - least);
            sum += share * Math.hypot(b[0] - a[0], b[1] - a[1]);
        }
        return sum;
    }

    /** Two frames bear the same crosses, at the same place of the cloth. */
    @Test
    void overlapMarksMeet() throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        Frames frames = new Frames(Length.ofMillimetres(400), true);
        PlotterReader split = new PlotterReader(plot(marker, Optional.of(frames), Axis.X));
        for (int i = 0; i + 1 < split.pages.size(); i++) {
            assertThat(crossAt(split.pages.get(i), 390)).isEqualTo(2);
            assertThat(crossAt(split.pages.get(i + 1), 10)).isEqualTo(2);
        }
    }

    /** Returns how many upright strokes of 10 mm there are at an x. */
    private static long crossAt(PlotterReader.Page pens, double x) {
        return pens.lines(2).stream()
                .filter(line -> line.size() == 2
                        && Math.abs(line.get(0)[0] - x) < 0.05
                        && Math.abs(line.get(1)[0] - x) < 0.05
                        && Math.abs(length(line) - 10) < 0.05)
                .count();
    }

    /** What the marker is called never becomes a command. */
    @Test
    void namesAreDrawnAndNotSpoken() throws Exception {
        MarkerDrawing plain = MarkerDrawings.of(rectangle(0, 0, 100, 50));
        MarkerDrawing strange = new MarkerDrawing(
                "\u0003;SP1;PD0,0;\u001b%0A",
                "LB;IN;",
                plain.length(),
                plain.cuttableWidth(),
                plain.pieces(),
                plain.numbers(),
                plain.marks(),
                plain.states(),
                plain.spread());
        String plot = plot(strange);
        assertThat(plot).doesNotContain("LB", "\u0003", "\u001b", "PD0,0");
        assertThat(plot.split("IN", -1)).hasSize(2);
        assertThat(new PlotterReader(plot).pages.get(0).lines(1)).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva", "tr-TR"})
    void everyLocaleWritesTheSame(String tag) throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        String here = plot(marker);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(plot(read(SampleMarkers.singleLayer()))).isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void ourReaderRefusesWhatWeDoNotWrite() {
        assertThatThrownBy(() -> HpglReader.pages("IN;LBhello\u0003;")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> HpglReader.pages("IN;SP9;PU0,0;PD1,1;PU;PG;")).hasMessageContaining("pen 9");
        assertThatThrownBy(() -> HpglReader.pages("IN;RO90;")).hasMessageContaining("RO");
    }
}
