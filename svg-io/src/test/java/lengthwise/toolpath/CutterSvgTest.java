package lengthwise.toolpath;

import static lengthwise.testing.MarkerDrawings.rectangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.LongStream;
import javax.xml.parsers.DocumentBuilderFactory;
import lengthwise.drawing.ScaleStatement;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.svg.MarkerDrawing;
import lengthwise.svg.MarkerNotes;
import lengthwise.svg.MarkerSvg;
import lengthwise.svg.MarkerSvgReader;
import lengthwise.svg.SvgPattern;
import lengthwise.testing.MarkerDrawings;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

@Tag("written")
class CutterSvgTest {
    @TempDir
    Path folder;

    private MarkerDrawing read(Marker marker) throws Exception {
        Path file = folder.resolve("marker.svg");
        Files.writeString(file, MarkerSvg.of(marker, new MarkerNotes("job", "Lengthwise", "", List.of(), List.of())));
        return MarkerSvgReader.read(file);
    }

    private static String written(MarkerDrawing marker, Kerf kerf) throws Exception {
        return CutterSvg.of(marker, ToolPath.of(marker, kerf), kerf, false);
    }

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> paths(String svg) throws Exception {
        List<Element> paths = new ArrayList<>();
        NodeList list = parsed(svg).getElementsByTagName("path");
        for (int i = 0; i < list.getLength(); i++) {
            paths.add((Element) list.item(i));
        }
        return paths;
    }

    /** Reads absolute moves and lines, in micrometres: all that the writer may write. */
    private static List<Point> points(String data) {
        assertThat(data).matches("M-?[0-9.]+ -?[0-9.]+( L-?[0-9.]+ -?[0-9.]+)+( Z)?");
        List<Point> points = new ArrayList<>();
        for (String part : data.replace(" Z", "").substring(1).split(" L", -1)) {
            String[] xy = part.split(" ", -1);
            points.add(new Point(
                    Math.round(Double.parseDouble(xy[0]) * 1000), Math.round(Double.parseDouble(xy[1]) * 1000)));
        }
        return points;
    }

    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    /** Each outline of a marker stands in the file, vertex by vertex, wherever it begins. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsWrittenReadsBackToTheMicrometre(long seed) throws Exception {
        MarkerDrawing all = read(SampleMarkers.random(seed));
        // Random pieces may overlap, which nobody cuts: one at a time.
        for (int i = 0; i < all.pieces().size(); i++) {
            Outline outline = all.pieces().get(i).outline();
            MarkerDrawing one = MarkerDrawings.of(outline);
            String svg = written(one, Kerf.NONE);
            Box page = CutterSvg.page(one, ToolPath.of(one, Kerf.NONE));
            List<Element> paths = paths(svg);
            assertThat(paths).hasSize(1 + outline.holes().size());
            assertSameRing(paths.get(paths.size() - 1), outline.shell().withoutFlatVertices(), page);
            for (int hole = 0; hole + 1 < paths.size(); hole++) {
                assertSameRing(paths.get(hole), outline.holes().get(hole), page);
            }
        }
    }

    private static void assertSameRing(Element path, Ring ring, Box page) {
        List<Point> points = points(path.getAttribute("d")).stream()
                .map(point -> point.plus(new Point(page.minX(), page.minY())))
                .toList();
        assertThat(path.getAttribute("d")).endsWith(" Z");
        assertThat(points).containsExactlyInAnyOrderElementsOf(ring.vertices());
        assertThat(Math.abs(Ring.of(points).doubleArea())).isEqualTo(Math.abs(ring.doubleArea()));
    }

    /** As any pattern drawing is: the same outlines come out of our own reader. */
    @Test
    void ourOwnReaderSeesTheSamePieces() throws Exception {
        MarkerDrawing marker = MarkerDrawings.of(
                Outline.of(Ring.of(0, 0, 100_000, 0, 120_123, 60_456, 20_789, 90_001)), rectangle(300, 5, 80, 120));
        Path file = folder.resolve("cut.svg");
        Files.writeString(file, written(marker, Kerf.NONE));
        List<Outline> read = SvgPattern.read(file, ScaleStatement.NONE).pieces().stream()
                .map(piece -> piece.outline())
                .toList();
        assertThat(read).hasSize(2);
        for (int i = 0; i < 2; i++) {
            assertThat(read.get(i).shell().vertices())
                    .containsExactlyInAnyOrderElementsOf(
                            marker.pieces().get(i).outline().shell().vertices());
        }
    }

    @Test
    void aSquareWithItsKerfMeasuresSoInTheFile() throws Exception {
        MarkerDrawing marker = MarkerDrawings.of(rectangle(0, 0, 100, 100));
        String svg = written(marker, new Kerf(Length.ofMillimetres(0.2), Kerf.Side.OUTWARD));
        List<Point> points = points(paths(svg).get(0).getAttribute("d"));
        assertThat(points)
                .containsExactlyInAnyOrder(
                        new Point(0, 0), new Point(100_200, 0), new Point(100_200, 100_200), new Point(0, 100_200));
        Element root = parsed(svg).getDocumentElement();
        // The cloth is 1 m wide and long; the path reaches 0.1 mm beyond two of its edges.
        assertThat(root.getAttribute("width")).isEqualTo("1000.100mm");
        assertThat(root.getAttribute("viewBox")).isEqualTo("0.000 0.000 1000.100 1000.100");
        assertThat(svg).contains("half of a kerf of 0.200 mm outside the cut line");
    }

