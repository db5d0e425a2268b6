package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.geometry.Point;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The arrow heads among the {@code marker} elements of a file, each looked at once. */
final class ArrowHeads {
    private final Map<String, Element> ids;
    private final BasicShapes basicShapes;
    private final Map<String, ArrowHead> heads = new HashMap<>();

    ArrowHeads(Map<String, Element> ids, BasicShapes basicShapes) {
        this.ids = ids;
        this.basicShapes = basicShapes;
    }

    /** Says whether the marker at an end of a line shows an arrow head that points out of the line. */
    boolean pointsOut(String marker, AffineTransform toPage, List<Chain> chains, boolean atEnd)
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
        return points.size() > 1 && head.pointsOut(points, atEnd, toPage);
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
                basicShapes.chains(element, setting, own).forEach(chain -> points.addAll(chain.points()));
            }
        }
    }
}
