package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
import lengthwise.geometry.Point;
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
    private static final int MOST_WARNINGS = 50;
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

    private Pen.Budget budget;
    private final List<DrawnShape> shapes = new ArrayList<>();
    private final List<DrawnText> texts = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final Set<Element> inUse = new HashSet<>();
    private final Map<String, ArrowHead> heads = new HashMap<>();
    private int visits;
    private int groups;
    private int pictures;

    SvgReader(String file, SafeXml.Read source) throws DrawingException {
        this.file = file;
        this.source = source;
        this.cascade = new Cascade(source.document(), file);
        this.budget = new Pen.Budget(file, MOST_POINTS);
        NodeList all = source.document().getElementsByTagNameNS("*", "*");
        for (int i = 0; i < all.getLength(); i++) {
            if (all.item(i) instanceof Element element && element.hasAttribute("id")) {
                ids.putIfAbsent(element.getAttribute("id"), element);
            }
        }
    }

    /** How an element is drawn: what it inherits from where it stands. */
    private record Setting(
            AffineTransform toPage, double viewWidth, double viewHeight, Style style, List<Group> groups, int depth) {
        Setting with(AffineTransform map) {
            AffineTransform combined = new AffineTransform(toPage);
            combined.concatenate(map);
            return new Setting(combined, viewWidth, viewHeight, style, groups, depth);
        }

        Setting in(Group group) {
            List<Group> more = new ArrayList<>(groups);
            more.add(group);
            return new Setting(toPage, viewWidth, viewHeight, style, more, depth);
        }

        Setting showing(double width, double height) {
            return new Setting(toPage, width, height, style, groups, depth);
        }
    }

    /** Draws the document at a scale that the maker states, or at its own. */
    Drawing draw(OptionalDouble millimetresPerUnit) throws DrawingException {
        shapes.clear();
        texts.clear();
        warnings.clear();
        heads.clear();
        visits = 0;
        groups = 0;
        pictures = 0;
        budget = new Pen.Budget(file, MOST_POINTS);

        Element root = source.document().getDocumentElement();
        Sheet sheet = Sheet.of(root, source.generator(), millimetresPerUnit);
        sheet.warnings().forEach(this::warn);
        Setting setting =
                new Setting(sheet.toPage(), sheet.viewWidth(), sheet.viewHeight(), Style.INITIAL, List.of(), 0);
        children(root, styled(root, setting));
        for (String complaint : cascade.complaints()) {
            warn("A style cannot be read and is ignored: " + complaint + ".");
        }
        List<String> leftOut = new ArrayList<>();
        if (pictures > 0) {
            leftOut.add(pictures == 1 ? "1 picture placed in the file" : pictures + " pictures placed in the file");
        }
        return new Drawing(
                file,
                new Box(0, 0, micrometres(sheet.widthMm()), micrometres(sheet.heightMm())),
                sheet.millimetresPerUnit(),
                sheet.scaleStated(),
                shapes,
                texts,
                warnings,
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
        if (!SafeXml.SVG.equals(element.getNamespaceURI()) || NOT_DRAWN.contains(kind)) {
            return;
        }
        if ((!inUse.isEmpty() && ++visits > MOST_USED) || parent.depth > DEEPEST) {
            throw new DrawingException(file + ", " + place(element) + ": <use> repeats so much that the drawing grows "
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
            case "text" -> new TextLines(element, setting).read();
            case "path", "rect", "circle", "ellipse", "line", "polyline", "polygon" -> shape(element, setting, names);
            default -> {
                // Unknown elements are not painted.
            }
        }
    }

    private Setting styled(Element element, Setting parent) throws DrawingException {
        Style style = parent.style.child(cascade.of(element));
        Setting setting =
                new Setting(parent.toPage, parent.viewWidth, parent.viewHeight, style, parent.groups, parent.depth + 1);
        Matcher inStyle = STYLE_TRANSFORM.matcher(element.getAttribute("style"));
        String transform = inStyle.find() ? inStyle.group(1) : element.getAttribute("transform");
        if (transform.isBlank()) {
            return setting;
        }
        Optional<AffineTransform> map = Transforms.parse(transform);
        if (map.isEmpty()) {
            throw new DrawingException("%s, %s: the transform \"%s\" of %s cannot be read, so its size is not known."
                    .formatted(file, place(element), transform.strip(), spoken(element)));
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
                length(element, "x", outer.viewWidth), length(element, "y", outer.viewHeight)));
        fitted(element, setting.in(group(element, names)), width, height);
    }

    private void fitted(Element element, Setting setting, String width, String height) throws DrawingException {
        double w =
                SvgLength.parse(width).map(l -> l.userUnits(setting.viewWidth)).orElse(setting.viewWidth);
        double h = SvgLength.parse(height)
                .map(l -> l.userUnits(setting.viewHeight))
                .orElse(setting.viewHeight);
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
            warn("%s: different scales in x and y stretch what is in %s.".formatted(at(element), spoken(element)));
        }
        children(element, setting.with(fit).showing(box.get().width(), box.get().height()));
    }

    private void use(Element element, Setting setting) throws DrawingException {
        String href = element.hasAttributeNS(null, "href")
                ? element.getAttributeNS(null, "href")
                : element.getAttributeNS(XLINK, "href");
        if (!href.startsWith("#")) {
            warn("%s: <use> of \"%s\" is left out; only shapes of the same file can be used."
                    .formatted(at(element), href));
            return;
        }
        Element target = ids.get(href.substring(1));
        if (target == null) {
            warn("%s: <use> of \"%s\" is left out; the file has no such id.".formatted(at(element), href));
            return;
        }
        if (!setting.style.displayed()) {
            return;
        }
        if (target.equals(element) || isInside(element, target) || !inUse.add(target)) {
            warn("%s: a circular reference to \"%s\" is dropped.".formatted(at(element), href));
            return;
        }
        try {
            Names names = ElementNames.ofUse(element, target);
            Setting placed = setting.with(AffineTransform.getTranslateInstance(
                    length(element, "x", setting.viewWidth), length(element, "y", setting.viewHeight)));
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
            chains = chains(element, setting, setting.toPage);
        } catch (Pen.TooFarException e) {
            warn("%s: %s is left out: %s; move the drawing onto its page."
                    .formatted(at(element), spoken(element), e.getMessage()));
            return;
        }
        if (chains.isEmpty()) {
            return;
        }
        Style style = setting.style;
        shapes.add(new DrawnShape(
                names,
                setting.groups,
                chains,
                style.evenOdd() ? FillRule.EVENODD : FillRule.NONZERO,
                style.shows(),
                style.filled(),
                style.dashed(),
                pointsOut(style.markerStart(), setting, chains, false),
                pointsOut(style.markerEnd(), setting, chains, true),
                setting.toPage.getDeterminant() < 0,
                place(element)));
    }

    /** Says whether the marker at an end of a line shows an arrow head that points out of the line. */
    private boolean pointsOut(String marker, Setting setting, List<Chain> chains, boolean atEnd)
            throws DrawingException {
        Element element = ids.get(marker);
        if (marker.isEmpty() || element == null) {
            return false;
        }
        ArrowHead head = heads.get(marker);
        if (head == null) {
            head = ArrowHead.of(markerPoints(element), element.getAttribute("orient"));
            heads.put(marker, head);
        }
        List<Point> points = chains.get(atEnd ? chains.size() - 1 : 0).points();
        return points.size() > 1 && head.pointsOut(points, atEnd, setting.toPage);
    }

    private List<Point> markerPoints(Element marker) throws DrawingException {
        List<Point> points = new ArrayList<>();
        collect(marker, new AffineTransform(), 0, points);
        return points;
    }

    private void collect(Element parent, AffineTransform map, int depth, List<Point> points) throws DrawingException {
        for (Node child = parent.getFirstChild(); child != null && depth < 20; child = child.getNextSibling()) {
            if (child instanceof Element element && SafeXml.SVG.equals(element.getNamespaceURI())) {
                AffineTransform own = new AffineTransform(map);
                own.concatenate(
                        Transforms.parse(element.getAttribute("transform")).orElseGet(AffineTransform::new));
                collect(element, own, depth + 1, points);
                Setting setting = new Setting(own, 0, 0, Style.INITIAL, List.of(), 0);
                chains(element, setting, own).forEach(chain -> points.addAll(chain.points()));
            }
        }
    }

    private List<Chain> chains(Element element, Setting setting, AffineTransform map) throws DrawingException {
        TransformedPen pen = new TransformedPen(map, budget);
        switch (String.valueOf(element.getLocalName())) {
            case "path" ->
                PathData.draw(element.getAttribute("d"), pen)
                        .ifPresent(error -> warn("%s: the path data of %s %s; what comes before is kept."
                                .formatted(at(element), spoken(element), error)));
            case "rect" -> rectangle(element, setting, pen);
            case "circle" -> {
                double r = length(element, "r", Math.hypot(setting.viewWidth, setting.viewHeight) / Math.sqrt(2));
                ellipse(element, setting, pen, r, r);
            }
            case "ellipse" ->
                ellipse(
                        element,
                        setting,
                        pen,
                        length(element, "rx", setting.viewWidth),
                        length(element, "ry", setting.viewHeight));
            case "line" -> {
                pen.moveTo(length(element, "x1", setting.viewWidth), length(element, "y1", setting.viewHeight));
                pen.lineTo(length(element, "x2", setting.viewWidth), length(element, "y2", setting.viewHeight));
            }
            case "polyline" -> points(element, pen, false);
            case "polygon" -> points(element, pen, true);
            default -> {
                return List.of();
            }
        }
        return pen.chains();
    }

    private void rectangle(Element element, Setting setting, TransformedPen pen) throws DrawingException {
        double x = length(element, "x", setting.viewWidth);
        double y = length(element, "y", setting.viewHeight);
        double width = length(element, "width", setting.viewWidth);
        double height = length(element, "height", setting.viewHeight);
        if (width <= 0 || height <= 0) {
            return;
        }
        OptionalDouble statedX = stated(element, "rx", setting.viewWidth);
        OptionalDouble statedY = stated(element, "ry", setting.viewHeight);
        double rx = Math.min(statedX.orElse(statedY.orElse(0)), width / 2);
        double ry = Math.min(statedY.orElse(statedX.orElse(0)), height / 2);
        if (rx <= 0 || ry <= 0) {
            pen.moveTo(x, y);
            pen.lineTo(x + width, y);
            pen.lineTo(x + width, y + height);
            pen.lineTo(x, y + height);
        } else {
            pen.moveTo(x + rx, y);
            pen.lineTo(x + width - rx, y);
            pen.quarter(x + width - rx, y + ry, rx, ry, 3, x + width, y + ry);
            pen.lineTo(x + width, y + height - ry);
            pen.quarter(x + width - rx, y + height - ry, rx, ry, 0, x + width - rx, y + height);
            pen.lineTo(x + rx, y + height);
            pen.quarter(x + rx, y + height - ry, rx, ry, 1, x, y + height - ry);
            pen.lineTo(x, y + ry);
            pen.quarter(x + rx, y + ry, rx, ry, 2, x + rx, y);
        }
        pen.close();
    }

    private void ellipse(Element element, Setting setting, TransformedPen pen, double rx, double ry)
            throws DrawingException {
        if (rx > 0 && ry > 0) {
            pen.ellipse(length(element, "cx", setting.viewWidth), length(element, "cy", setting.viewHeight), rx, ry);
        }
    }

    private void points(Element element, TransformedPen pen, boolean closed) throws DrawingException {
        Scanner scanner = new Scanner(element.getAttribute("points"));
        boolean begun = false;
        while (!scanner.atEnd()) {
            OptionalDouble x = scanner.number();
            OptionalDouble y = x.isEmpty() || scanner.atEnd() ? OptionalDouble.empty() : scanner.number();
            if (x.isEmpty() || y.isEmpty()) {
                warn("%s: the points of %s end in %s; it is dropped."
                        .formatted(
                                at(element),
                                spoken(element),
                                x.isPresent() && scanner.atEnd()
                                        ? "an odd coordinate"
                                        : "something that is no number, at character " + (scanner.position() + 1)));
                break;
            }
            if (begun) {
                pen.lineTo(x.getAsDouble(), y.getAsDouble());
            } else {
                pen.moveTo(x.getAsDouble(), y.getAsDouble());
                begun = true;
            }
        }
        if (closed) {
            pen.close();
        }
    }

    private double length(Element element, String attribute, double whole) {
        return stated(element, attribute, whole).orElse(0);
    }

    /** Returns a length as stated, in user units; empty if it is not, or states none. */
    private OptionalDouble stated(Element element, String attribute, double whole) {
        String text = element.getAttribute(attribute);
        if (text.isBlank() || text.strip().equals("auto")) {
            return OptionalDouble.empty();
        }
        Optional<SvgLength> length = SvgLength.parse(text);
        if (length.isEmpty()) {
            warn("%s: %s=\"%s\" of %s is not a length; it is ignored."
                    .formatted(at(element), attribute, text, spoken(element)));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(length.get().userUnits(whole));
    }

    private void warn(String sentence) {
        if (warnings.size() < MOST_WARNINGS && !warnings.contains(sentence)) {
            warnings.add(sentence);
        }
    }

    private static String at(Element element) {
        return "L" + place(element).substring(1);
    }

    private static String place(Element element) {
        return "line " + element.getAttribute(SafeXml.PLACE).split(":", 2)[0];
    }

    private static String spoken(Element element) {
        Names names = ElementNames.of(element);
        return names.label()
                .or(names::id)
                .map(name -> "'" + name + "'")
                .orElseGet(() -> "<" + element.getLocalName() + ">");
    }

    /** The lines of a {@code text} element: a new line begins where a new position is stated. */
    private final class TextLines {
        /** Width of an average letter, as a share of the letter's height: an estimate, for where the middle lies. */
        private static final double LETTER_WIDTH = 0.5;

        private final Element text;
        private final Setting setting;
        private final StringBuilder words = new StringBuilder();
        private Style style;
        private double x;
        private double y;

        TextLines(Element text, Setting setting) {
            this.text = text;
            this.setting = setting;
            this.style = setting.style;
        }

        void read() {
            move(text);
            collect(text, setting.style, 0);
            finish();
        }

        private void collect(Element parent, Style parentStyle, int depth) {
            for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
                if (child instanceof Element element && depth < 50) {
                    if ("tspan".equals(element.getLocalName()) || "textPath".equals(element.getLocalName())) {
                        Style own = parentStyle.child(cascade.of(element));
                        if (element.hasAttribute("x") || element.hasAttribute("y") || element.hasAttribute("dy")) {
                            finish();
                            move(element);
                        }
                        style = own;
                        collect(element, own, depth + 1);
                    }
                } else if (child.getNodeType() == Node.TEXT_NODE) {
                    words.append(child.getNodeValue());
                }
            }
        }

        private void move(Element element) {
            x = first(element, "x").orElse(x) + first(element, "dx").orElse(0);
            y = first(element, "y").orElse(y) + first(element, "dy").orElse(0);
        }

        private OptionalDouble first(Element element, String attribute) {
            String value = element.getAttribute(attribute).strip().split("[\\s,]+", 2)[0];
            return SvgLength.parse(value)
                    .map(length -> OptionalDouble.of(length.userUnits(setting.viewWidth)))
                    .orElse(OptionalDouble.empty());
        }

        private void finish() {
            String line = words.toString().strip().replaceAll("\\s+", " ");
            words.setLength(0);
            if (line.isEmpty()) {
                return;
            }
            double width = line.length() * style.fontSize() * LETTER_WIDTH;
            double toMiddle = switch (style.anchor()) {
                case "middle" -> 0;
                case "end" -> -width / 2;
                default -> width / 2;
            };
            Point2D middle = setting.toPage.transform(new Point2D.Double(x + toMiddle, y - style.fontSize() / 3), null);
            Point2D along = setting.toPage.deltaTransform(new Point2D.Double(1, 0), null);
            if (!(Math.abs(middle.getX()) < 1e6 && Math.abs(middle.getY()) < 1e6)) {
                return;
            }
            texts.add(new DrawnText(
                    line,
                    new Point(StrictMath.round(middle.getX() * 1000), StrictMath.round(middle.getY() * 1000)),
                    StrictMath.atan2(along.getY(), along.getX()),
                    ElementNames.of(text),
                    setting.groups,
                    style.displayed() && style.visible(),
                    place(text)));
        }
    }
}
