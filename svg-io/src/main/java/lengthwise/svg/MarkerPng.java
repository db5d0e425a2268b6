package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;
import lengthwise.svg.Viewport.ViewBox;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.apache.batik.transcoder.ErrorHandler;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/**
 * Paints a marker's file as a picture in pixels: for a screen, not to cut by. The file is in strange hands once it was
 * written, so only what a marker is drawn with is painted: shapes, groups and words, with no reference to anything
 * else.
 */
public final class MarkerPng {
    /** A picture of more pixels takes more memory than a small machine has. */
    private static final long MOST_PIXELS = 64_000_000;

    private static final Set<String> PAINTED = Set.of(
            "svg", "g", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan", "title");

    private static final Set<String> ATTRIBUTES = Set.of(
            "id",
            "d",
            "x",
            "y",
            "x1",
            "y1",
            "x2",
            "y2",
            "dx",
            "dy",
            "cx",
            "cy",
            "r",
            "rx",
            "ry",
            "points",
            "width",
            "height",
            "viewBox",
            "preserveAspectRatio",
            "transform",
            "display",
            "visibility",
            "opacity",
            "fill",
            "fill-opacity",
            "fill-rule",
            "stroke",
            "stroke-width",
            "stroke-opacity",
            "stroke-linejoin",
            "stroke-linecap",
            "stroke-miterlimit",
            "font-family",
            "font-size",
            "font-weight",
            "font-style",
            "text-anchor",
            "style");

    /** Dashes finer than these on a line without end would never be painted. */
    private static final Pattern COARSE_DASHES =
            Pattern.compile("none|[1-9][0-9]{0,2}(\\.[0-9]+)?([ ,]+[1-9][0-9]{0,2}(\\.[0-9]+)?)*");

    private static final Pattern UNSAFE_STYLE =
            Pattern.compile("url|import|expression|dash|filter|mask|marker", Pattern.CASE_INSENSITIVE);

    /** So much dashed line, in user units, is painted in seconds; what is beyond is painted without dashes. */
    private static final double MOST_DASHED = 1e7;

    private static final int MOST_POINTS = 2_000_000;

    private final Pen.Budget budget;
    private final double hairline;
    private double dashed;

    private MarkerPng(Path file, double hairline) {
        this.budget = new Pen.Budget(file.toString(), MOST_POINTS);
        this.hairline = hairline;
    }

    /**
     * Returns a picture as the bytes of a PNG file.
     *
     * @param pixels how wide it is; its height follows
     * @throws DrawingException if the file cannot be read or painted, or the picture would be too large
     */
    public static byte[] of(Path file, int pixels) throws DrawingException {
        Element root = SafeXml.read(file).document().getDocumentElement();
        double[] size = size(file, root);
        long height = Math.max(1, StrictMath.round(pixels * size[1] / size[0]));
        if (height * pixels > MOST_PIXELS) {
            throw new DrawingException(
                    "%s: a picture %s pixels wide would be %s high, which is too large; %s wide is possible."
                            .formatted(file, Integer.toString(pixels), Long.toString(height), Long.toString((long)
                                    Math.sqrt(MOST_PIXELS * size[0] / size[1]))));
        }
        // Thinner lines would fade away.
        double hairline =
                ViewBox.parse(root.getAttribute("viewBox")).map(ViewBox::width).orElse(size[0] / SvgLength.PIXEL)
                        / pixels;
        Document painted = SVGDOMImplementation.getDOMImplementation().createDocument(SafeXml.SVG, "svg", null);
        new MarkerPng(file, hairline).copy(root, painted.getDocumentElement());
        return painted(file, painted, pixels, height);
    }

    private static double[] size(Path file, Element root) throws DrawingException {
        double width = SvgLength.parse(root.getAttribute("width"))
                .map(SvgLength::millimetres)
                .orElse(0.0);
        double height = SvgLength.parse(root.getAttribute("height"))
                .map(SvgLength::millimetres)
                .orElse(0.0);
        if (width > 0 && height > 0) {
            return new double[] {width, height};
        }
        throw new DrawingException(
                file + ": the drawing does not state its size; save it with a page size in" + " millimetres.");
    }

    /** What cannot be painted is not left out in silence. */
    private static final class Strict implements ErrorHandler {
        @Override
        public void error(TranscoderException e) throws TranscoderException {
            throw e;
        }

        @Override
        public void fatalError(TranscoderException e) throws TranscoderException {
            throw e;
        }

        @Override
        public void warning(TranscoderException e) {
            // Such as a face that is not there; another is taken.
        }
    }

    private static byte[] painted(Path file, Document drawing, int width, long height) throws DrawingException {
        PNGTranscoder transcoder = new PNGTranscoder();
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_WIDTH, (float) width);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_HEIGHT, (float) height);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_EXECUTE_ONLOAD, false);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOWED_SCRIPT_TYPES, "");
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
        transcoder.addTranscodingHint(PNGTranscoder.KEY_BACKGROUND_COLOR, java.awt.Color.WHITE);
        transcoder.setErrorHandler(new Strict());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            transcoder.transcode(new TranscoderInput(drawing), new TranscoderOutput(bytes));
        } catch (TranscoderException | RuntimeException e) {
            throw new DrawingException("%s: cannot be painted: %s".formatted(file, sentence(e)), e);
        }
        return bytes.toByteArray();
    }

    /** The painter says what is wrong somewhere below empty lines, wrappers and their names. */
    private static String sentence(Exception e) {
        String all = e.toString() + "\n" + e.getCause();
        return all.lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.endsWith(":") && !line.endsWith("null"))
                .findFirst()
                .orElse("it is damaged");
    }

    private void copy(Element from, Element to) throws DrawingException {
        NamedNodeMap attributes = from.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
            Node attribute = attributes.item(i);
            if (attribute.getNamespaceURI() == null
                    && isHarmless(from, attribute.getNodeName(), attribute.getNodeValue())) {
                to.setAttributeNS(null, attribute.getNodeName(), shown(attribute));
            }
        }
        for (Node child = from.getFirstChild(); child != null; child = child.getNextSibling()) {
            Document document = to.getOwnerDocument();
            if (child instanceof Element inside) {
                boolean print = inside.getAttribute("data-area").equals("print");
                if (SafeXml.SVG.equals(inside.getNamespaceURI()) && PAINTED.contains(inside.getLocalName()) && !print) {
                    Element copied = document.createElementNS(SafeXml.SVG, inside.getLocalName());
                    to.appendChild(copied);
                    copy(inside, copied);
                }
            } else if (child.getNodeType() == Node.TEXT_NODE
                    && List.of("text", "tspan").contains(to.getLocalName())) {
                to.appendChild(document.createTextNode(child.getNodeValue()));
            }
        }
    }

    private String shown(Node attribute) {
        String value = attribute.getNodeValue();
        boolean thin = attribute.getNodeName().equals("stroke-width")
                && value.matches("[0-9]{1,6}(\\.[0-9]{1,6})?")
                && Double.parseDouble(value) < hairline;
        return thin ? Double.toString(hairline) : value;
    }

    private boolean isHarmless(Element element, String name, String value) throws DrawingException {
        return switch (name) {
            case "style" -> !UNSAFE_STYLE.matcher(value).find();
            case "stroke-dasharray" ->
                element.getLocalName().equals("path")
                        && COARSE_DASHES.matcher(value.strip()).matches()
                        && isShort(element);
            default -> ATTRIBUTES.contains(name) && !value.contains("url(");
        };
    }

    /** Says whether a path may be dashed: not if it is so long that its dashes could not be counted. */
    private boolean isShort(Element path) throws DrawingException {
        TransformedPen pen = new TransformedPen(new AffineTransform(), budget);
        try {
            PathData.draw(path.getAttribute("d"), pen);
        } catch (Pen.TooFarException e) {
            return false;
        }
        for (Chain chain : pen.chains()) {
            for (int i = 1; i < chain.points().size(); i++) {
                dashed += chain.points().get(i - 1).distance(chain.points().get(i)) / 1000;
            }
        }
        return dashed <= MOST_DASHED;
    }
}
