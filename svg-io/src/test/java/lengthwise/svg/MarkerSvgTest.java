package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.OnHand;
import lengthwise.model.Placement;
import lengthwise.testing.SampleMarkers;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

@Tag("written")
class MarkerSvgTest {
    static final MarkerNotes NOTES = new MarkerNotes(
            "Plover swim set",
            "Lengthwise 0.1.0",
            "1.00 m (1 1/8 yd)",
            List.of("One layer."),
            List.of("One to spare."));

    static Stream<Marker> markers() {
        return Stream.concat(
                Stream.of(SampleMarkers.singleLayer(), SampleMarkers.folded()),
                IntStream.range(0, 12).mapToObj(SampleMarkers::random));
    }

    @ParameterizedTest
    @MethodSource("markers")
    void oneUnitIsOneMillimetreAndThePageHoldsTheWholeCloth(Marker marker) throws Exception {
        Element root = parsed(MarkerSvg.of(marker, NOTES)).getDocumentElement();
        double[] viewBox = numbers(root.getAttribute("viewBox"));
        assertThat(root.getAttribute("width")).isEqualTo(text(viewBox[2]) + "mm");
        assertThat(root.getAttribute("height")).isEqualTo(text(viewBox[3]) + "mm");
        double clothLength = marker.length()
                .plus(marker.order().fabric().spread().endAllowance().times(2))
                .millimetres();
        assertThat(viewBox[0]).isNegative();
        assertThat(viewBox[0] + viewBox[2]).isGreaterThan(clothLength);
        assertThat(viewBox[1] + viewBox[3])
                .isGreaterThan(marker.order().fabric().laidWidth().millimetres());
    }

    @ParameterizedTest
    @MethodSource("markers")
    void theFirstPathOfEachPieceIsItsCutLineVertexByVertex(Marker marker) throws Exception {
        Document svg = parsed(MarkerSvg.of(marker, NOTES));
        List<Element> pieces = pieces(svg);
        List<Placement> placements = marker.inLayingOrder();
        assertThat(pieces).hasSameSizeAs(placements);
        long endAllowance = marker.order().fabric().spread().endAllowance().micrometres();
        long edge = marker.order().fabric().edgesOnTable().near().micrometres();
        for (int i = 0; i < pieces.size(); i++) {
            Placement placement = placements.get(i);
            Element piece = pieces.get(i);
            assertThat(piece.getAttribute("data-piece"))
                    .isEqualTo(placement.item().piece().name());
            assertThat(piece.getAttribute("data-size"))
                    .isEqualTo(placement.item().piece().size().name());
            assertThat(piece.getAttribute("data-hand"))
                    .isEqualTo(placement.item().hand().letter());
            String data = first(piece, "path").getAttribute("d");
            assertThat(data).matches("(M-?\\d+\\.\\d{3} -?\\d+\\.\\d{3}( L-?\\d+\\.\\d{3} -?\\d+\\.\\d{3})+ Z ?)+");
            Outline expected = placement.outline().moved(new Point(endAllowance, edge));
            List<Ring> rings = rings(data);
            assertThat(rings.get(0)).isEqualTo(expected.shell());
            assertThat(rings.subList(1, rings.size())).isEqualTo(expected.holes());
        }
    }

