package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Line;
import lengthwise.drawing.Pen;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Walks a marker's document and notes what is painted, in order. It knows the elements that {@link MarkerSvg} writes and
 * the basic shapes that may be added by hand; pictures are left out.
 */
final class PaintReader {
    private static final Set<String> SHAPES =
            Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon");
    private static final int MOST_POINTS = 2_000_000;
    private static final double LARGEST = 1e6;

    private final Cascade cascade;
    private final BasicShapes shapes;
    private final AffineTransform userToCloth;
    private final Element root;
    private final Map<String, Element> clips = new HashMap<>();

    final List<Painted> beside = new ArrayList<>();
    final List<Painted> cloth = new ArrayList<>();
    final List<List<Painted>> pieces = new ArrayList<>();
    final List<Painted> over = new ArrayList<>();

    /** @param userToCloth the map from the user units of the root to millimetres on the cloth */
    PaintReader(String file, SafeXml.Read source, AffineTransform userToCloth) throws DrawingException {
        this.cascade = new Cascade(source.document(), file, PaintStyle.PROPERTIES);
        this.shapes = new BasicShapes(new Pen.Budget(file, MOST_POINTS), new Warnings());
        this.userToCloth = userToCloth;
        this.root = source.document().getDocumentElement();
        NodeList all = source.document().getElementsByTagNameNS(SafeXml.SVG, "clipPath");
        for (int i = 0; i < all.getLength(); i++) {
            if (all.item(i) instanceof Element clip) {
                clips.putIfAbsent(clip.getAttribute("id"), clip);
            }
        }
    }

    void read() throws DrawingException {
        PaintStyle style = PaintStyle.INITIAL.child(cascade.of(root));
        AffineTransform map = transformed(root, userToCloth);
        for (Node child = root.getFirstChild(); child != null; child = child.getNextSibling()) {
            // The ground of the page is a rectangle of its own, and paper has one already.
            if (child instanceof Element element && !"rect".equals(element.getLocalName())) {
                visit(element, map, style, pieces.isEmpty() ? cloth : over);
            }
        }
    }

    private void visit(Element element, AffineTransform outer, PaintStyle above, List<Painted> into)
            throws DrawingException {
        PaintStyle style = above.child(cascade.of(element));
        String kind = String.valueOf(element.getLocalName());
        // Paper has no print; the cloth has it already.
        boolean print = element.getAttribute("data-area").equals("print");
        if (!style.shown() || !SafeXml.SVG.equals(element.getNamespaceURI()) || print) {
            return;
        }
        AffineTransform map = transformed(element, outer);
        if (SHAPES.contains(kind)) {
            shape(element, map, style).ifPresent(into::add);
        } else if (kind.equals("text")) {
            new Lines(element, map, into).read(style);
        } else if (kind.equals("g") || kind.equals("a") || kind.equals("switch")) {
            List<Painted> to = into;
            if (element.hasAttribute("data-piece")) {
                to = new ArrayList<>();
                pieces.add(to);
            } else if (element.getAttribute("id").equals("title")) {
                to = beside;
            }
            for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
                if (child instanceof Element inside) {
                    visit(inside, map, style, to == into && to == cloth && !pieces.isEmpty() ? over : to);
                }
            }
        }
    }

    private static AffineTransform transformed(Element element, AffineTransform outer) throws DrawingException {
        AffineTransform map = new AffineTransform(outer);
        // One that cannot be read was complained of when the pieces were read.
        Transforms.parse(element.getAttribute("transform")).ifPresent(map::concatenate);
        return map;
    }

    private Optional<Painted> shape(Element element, AffineTransform map, PaintStyle style) throws DrawingException {
        List<Chain> chains = chains(element, map);
        if (chains.isEmpty() || (style.fill().isEmpty() && style.stroke().isEmpty())) {
            return Optional.empty();
        }
        double scale = scale(map);
        String mark = element.hasAttribute("data-measures")
                ? MarkerPainting.CHECK_SQUARE
                : element.getAttribute("data-mark") + element.getAttribute("data-area");
        Optional<Line> line = style.stroke()
                .filter(colour -> style.strokeWidth() > 0)
                .map(colour -> new Line(
                        colour,
                        style.strokeWidth() * scale,
                        style.dashes().stream().map(dash -> dash * scale).toList(),
                        style.strokeOpacity()));
        return Optional.of(new Painted.Path(chains, style.fill(), line, clip(element, map), mark));
    }

    private List<Chain> chains(Element element, AffineTransform map) throws DrawingException {
        return shapes.chains(element, new Setting(map, 0, 0, Style.INITIAL, List.of(), 0), map);
    }

    private List<Chain> clip(Element element, AffineTransform map) throws DrawingException {
        String reference = element.getAttribute("clip-path");
        Element clip = reference.startsWith("url(#") && reference.endsWith(")")
                ? clips.get(reference.substring(5, reference.length() - 1))
                : null;
        List<Chain> chains = new ArrayList<>();
        for (Node child = clip == null ? null : clip.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inside) {
                chains.addAll(chains(inside, transformed(inside, map)));
            }
        }
        return chains;
    }

    private static double scale(AffineTransform map) {
        return Math.sqrt(Math.abs(map.getDeterminant()));
    }

    /** The lines of a text element: a new one begins where a new position is stated. */
    private final class Lines {
        private final Element text;
        private final AffineTransform map;
        private final List<Painted> into;
        private final StringBuilder words = new StringBuilder();
        private PaintStyle style = PaintStyle.INITIAL;
        private double x;
        private double y;

        Lines(Element text, AffineTransform map, List<Painted> into) {
            this.text = text;
            this.map = map;
            this.into = into;
        }

        void read(PaintStyle outer) {
            style = outer;
            move(text);
            collect(text, outer, 0);
            finish();
        }

        private void collect(Element parent, PaintStyle above, int depth) {
            for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
                if (child instanceof Element inside) {
                    PaintStyle own = above.child(cascade.of(inside));
                    if ("tspan".equals(inside.getLocalName()) && own.shown() && depth < 20) {
                        if (inside.hasAttribute("x") || inside.hasAttribute("y") || inside.hasAttribute("dy")) {
                            finish();
                            move(inside);
                        }
                        style = own;
                        collect(inside, own, depth + 1);
                    }
                } else if (child.getNodeType() == Node.TEXT_NODE) {
                    words.append(child.getNodeValue());
                }
            }
        }

        private void move(Element element) {
            x = shapes.length(element, "dx", 0) + (element.hasAttribute("x") ? shapes.length(element, "x", 0) : x);
            y = shapes.length(element, "dy", 0) + (element.hasAttribute("y") ? shapes.length(element, "y", 0) : y);
        }

        private void finish() {
            String line = words.toString().strip().replaceAll("\\s+", " ");
            words.setLength(0);
            Point2D at = map.transform(new Point2D.Double(x, y), null);
            double size = style.fontSize() * scale(map);
            boolean near = Math.abs(at.getX()) < LARGEST && Math.abs(at.getY()) < LARGEST && size < LARGEST;
            if (line.isEmpty() || style.fill().isEmpty() || !near) {
                return;
            }
            Point2D along = map.deltaTransform(new Point2D.Double(1, 0), null);
            into.add(new Painted.Words(
                    line,
                    at.getX(),
                    at.getY(),
                    size,
                    StrictMath.atan2(along.getY(), along.getX()),
                    style.anchor(),
                    style.bold(),
                    style.fill().get()));
        }
    }
}
