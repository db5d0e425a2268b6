package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.drawing.Chain;
import lengthwise.drawing.Drawing;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.DrawnShape;
import lengthwise.drawing.DrawnShape.FillRule;
import lengthwise.drawing.DrawnText;
import lengthwise.drawing.Group;
import lengthwise.drawing.Names;
import lengthwise.drawing.Pen;
import lengthwise.geometry.Box;
import lengthwise.svg.Viewport.ViewBox;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Walks an SVG document as it would be painted and notes the geometry of what it meets, in millimetres on the page.
 * What is only kept for use elsewhere (definitions, clips, masks, patterns, markers) is not drawn.
 *
 * <p>All arithmetic is in double precision; Batik's own painting is in single precision, which is too coarse for a
 * drawing far from the origin.
 */
final class SvgReader {
    private static final String XLINK = "http://www.w3.org/1999/xlink";
    private static final int MOST_POINTS = 1_000_000;
    private static final int MOST_USED = 50_000;
    private static final int DEEPEST = 1000;
    private static final Pattern STYLE_TRANSFORM = Pattern.compile("(?:^|;)\\s*transform\\s*:([^;]*)");
    private static final Set<String> NOT_DRAWN = Set.of(
            "defs",
            "symbol",
            "clipPath",
            "mask",
            "pattern",
            "marker",
            "style",
            "script",
            "metadata",
            "title",
            "desc",
            "foreignObject",
            "linearGradient",
            "radialGradient",
            "filter",
            "font");

    private final String file;
    private final SafeXml.Read source;
    private final Cascade cascade;
    private final Map<String, Element> ids = new HashMap<>();

    private Warnings warnings = new Warnings();
    private BasicShapes basicShapes;
    private ArrowHeads arrowHeads;
    private final List<DrawnShape> shapes = new ArrayList<>();
    private final List<DrawnText> texts = new ArrayList<>();
    private final Set<Element> inUse = new HashSet<>();
    private int visits;
    private int groups;
    private int pictures;
    private final Map<String, Integer> notRead = new TreeMap<>();

    SvgReader(String file, SafeXml.Read source) throws DrawingException {
        this.file = file;
        this.source = source;
        this.cascade = new Cascade(source.document(), file, Style.PROPERTIES);
        this.basicShapes = new BasicShapes(new Pen.Budget(file, MOST_POINTS), warnings);
        this.arrowHeads = new ArrowHeads(ids, basicShapes);
        NodeList all = source.document().getElementsByTagNameNS("*", "*");
        for (int i = 0; i < all.getLength(); i++) {
            if (all.item(i) instanceof Element element && element.hasAttribute("id")) {
                ids.putIfAbsent(element.getAttribute("id"), element);
            }
        }
    }

    /** Draws the document at a scale that the maker states, or at its own. */
    Drawing draw(OptionalDouble millimetresPerUnit) throws DrawingException {
        shapes.clear();
        texts.clear();
        visits = 0;
        groups = 0;
        pictures = 0;
        notRead.clear();
        warnings = new Warnings();
        basicShapes = new BasicShapes(new Pen.Budget(file, MOST_POINTS), warnings);
        arrowHeads = new ArrowHeads(ids, basicShapes);

        Element root = source.document().getDocumentElement();
        Sheet sheet = Sheet.of(root, source.generator(), millimetresPerUnit);
        sheet.warnings().forEach(warnings::add);
        Setting setting =
                new Setting(sheet.toPage(), sheet.viewWidth(), sheet.viewHeight(), Style.INITIAL, List.of(), 0);
        children(root, styled(root, setting));
        for (String complaint : cascade.complaints()) {
            warnings.add("A style cannot be read and is ignored: " + complaint + ".");
        }
        List<String> leftOut = new ArrayList<>();
        if (pictures > 0) {
            leftOut.add(pictures == 1 ? "1 picture placed in the file" : pictures + " pictures placed in the file");
        }
        notRead.forEach((kind, times) -> leftOut.add("%d × <%s>, which is neither a shape nor a text of SVG 1.1"
                .formatted(times, kind.substring(0, Math.min(kind.length(), 40)))));
        return new Drawing(
                file,
                List.of(new Box(0, 0, micrometres(sheet.widthMm()), micrometres(sheet.heightMm()))),
                sheet.millimetresPerUnit(),
                sheet.scaleStated(),
                shapes,
                texts,
                warnings.sentences(),
                leftOut);
    }

