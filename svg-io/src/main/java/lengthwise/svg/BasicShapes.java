package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.drawing.Chain;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.Pen;
import org.w3c.dom.Element;

/** Draws paths and the basic shapes of SVG 1.1, chapters 8 and 9, with a pen. */
final class BasicShapes {
    private final Pen.Budget budget;
    private final Warnings warnings;

    BasicShapes(Pen.Budget budget, Warnings warnings) {
        this.budget = budget;
        this.warnings = warnings;
    }

    /** Returns the lines of a path or basic shape, carried over by a map; none for any other element. */
    List<Chain> chains(Element element, Setting setting, AffineTransform map) throws DrawingException {
        TransformedPen pen = new TransformedPen(map, budget);
        switch (String.valueOf(element.getLocalName())) {
            case "path" ->
                PathData.draw(element.getAttribute("d"), pen)
                        .ifPresent(error -> warnings.add("%s: the path data of %s %s; what comes before is kept."
                                .formatted(ElementWords.at(element), ElementWords.spoken(element), error)));
            case "rect" -> rectangle(element, setting, pen);
            case "circle" -> {
                double r = length(element, "r", Math.hypot(setting.viewWidth(), setting.viewHeight()) / Math.sqrt(2));
                ellipse(element, setting, pen, r, r);
            }
            case "ellipse" ->
                ellipse(
                        element,
                        setting,
                        pen,
                        length(element, "rx", setting.viewWidth()),
                        length(element, "ry", setting.viewHeight()));
            case "line" -> {
                pen.moveTo(length(element, "x1", setting.viewWidth()), length(element, "y1", setting.viewHeight()));
                pen.lineTo(length(element, "x2", setting.viewWidth()), length(element, "y2", setting.viewHeight()));
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
        double x = length(element, "x", setting.viewWidth());
        double y = length(element, "y", setting.viewHeight());
        double width = length(element, "width", setting.viewWidth());
        double height = length(element, "height", setting.viewHeight());
        if (width <= 0 || height <= 0) {
            return;
        }
        OptionalDouble statedX = stated(element, "rx", setting.viewWidth());
        OptionalDouble statedY = stated(element, "ry", setting.viewHeight());
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
            pen.ellipse(
                    length(element, "cx", setting.viewWidth()), length(element, "cy", setting.viewHeight()), rx, ry);
        }
    }

    private void points(Element element, TransformedPen pen, boolean closed) throws DrawingException {
        Scanner scanner = new Scanner(element.getAttribute("points"));
        boolean begun = false;
        while (!scanner.atEnd()) {
            OptionalDouble x = scanner.number();
            OptionalDouble y = x.isEmpty() || scanner.atEnd() ? OptionalDouble.empty() : scanner.number();
            if (x.isEmpty() || y.isEmpty()) {
                warnings.add("%s: the points of %s end in %s; it is dropped."
                        .formatted(
                                ElementWords.at(element),
                                ElementWords.spoken(element),
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

    /** Returns a length in user units; 0 where none is stated. */
    double length(Element element, String attribute, double whole) {
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
            warnings.add("%s: %s=\"%s\" of %s is not a length; it is ignored."
                    .formatted(ElementWords.at(element), attribute, text, ElementWords.spoken(element)));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(length.get().userUnits(whole));
    }
}
