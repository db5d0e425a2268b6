package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.geom.Point2D;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Pen;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;
import lengthwise.svg.Viewport.ViewBox;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Reads a marker that {@link MarkerSvg} wrote, also after pieces were moved, turned, mirrored, copied or taken out in a
 * drawing program, or the whole drawing was. An untouched file gives the very micrometres that were written.
 *
 * <p>Everything is measured from the cuttable area as drawn in the file, so neither a new view box nor a moved layer
 * matters; true scale is checked by its size. What is hidden is not there.
 */
public final class MarkerSvgReader {
    /** How far the cuttable area may be off its stated size before the drawing counts as scaled (mm). */
    private static final double SCALE_TOLERANCE = 0.1;

    private static final int MOST_POINTS = 1_000_000;

    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final Pattern HIDDEN = Pattern.compile("(^|;)\\s*display\\s*:\\s*none\\b.*");

    private final Path file;
    private final List<Drawn> drawn = new ArrayList<>();
    private final List<List<Point2D.Double>> areas = new ArrayList<>();

    private MarkerSvgReader(Path file) {
        this.file = file;
    }

    /** A cut line in millimetres on the page. */
    private record Drawn(Element group, AffineTransform toPage, List<List<Point2D.Double>> rings) {}

    /**
     * Reads a file, plain or gzip-compressed.
     *
     * @throws DrawingException if it is no such marker, hostile, of another version, not at true scale, or has a cut line
     *     that cannot be read
     */
    public static MarkerDrawing read(Path file) throws DrawingException {
        return new MarkerSvgReader(file).read(SafeXml.read(file));
    }

    /**
     * Reads a file like {@link #read}, with all that is painted in it.
     *
     * @throws DrawingException as there
     */
    public static MarkerPainting painting(Path file) throws DrawingException {
        MarkerSvgReader reader = new MarkerSvgReader(file);
        SafeXml.Read source = SafeXml.read(file);
        MarkerDrawing marker = reader.read(source);
        Element root = source.document().getDocumentElement();
        Point corner = reader.corner(root);
        AffineTransform toCloth = AffineTransform.getTranslateInstance(corner.x() / 1000.0, corner.y() / 1000.0);
        toCloth.scale(0.001, 0.001);
        toCloth.concatenate(reader.frame(root, marker.length(), marker.cuttableWidth()));
        toCloth.concatenate(reader.page(root));
        PaintReader paint = new PaintReader(file.toString(), source, toCloth);
        paint.read();
        if (paint.pieces.size() != marker.pieces().size()
                || !paint.pieces.stream().allMatch(piece -> !piece.isEmpty() && piece.get(0) instanceof Painted.Path)) {
            throw reader.complaint(
                    root, "has a piece whose cut line is hidden or has no colour; show it or take it out");
        }
        return new MarkerPainting(marker, paint.beside, paint.cloth, paint.pieces, paint.over);
    }

    private MarkerDrawing read(SafeXml.Read source) throws DrawingException {
        Element root = source.document().getDocumentElement();
        String version = root.getAttribute("data-lengthwise-version");
        if (version.isEmpty()) {
            throw complaint(
                    root, "is not a marker that Lengthwise wrote; name a marker file, or make one with: marker JOB");
        }
        if (!version.equals(MarkerSvg.VERSION)) {
            throw complaint(
                    root,
                    "has version %s, and only version %s is known here; read it with the Lengthwise that wrote it"
                            .formatted(version, MarkerSvg.VERSION));
        }
        visit(root, page(root));
        Length length = stated(root, "data-length");
        Length width = stated(root, "data-cuttable-width");
        AffineTransform toMarker = frame(root, length, width);
        List<PlacedPiece> pieces = new ArrayList<>();
        List<MarkReading.Read> read = new ArrayList<>();
        MarkReading reading = new MarkReading(toMarker, new Pen.Budget(file.toString(), MOST_POINTS));
        for (Drawn piece : drawn) {
            pieces.add(placed(piece, toMarker));
            read.add(reading.of(piece.group, piece.toPage));
        }
        return new MarkerDrawing(
                root.getAttribute("data-job"),
                root.getAttribute("data-fabric"),
                length,
                width,
                pieces,
                drawn.stream().map(piece -> number(piece.group)).toList(),
                read.stream().map(MarkReading.Read::marks).toList(),
                read.stream().map(MarkReading.Read::state).toList(),
                root.getAttribute("data-spread"));
    }

