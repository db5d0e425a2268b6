package lengthwise.svg;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lengthwise.drawing.DrawnText;
import lengthwise.geometry.Point;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The lines of a {@code text} element: a new line begins where a new position is stated. */
final class TextLines {
    /** Width of an average letter, as a share of the letter's height: an estimate, for where the middle lies. */
    private static final double LETTER_WIDTH = 0.5;

    private final Cascade cascade;
    private final Element text;
    private final Setting setting;
    private final List<DrawnText> lines = new ArrayList<>();
    private final StringBuilder words = new StringBuilder();
    private Style style;
    private double x;
    private double y;

    TextLines(Cascade cascade, Element text, Setting setting) {
        this.cascade = cascade;
        this.text = text;
        this.setting = setting;
        this.style = setting.style();
    }

    List<DrawnText> read() {
        move(text);
        collect(text, setting.style(), 0);
        finish();
        return lines;
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
                .map(length -> OptionalDouble.of(length.userUnits(setting.viewWidth())))
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
        Point2D middle = setting.toPage().transform(new Point2D.Double(x + toMiddle, y - style.fontSize() / 3), null);
        Point2D along = setting.toPage().deltaTransform(new Point2D.Double(1, 0), null);
        if (!(Math.abs(middle.getX()) < 1e6 && Math.abs(middle.getY()) < 1e6)) {
            return;
        }
        lines.add(new DrawnText(
                line,
                new Point(StrictMath.round(middle.getX() * 1000), StrictMath.round(middle.getY() * 1000)),
                StrictMath.atan2(along.getY(), along.getX()),
                ElementNames.of(text),
                setting.groups(),
                style.displayed() && style.visible(),
                ElementWords.place(text)));
    }
}
