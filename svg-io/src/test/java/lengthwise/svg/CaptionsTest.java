package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import lengthwise.model.Direction;
import lengthwise.model.Marker;
import lengthwise.testing.SampleMarkers;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * What is written along the edges of the cloth is whole and apart, however short the cloth is: measured with the letters of
 * Liberation Sans, which are as wide as those of the faces that drawings ask for first.
 */
class CaptionsTest {
    private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

    static Stream<Marker> markers() {
        return Stream.concat(
                Stream.of(SampleMarkers.small(), SampleMarkers.singleLayer(), SampleMarkers.folded()),
                Arrays.stream(Direction.values()).map(SampleMarkers::tieAlone));
    }

    @ParameterizedTest
    @MethodSource("markers")
    void onTheMarker(Marker marker) throws Exception {
        String svg = MarkerSvg.of(marker, new MarkerNotes("job", "a test", "", List.of(), List.of()));
        Element root = parsed(svg);
        List<Element> captions = new ArrayList<>();
        NodeList groups = root.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            Element group = (Element) groups.item(i);
            if (List.of("edges", "print").contains(group.getAttribute("id"))) {
                captions.addAll(texts(group));
            }
        }
        assertWholeAndApart(root, captions);
    }

    @ParameterizedTest
    @MethodSource("markers")
    void onItsPicture(Marker marker) throws Exception {
        // As tall as the placement sheet, the estimate and the report draw it.
        for (double tallest : new double[] {75, 90, 110}) {
            Markup page = new Markup();
            MarkerPicture.draw(page, marker, tallest);
            Element root = parsed(page.toString());
            assertWholeAndApart(
                    root,
                    texts(root).stream()
                            .filter(text -> !text.hasAttribute("font-weight"))
                            .toList());
        }
    }

    private static void assertWholeAndApart(Element root, List<Element> captions) throws Exception {
        double[] view = Stream.of(root.getAttribute("viewBox").split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Rectangle2D page = new Rectangle2D.Double(view[0], view[1], view[2], view[3]);
        List<Rectangle2D> before = new ArrayList<>();
        for (Element caption : captions) {
            if (caption.getTextContent().isEmpty()) {
                continue;
            }
            Rectangle2D room = room(root, caption);
            assertThat(page.contains(room))
                    .as("%s at %s on %s", caption.getTextContent(), room, page)
                    .isTrue();
            assertThat(before).as("%s at %s", caption.getTextContent(), room).noneMatch(room::intersects);
            before.add(room);
        }
        assertThat(before).hasSizeGreaterThan(1);
    }

    private static Rectangle2D room(Element root, Element caption) throws Exception {
        double size = number(caption.hasAttribute("font-size") ? caption : root, "font-size");
        Rectangle2D room = sans().deriveFont((float) size)
                .createGlyphVector(EXACT, caption.getTextContent())
                .getVisualBounds();
        double along = sans().deriveFont((float) size)
                .createGlyphVector(EXACT, caption.getTextContent())
                .getLogicalBounds()
                .getWidth();
        double before = switch (caption.getAttribute("text-anchor")) {
            case "middle" -> along / 2;
            case "end" -> along;
            default -> 0;
        };
        double x = number(caption, "x");
        double y = number(caption, "y");
        AffineTransform there = new AffineTransform();
        if (caption.getAttribute("transform").startsWith("rotate(-90 ")) {
            there.rotate(-Math.PI / 2, x, y);
        }
        there.translate(x - before, y);
        return there.createTransformedShape(room).getBounds2D();
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    private static Font sans() throws Exception {
        try (InputStream file =
                PDDocument.class.getResourceAsStream("/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf")) {
            return Font.createFont(Font.TRUETYPE_FONT, file);
        }
    }

    private static List<Element> texts(Element in) {
        NodeList texts = in.getElementsByTagName("text");
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < texts.getLength(); i++) {
            all.add((Element) texts.item(i));
        }
        return all;
    }

    private static Element parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
    }
}