    /** Returns the map from user units to millimetres on the page. */
    private AffineTransform page(Element root) throws DrawingException {
        Optional<ViewBox> box = ViewBox.parse(root.getAttribute("viewBox"));
        Optional<SvgLength> width = SvgLength.parse(root.getAttribute("width")).filter(side -> side.millimetres() > 0);
        Optional<SvgLength> height =
                SvgLength.parse(root.getAttribute("height")).filter(side -> side.millimetres() > 0);
        if (width.isEmpty() || height.isEmpty()) {
            throw complaint(root, "does not state its size; save it with a page size in millimetres");
        }
        if (box.isEmpty()) {
            double pixel = SvgLength.PIXEL;
            return AffineTransform.getScaleInstance(pixel, pixel);
        }
        return Viewport.fit(
                box.get(),
                width.get().millimetres(),
                height.get().millimetres(),
                root.getAttribute("preserveAspectRatio"));
    }

    private void visit(Element element, AffineTransform toPage) throws DrawingException {
        if (isHidden(element)) {
            return;
        }
        AffineTransform inner = transformed(element, toPage);
        if ("use".equals(element.getLocalName())) {
            throw complaint(element, "has a clone (<use>); turn clones into pieces of their own");
        }
        if ("svg".equals(element.getLocalName()) && element.getParentNode() instanceof Element) {
            throw complaint(element, "has a drawing inside the drawing (<svg>); take it out");
        }
        if (element.hasAttribute("data-piece")) {
            Element path = firstPath(element)
                    .orElseThrow(() ->
                            complaint(element, "has " + named(element) + " without a cut line; undo what removed it"));
            AffineTransform whole = inner;
            for (Element e : between(element, path)) {
                whole = transformed(e, whole);
            }
            drawn.add(new Drawn(element, inner, rings(path, named(element), whole)));
            return;
        }
        if (element.getAttribute("data-area").equals("cuttable")) {
            areas.add(rings(element, "the cuttable area", inner).get(0));
        }
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inside) {
                visit(inside, inner);
            }
        }
    }

    private AffineTransform transformed(Element element, AffineTransform outer) throws DrawingException {
        String text = element.getAttribute("transform");
        if (text.isBlank()) {
            return outer;
        }
        AffineTransform own = Transforms.parse(text)
                .orElseThrow(() -> complaint(element, "has the transform \"" + text + "\", which cannot be read"));
        AffineTransform whole = new AffineTransform(outer);
        whole.concatenate(own);
        return whole;
    }

    private static Optional<Element> firstPath(Element group) {
        for (Node child = group.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inside) {
                if ("path".equals(inside.getLocalName())) {
                    return Optional.of(inside);
                }
                Optional<Element> deeper = firstPath(inside);
                if (deeper.isPresent()) {
                    return deeper;
                }
            }
        }
        return Optional.empty();
    }

    /** Returns what lies below one element on the way to another, outermost first, the other included. */
    private static List<Element> between(Element above, Element below) {
        List<Element> chain = new ArrayList<>();
        for (Element e = below; e != above; e = (Element) e.getParentNode()) {
            chain.add(0, e);
        }
        return chain;
    }

    private List<List<Point2D.Double>> rings(Element path, String what, AffineTransform toPage)
            throws DrawingException {
        try {
            List<List<Point2D.Double>> rings = new ArrayList<>();
            for (StraightPath.Ring ring : StraightPath.rings(path.getAttribute("d"))) {
                rings.add(ring.vertices().stream()
                        .map(vertex -> (Point2D.Double) toPage.transform(vertex, new Point2D.Double()))
                        .toList());
            }
            if (rings.isEmpty()) {
                throw new StraightPath.Broken("is empty");
            }
            return rings;
        } catch (StraightPath.Broken e) {
            throw complaint(path, "has a cut line that cannot be read: that of %s %s".formatted(what, e.getMessage()));
        }
    }

    /** Returns the map from the page to marker coordinates in micrometres, given by the cuttable area as drawn. */
    private AffineTransform frame(Element root, Length length, Length width) throws DrawingException {
        if (areas.size() != 1 || areas.get(0).size() != 4) {
            throw complaint(
                    root,
                    areas.isEmpty()
                            ? "has lost its cuttable area (the dashed rectangle), from which pieces are measured; undo"
                                    + " what removed it"
                            : "has a cuttable area that is no longer one rectangle; undo what changed it");
        }
        Point2D.Double corner = areas.get(0).get(0);
        Point2D.Double along = areas.get(0).get(1);
        Point2D.Double across = areas.get(0).get(3);
        double isLong = corner.distance(along);
        double isWide = corner.distance(across);
        if (Math.abs(isLong - length.millimetres()) > SCALE_TOLERANCE
                || Math.abs(isWide - width.millimetres()) > SCALE_TOLERANCE
                || Math.abs(along.distance(across) - Math.hypot(isLong, isWide)) > SCALE_TOLERANCE) {
            throw complaint(
                    root,
                    "is not at true scale: its cuttable area measures %s by %s mm and is said to be %s by %s mm; save it"
                                    .formatted(
                                            Millimetres.of(isLong),
                                            Millimetres.of(isWide),
                                            Millimetres.of(length.micrometres()),
                                            Millimetres.of(width.micrometres()))
                            + " again without scaling, one unit a millimetre");
        }
        // Unit vectors, not the sides themselves: rounding in the file must not stretch the pieces.
        AffineTransform toPage = new AffineTransform(
                (along.x - corner.x) / isLong / 1000,
                (along.y - corner.y) / isLong / 1000,
                (across.x - corner.x) / isWide / 1000,
                (across.y - corner.y) / isWide / 1000,
                corner.x,
                corner.y);
        try {
            return toPage.createInverse();
        } catch (NoninvertibleTransformException e) {
            throw new IllegalStateException("A rectangle of some size has a frame.", e);
        }
    }

    private PlacedPiece placed(Drawn piece, AffineTransform toMarker) throws DrawingException {
        Element group = piece.group;
        List<Ring> rings = new ArrayList<>();
        for (List<Point2D.Double> vertices : piece.rings) {
            List<Point> points = new ArrayList<>();
            for (Point2D.Double vertex : vertices) {
                Point2D at = toMarker.transform(vertex, null);
                if (!(Math.abs(at.getX()) < 1 << 30 && Math.abs(at.getY()) < 1 << 30)) {
                    throw complaint(group, "has " + named(group) + " more than a kilometre away; move it back");
                }
                points.add(new Point(StrictMath.round(at.getX()), StrictMath.round(at.getY())));
            }
            rings.add(Ring.of(points));
        }
        // A program may have turned the subpaths round; the shell is the one that holds the most.
        Ring shell = rings.stream()
                .max(Comparator.comparingLong(ring -> Math.abs(ring.doubleArea())))
                .orElseThrow();
        rings.remove(shell);
        return new PlacedPiece(
                group.getAttribute("data-piece"),
                group.getAttribute("data-size"),
                garments(group),
                group.getAttribute("data-customer"),
                hand(group),
                new Outline(shell, rings));
    }

    private List<Integer> garments(Element group) throws DrawingException {
        List<Integer> numbers = new ArrayList<>();
        String text = group.getAttribute("data-garment").strip();
        for (String number : text.isEmpty() ? new String[0] : BLANKS.split(text, -1)) {
            if (!number.matches("[1-9][0-9]{0,6}")) {
                throw complaint(
                        group, "has %s for garment \"%s\"; garments have numbers".formatted(named(group), number));
            }
            numbers.add(Integer.valueOf(number));
        }
        return numbers;
    }

    private static int number(Element group) {
        String number = group.getAttribute("data-number");
        return number.matches("[1-9][0-9]{0,6}") ? Integer.parseInt(number) : 0;
    }

    private String hand(Element group) throws DrawingException {
        String hand = group.getAttribute("data-hand");
        if (!hand.matches("|L|R")) {
            throw complaint(group, "has %s with the hand \"%s\"; it is L, R or empty".formatted(named(group), hand));
        }
        return hand;
    }

    /** Returns where the corner of the cuttable area lies on the cloth. */
    private Point corner(Element root) throws DrawingException {
        Scanner scanner = new Scanner(root.getAttribute("data-corner"));
        OptionalDouble x = scanner.number();
        OptionalDouble y = scanner.number();
        if (x.isEmpty() || y.isEmpty() || Math.abs(x.getAsDouble()) > 1e6 || Math.abs(y.getAsDouble()) > 1e6) {
            throw complaint(
                    root,
                    "states the data-corner \"%s\"; it must be two numbers of millimetres"
                            .formatted(root.getAttribute("data-corner")));
        }
        return new Point(StrictMath.round(x.getAsDouble() * 1000), StrictMath.round(y.getAsDouble() * 1000));
    }

    private Length stated(Element root, String attribute) throws DrawingException {
        String text = root.getAttribute(attribute);
        try {
            double millimetres = Double.parseDouble(text);
            if (millimetres > 0 && millimetres < 1e6) {
                return Length.ofMillimetres(millimetres);
            }
        } catch (NumberFormatException notANumber) {
            // Said below, with every other value that is no length.
        }
        throw complaint(root, "states the %s \"%s\"; it must be millimetres".formatted(attribute, text));
    }

    private static boolean isHidden(Element element) {
        return element.getAttribute("display").equals("none")
                || HIDDEN.matcher(element.getAttribute("style")).find();
    }

    private static String named(Element group) {
        return (group.getAttribute("data-piece") + " " + group.getAttribute("data-size")).strip();
    }

    private DrawingException complaint(Element element, String what) {
        String place = element.getAttributeNS(null, SafeXml.PLACE);
        int colon = place.indexOf(':');
        return new DrawingException((colon < 0 ? file.toString() : file + ", line " + place.substring(0, colon))
                + ": the drawing " + what + ".");
    }
}
