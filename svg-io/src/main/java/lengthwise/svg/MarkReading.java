package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Reads what is drawn on the pieces of a marker: each path says in {@code data-mark} what it is. What cannot be read is
 * passed over, for nothing is cut by it.
 */
final class MarkReading {
    private final AffineTransform toMarker;
    private final Pen.Budget budget;

    /** @param toMarker from millimetres on the page to micrometres in the marker */
    MarkReading(AffineTransform toMarker, Pen.Budget budget) {
        this.toMarker = AffineTransform.getScaleInstance(0.001, 0.001);
        this.toMarker.concatenate(toMarker);
        this.budget = budget;
    }

    /** What was found on one piece. */
    record Read(PieceMarks marks, LaidState state) {}

    /** Returns the marks in a group, in marker coordinates. */
    Read of(Element group, AffineTransform toPage) throws DrawingException {
        Found found = new Found();
        collect(group, toPage, found);
        return new Read(
                new PieceMarks(found.grainLine, found.notches, found.drillHoles, found.innerLines),
                new LaidState(
                        found.foldEdge,
                        found.arrowHeads,
                        group.getAttribute("data-cut").equals("already")));
    }

    private static final class Found {
        private Optional<Segment> grainLine = Optional.empty();
        private Optional<Segment> foldEdge = Optional.empty();
        private final List<List<Point>> arrowHeads = new ArrayList<>();
        private final List<Segment> notches = new ArrayList<>();
        private final List<Point> drillHoles = new ArrayList<>();
        private final List<List<Point>> innerLines = new ArrayList<>();
    }

    private void collect(Element element, AffineTransform toPage, Found found) throws DrawingException {
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inside) {
                AffineTransform inner = new AffineTransform(toPage);
                Transforms.parse(inside.getAttribute("transform")).ifPresent(inner::concatenate);
                read(inside, inner, found);
                collect(inside, inner, found);
            }
        }
    }

    private void read(Element path, AffineTransform toPage, Found found) throws DrawingException {
        String mark = path.getAttribute("data-mark");
        if (mark.isEmpty()) {
            return;
        }
        List<Chain> chains = chains(path.getAttribute("d"), toPage);
        List<List<Point>> lines = chains.stream()
                .map(Chain::points)
                .filter(line -> line.size() > 1)
                .toList();
        if (lines.isEmpty()) {
            return;
        }
        switch (mark) {
            case "grain" -> {
                found.grainLine = Optional.of(ends(lines.get(0)));
                found.arrowHeads.addAll(lines.subList(1, lines.size()));
            }
            case "fold" -> found.foldEdge = Optional.of(ends(lines.get(0)));
            case "notch" -> lines.forEach(line -> found.notches.add(ends(line)));
            case "drill-hole" -> found.drillHoles.add(middle(lines));
            case "inner-line" -> found.innerLines.addAll(lines);
            default -> {
                // Match points and the like are for the eye.
            }
        }
    }

    private List<Chain> chains(String data, AffineTransform toPage) throws DrawingException {
        AffineTransform whole = new AffineTransform(toMarker);
        whole.concatenate(toPage);
        TransformedPen pen = new TransformedPen(whole, budget);
        PathData.draw(data, pen);
        return pen.chains();
    }

    /** The circle and the cross of a drill hole have one middle, however a drawing program wrote them anew. */
    private static Point middle(List<List<Point>> lines) {
        Box box = Box.around(lines.stream().flatMap(List::stream)).orElseThrow();
        return new Point(Math.floorDiv(box.minX() + box.maxX(), 2), Math.floorDiv(box.minY() + box.maxY(), 2));
    }

    private static Segment ends(List<Point> line) {
        return new Segment(line.get(0), line.get(line.size() - 1));
    }
}