    @ParameterizedTest
    @ValueSource(strings = {"single", "folded"})
    void thereAreHairlinesOnlyAndEveryThingStaysOnThePage(String which) throws Exception {
        MarkerDrawing marker = read(which.equals("single") ? SampleMarkers.singleLayer() : SampleMarkers.folded());
        String svg = written(marker, Kerf.NONE);
        Element root = parsed(svg).getDocumentElement();
        assertThat(root.getAttribute("fill")).isEqualTo("none");
        assertThat(Double.parseDouble(root.getAttribute("stroke-width"))).isLessThanOrEqualTo(0.05);
        assertThat(svg).doesNotContain("<text", "transform", "url(");
        double[] page = Arrays.stream(root.getAttribute("viewBox").split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        for (Element path : paths(svg)) {
            assertThat(path.hasAttribute("fill")).isFalse();
            for (Point point : points(path.getAttribute("d"))) {
                assertThat(point.x() / 1000.0).isBetween(0.0, page[2]);
                assertThat(point.y() / 1000.0).isBetween(0.0, page[3]);
            }
        }
        assertThat(svg).contains("fumes", "PVC", "manual");
    }

    /** In the file as well as in the path: within each piece nothing follows its outline but other parts of it. */
    @Test
    void inTheFileInnerCutsStandBeforeOutlines() throws Exception {
        String svg = written(read(SampleMarkers.singleLayer()), Kerf.NONE);
        NodeList groups = parsed(svg).getElementsByTagName("g");
        int inner = 0;
        assertThat(groups.getLength()).isEqualTo(18);
        for (int i = 0; i < groups.getLength(); i++) {
            NodeList cuts = ((Element) groups.item(i)).getElementsByTagName("path");
            boolean outlineSeen = false;
            for (int k = 0; k < cuts.getLength(); k++) {
                boolean outline =
                        ((Element) cuts.item(k)).getAttribute("data-cut").equals("outline");
                assertThat(outline || !outlineSeen).isTrue();
                outlineSeen |= outline;
                inner += outline ? 0 : 1;
            }
            assertThat(outlineSeen).isTrue();
        }
        // Each of three garments: two cups with a notch and a drill hole, a back with a notch and a hole.
        assertThat(inner).isEqualTo(3 * 6);
    }

    @Test
    void letteringIsOfStrokesAndFirst() throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        String svg = CutterSvg.of(marker, ToolPath.of(marker, Kerf.NONE), Kerf.NONE, true);
        assertThat(svg).doesNotContain("<text");
        Element first = (Element) parsed(svg).getElementsByTagName("g").item(0);
        assertThat(first.getAttribute("id")).isEqualTo("lettering");
        assertThat(first.getElementsByTagName("path").getLength())
                .isEqualTo(marker.pieces().size());
    }

    /** A name may hold anything. */
    @Test
    void whatIsCalledStrangelyStaysAComment() throws Exception {
        MarkerDrawing plain = MarkerDrawings.of(rectangle(0, 0, 100, 100));
        MarkerDrawing strange = new MarkerDrawing(
                "job",
                "--><script>alert(1)</script><!--",
                plain.length(),
                plain.cuttableWidth(),
                plain.pieces(),
                plain.numbers(),
                plain.marks(),
                plain.states(),
                plain.spread());
        assertThat(parsed(written(strange, Kerf.NONE))
                        .getElementsByTagName("script")
                        .getLength())
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG", "hi-IN-u-nu-deva"})
    void everyLocaleWritesTheSame(String tag) throws Exception {
        MarkerDrawing marker = read(SampleMarkers.singleLayer());
        ToolPath path = ToolPath.of(marker, Kerf.NONE);
        String here = CutterSvg.of(marker, path, Kerf.NONE, true) + ToolPathPicture.of(marker, path, 12.5);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            MarkerDrawing again = read(SampleMarkers.singleLayer());
            ToolPath there = ToolPath.of(again, Kerf.NONE);
            assertThat(CutterSvg.of(again, there, Kerf.NONE, true) + ToolPathPicture.of(again, there, 12.5))
                    .isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
    }

    /** The picture numbers each piece once, and its dashed ways are as long as the path says. */
    @Test
    void thePictureShowsTheOrderAndTheWaysBetween() throws Exception {
        MarkerDrawing marker =
                MarkerDrawings.of(rectangle(600, 0, 100, 100), rectangle(10, 0, 100, 100), rectangle(300, 0, 100, 100));
        ToolPath path = ToolPath.of(marker, Kerf.NONE);
        Document picture = parsed(ToolPathPicture.of(marker, path, 100));
        NodeList texts = ((Element) picture.getElementsByTagName("g").item(0)).getElementsByTagName("text");
        assertThat(texts.getLength()).isEqualTo(3);
        List<Double> middles = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            assertThat(texts.item(i).getTextContent()).isEqualTo(Integer.toString(i + 1));
            middles.add(Double.valueOf(((Element) texts.item(i)).getAttribute("x")));
        }
        // From the corner on: the square at 10 mm, at 300, at 600.
        assertThat(middles).isSorted();
        NodeList paths = picture.getElementsByTagName("path");
        Element travel = (Element) paths.item(paths.getLength() - 1);
        assertThat(travel.getAttribute("id")).isEqualTo("travel");
        assertThat(travel.getAttribute("stroke-dasharray")).isNotEmpty();
        double drawn = 0;
        for (String way : travel.getAttribute("d").split("(?= M)", -1)) {
            List<Point> ends = points(way.strip());
            drawn += ends.get(0).distance(ends.get(1));
        }
        assertThat(drawn).isEqualTo(path.travelLength());
    }
}