    @ParameterizedTest
    @MethodSource("markers")
    void nothingOnOrAboveAPieceIsTransformed(Marker marker) throws Exception {
        for (Element piece : pieces(parsed(MarkerSvg.of(marker, NOTES)))) {
            for (Element e = first(piece, "path"); ; e = (Element) e.getParentNode()) {
                assertThat(e.hasAttribute("transform")).isFalse();
                if (e.getTagName().equals("svg")) {
                    break;
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("markers")
    void labelsStayInsideTheirPiecesAndReadUpright(Marker marker) throws Exception {
        List<Element> pieces = pieces(parsed(MarkerSvg.of(marker, NOTES)));
        for (Element piece : pieces) {
            Element label = first(piece, "text");
            double size = Double.parseDouble(label.getAttribute("font-size"));
            boolean turned = label.hasAttribute("transform");
            if (turned) {
                assertThat(label.getAttribute("transform")).startsWith("rotate(-90 ");
            }
            boolean keyed = label.getTextContent().equals(piece.getAttribute("data-number"));
            assertThat(keyed || size >= 3)
                    .as("%s mm: %s", size, label.getTextContent())
                    .isTrue();
            List<Ring> rings = rings(first(piece, "path").getAttribute("d"));
            NodeList lines = label.getElementsByTagName("tspan");
            double[] centre = turned
                    ? numbers(label.getAttribute("transform")
                            .replace("rotate(-90 ", "")
                            .replace(")", ""))
                    : new double[2];
            for (int i = 0; i < lines.getLength(); i++) {
                Element line = (Element) lines.item(i);
                double x = Double.parseDouble(line.getAttribute("x"));
                double y = Double.parseDouble(line.getAttribute("y"));
                String words = line.getTextContent();
                // DejaVu Sans, the widest face asked for: blanks and dots 0.32 of the size, others 0.62 on average.
                long narrow = words.chars().filter(c -> " ·-".indexOf(c) >= 0).count();
                double half = size * (0.32 * narrow + 0.62 * (words.length() - narrow)) / 2;
                for (int step = -10; step <= 10; step++) {
                    for (double up : new double[] {-0.15, 0.73}) {
                        double px = x + half * step / 10;
                        double py = y - up * size;
                        double[] at = turned
                                ? new double[] {centre[0] + py - centre[1], centre[1] - (px - centre[0])}
                                : new double[] {px, py};
                        assertThat(isInside(rings, 1000 * at[0], 1000 * at[1]))
                                .as(
                                        "%s of %s at %s",
                                        words, piece.getAttribute("data-piece"), List.of(at[0], at[1], size))
                                .isTrue();
                    }
                }
            }
        }
    }

    /** 1 in = 25.4 mm exactly (International Yard and Pound Agreement, 1959), so 4 in is 101.6 mm and not 100. */
    @Test
    void theCheckSquaresMeasureTenCentimetresAndFourInches() {
        String svg = MarkerSvg.of(SampleMarkers.singleLayer(), NOTES);
        assertThat(svg).contains("data-measures=\"100.000\"").contains("data-measures=\"101.600\"");
        assertThat(svg).contains("h100.000 v100.000 h-100.000 Z").contains("h101.600 v101.600 h-101.600 Z");
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva", "tr-TR"})
    void isTheSameInEveryLocale(String tag) {
        String expected = MarkerSvg.of(SampleMarkers.singleLayer(), NOTES);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            assertThat(MarkerSvg.of(SampleMarkers.singleLayer(), NOTES)).isEqualTo(expected);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void strangeNamesAreWrittenSafely() throws Exception {
        String job = "\"Möwe\" <b>& 'co' 漢字 😀 \u0001";
        Document svg = parsed(MarkerSvg.of(
                SampleMarkers.folded(), new MarkerNotes(job, "Lengthwise", "", List.of("a < b & c"), List.of())));
        assertThat(svg.getDocumentElement().getAttribute("data-job")).isEqualTo(job.replace('\u0001', '\uFFFD'));
        assertThat(svg.getDocumentElement().getTextContent()).contains("a < b & c");
    }

    @Test
    void smallPiecesBearANumberWithAKey() {
        String svg = MarkerSvg.of(SampleMarkers.singleLayer(), NOTES);
        assertThat(svg).contains("6 = tab · S · garment 1");
    }

    @Test
    void saysHowTheClothLies() {
        assertThat(MarkerSvg.of(SampleMarkers.singleLayer(), NOTES))
                .contains("RIGHT SIDE UP", ">SELVEDGE<", "print up", "One layer.", ">flaw<");
        assertThat(MarkerSvg.of(SampleMarkers.folded(), NOTES))
                .contains("FOLDED, RIGHT SIDES TOGETHER", ">FOLD<", ">BOTH SELVEDGES<", "on fold", "L + R", "+ 1 spare")
                .doesNotContain("print up");
    }

    /** A remnant is drawn in the cloth's coordinates: moved by the end allowance and the unusable edge. */
    @Test
    void theEdgeOfARemnantIsDrawn() {
        Marker marker = SampleMarkers.singleLayer();
        Outline triangle = Outline.of(Ring.of(0, 0, 900_000, 0, 0, 900_000));
        Fabric remnant =
                marker.order().fabric().withOnHand(new OnHand(Length.ofMillimetres(900), Optional.of(triangle)));
        Marker onRemnant = new Marker(marker.order().withFabric(remnant), marker.placements(), marker.length());
        assertThat(MarkerSvg.of(onRemnant, NOTES)).contains("data-area=\"remnant\"");
        assertThat(MarkerSvg.of(marker, NOTES)).doesNotContain("remnant");
    }

    @Test
    void cutLinesAreHairlines() throws Exception {
        for (Element piece : pieces(parsed(MarkerSvg.of(SampleMarkers.singleLayer(), NOTES)))) {
            assertThat(Double.parseDouble(first(piece, "path").getAttribute("stroke-width")))
                    .isCloseTo(0.25, within(0.05));
        }
    }

    private static Document parsed(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> pieces(Document svg) {
        NodeList groups = svg.getElementsByTagName("g");
        return IntStream.range(0, groups.getLength())
                .mapToObj(i -> (Element) groups.item(i))
                .filter(group -> group.hasAttribute("data-piece"))
                .toList();
    }

    private static Element first(Element parent, String name) {
        return (Element) parent.getElementsByTagName(name).item(0);
    }

    private static double[] numbers(String text) {
        return Stream.of(text.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    private static List<Ring> rings(String data) {
        List<Ring> rings = new ArrayList<>();
        Pattern vertex = Pattern.compile("(-?)(\\d+)\\.(\\d{3}) (-?)(\\d+)\\.(\\d{3})");
        for (String ring : data.split("Z", -1)) {
            List<Point> points = new ArrayList<>();
            Matcher matcher = vertex.matcher(ring);
            while (matcher.find()) {
                points.add(new Point(
                        Long.parseLong(matcher.group(1) + matcher.group(2) + matcher.group(3)),
                        Long.parseLong(matcher.group(4) + matcher.group(5) + matcher.group(6))));
            }
            if (!points.isEmpty()) {
                rings.add(Ring.of(points));
            }
        }
        return rings;
    }

    private static boolean isInside(List<Ring> rings, double x, double y) {
        boolean inside = false;
        for (Ring ring : rings) {
            for (int i = 0; i < ring.size(); i++) {
                double fromX = ring.x(i);
                double fromY = ring.y(i);
                double toX = fromX + ring.edge(i).x();
                double toY = fromY + ring.edge(i).y();
                if ((fromY > y) != (toY > y) && x < fromX + (y - fromY) / (toY - fromY) * (toX - fromX)) {
                    inside = !inside;
                }
            }
        }
        return inside;
    }
}