    private static long micrometres(double millimetres) {
        return StrictMath.round(Math.max(0, Math.min(millimetres, 1e6)) * 1000);
    }

    private void children(Element parent, Setting setting) throws DrawingException {
        for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element element) {
                visit(element, setting);
            }
        }
    }

    private void visit(Element element, Setting parent) throws DrawingException {
        visit(element, parent, ElementNames.of(element));
    }

    private void visit(Element element, Setting parent, Names names) throws DrawingException {
        String kind = String.valueOf(element.getLocalName());
        if (SafeXml.UNKNOWN.equals(element.getNamespaceURI()) || kind.equals("foreignObject")) {
            notRead.merge(kind, 1, Integer::sum);
        }
        if (!SafeXml.SVG.equals(element.getNamespaceURI()) || NOT_DRAWN.contains(kind)) {
            return;
        }
        if ((!inUse.isEmpty() && ++visits > MOST_USED) || parent.depth() > DEEPEST) {
            throw new DrawingException(
                    file + ", " + ElementWords.place(element) + ": <use> repeats so much that the drawing grows "
                            + "beyond " + MOST_USED + " shapes; unlink the clones and remove what is not needed.");
        }
        Setting setting = styled(element, parent);
        switch (kind) {
            case "g", "a" -> children(element, setting.in(group(element, names)));
            case "switch" -> firstThatFits(element, setting);
            case "svg" ->
                nested(element, setting, names, element.getAttribute("width"), element.getAttribute("height"));
            case "use" -> use(element, setting);
            case "image" -> pictures++;
            case "text" -> texts.addAll(new TextLines(cascade, element, setting).read());
            case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon" -> shape(element, setting, names);
            default -> {
                // Unknown elements are not painted.
            }
        }
    }

    private Setting styled(Element element, Setting parent) throws DrawingException {
        Style style = parent.style().child(cascade.of(element));
        Setting setting = new Setting(
                parent.toPage(), parent.viewWidth(), parent.viewHeight(), style, parent.groups(), parent.depth() + 1);
        Matcher inStyle = STYLE_TRANSFORM.matcher(element.getAttribute("style"));
        String transform = inStyle.find() ? inStyle.group(1) : element.getAttribute("transform");
        if (transform.isBlank()) {
            return setting;
        }
        Optional<AffineTransform> map = Transforms.parse(transform);
        if (map.isEmpty()) {
            throw new DrawingException("%s, %s: the transform \"%s\" of %s cannot be read, so its size is not known."
                    .formatted(file, ElementWords.place(element), transform.strip(), ElementWords.spoken(element)));
        }
        return setting.with(map.get());
    }

    private Group group(Element element, Names names) {
        boolean layer =
                element.getAttributeNS(ElementNames.INKSCAPE, "groupmode").equals("layer");
        return new Group(groups++, names, layer);
    }

    /** Draws the first child that needs no extension, as a program without extensions does. */
    private void firstThatFits(Element element, Setting setting) throws DrawingException {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element e
                    && SafeXml.SVG.equals(e.getNamespaceURI())
                    && !e.hasAttribute("requiredExtensions")
                    && !"foreignObject".equals(e.getLocalName())) {
                visit(e, setting);
                return;
            }
        }
    }

    /** Draws a nested {@code svg}, or a {@code symbol} in use, in its own rectangle. */
    private void nested(Element element, Setting outer, Names names, String width, String height)
            throws DrawingException {
        Setting setting = outer.with(AffineTransform.getTranslateInstance(
                basicShapes.length(element, "x", outer.viewWidth()),
                basicShapes.length(element, "y", outer.viewHeight())));
        fitted(element, setting.in(group(element, names)), width, height);
    }

    private void fitted(Element element, Setting setting, String width, String height) throws DrawingException {
        double w = SvgLength.parse(width)
                .map(l -> l.userUnits(setting.viewWidth()))
                .orElse(setting.viewWidth());
        double h = SvgLength.parse(height)
                .map(l -> l.userUnits(setting.viewHeight()))
                .orElse(setting.viewHeight());
        Optional<ViewBox> box = ViewBox.parse(element.getAttribute("viewBox"));
        if (w <= 0 || h <= 0) {
            return;
        }
        if (box.isEmpty()) {
            children(element, setting.showing(w, h));
            return;
        }
        AffineTransform fit = Viewport.fit(box.get(), w, h, element.getAttribute("preserveAspectRatio"));
        if (Math.abs(fit.getScaleX() / fit.getScaleY() - 1) > 1e-3) {
            warnings.add("%s: different scales in x and y stretch what is in %s."
                    .formatted(ElementWords.at(element), ElementWords.spoken(element)));
        }
        children(element, setting.with(fit).showing(box.get().width(), box.get().height()));
    }

    private void use(Element element, Setting setting) throws DrawingException {
        String href = element.hasAttributeNS(null, "href")
                ? element.getAttributeNS(null, "href")
                : element.getAttributeNS(XLINK, "href");
        if (!href.startsWith("#")) {
            warnings.add("%s: <use> of \"%s\" is left out; only shapes of the same file can be used."
                    .formatted(ElementWords.at(element), href));
            return;
        }
        Element target = ids.get(href.substring(1));
        if (target == null) {
            warnings.add("%s: <use> of \"%s\" is left out; the file has no such id."
                    .formatted(ElementWords.at(element), href));
            return;
        }
        if (!setting.style().displayed()) {
            return;
        }
        if (target.equals(element) || isInside(element, target) || !inUse.add(target)) {
            warnings.add("%s: a circular reference to \"%s\" is dropped.".formatted(ElementWords.at(element), href));
            return;
        }
        try {
            Names names = ElementNames.ofUse(element, target);
            Setting placed = setting.with(AffineTransform.getTranslateInstance(
                    basicShapes.length(element, "x", setting.viewWidth()),
                    basicShapes.length(element, "y", setting.viewHeight())));
            boolean ownSize = "svg".equals(target.getLocalName()) || "symbol".equals(target.getLocalName());
            if (ownSize) {
                Setting inside = styled(target, placed);
                String width = or(element.getAttribute("width"), target.getAttribute("width"));
                String height = or(element.getAttribute("height"), target.getAttribute("height"));
                nested(target, inside, names, width, height);
            } else {
                visit(target, placed, names);
            }
        } finally {
            inUse.remove(target);
        }
    }

    private static String or(String text, String otherwise) {
        return text.isBlank() ? otherwise : text;
    }

    private static boolean isInside(Element element, Element ancestor) {
        for (Node node = element.getParentNode(); node != null; node = node.getParentNode()) {
            if (node.equals(ancestor)) {
                return true;
            }
        }
        return false;
    }

    private void shape(Element element, Setting setting, Names names) throws DrawingException {
        List<Chain> chains;
        try {
            chains = basicShapes.chains(element, setting, setting.toPage());
        } catch (Pen.TooFarException e) {
            warnings.add("%s: %s is left out: %s; move the drawing onto its page."
                    .formatted(ElementWords.at(element), ElementWords.spoken(element), e.getMessage()));
            return;
        }
        if (chains.isEmpty()) {
            return;
        }
        Style style = setting.style();
        shapes.add(new DrawnShape(
                names,
                setting.groups(),
                chains,
                style.evenOdd() ? FillRule.EVENODD : FillRule.NONZERO,
                style.shows(),
                style.filled(),
                style.dashed(),
                arrowHeads.pointsOut(style.markerStart(), setting.toPage(), chains, false),
                arrowHeads.pointsOut(style.markerEnd(), setting.toPage(), chains, true),
                setting.toPage().getDeterminant() < 0,
                ElementWords.place(element)));
    }
}
