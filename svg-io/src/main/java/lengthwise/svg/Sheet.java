package lengthwise.svg;

import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.svg.Viewport.ViewBox;
import org.w3c.dom.Element;

/**
 * The page of an SVG file: its size, and the map from its user units to millimetres from its upper left corner.
 *
 * @param viewWidth width of what is shown, in user units; percentages refer to it
 * @param millimetresPerUnit the scale along x
 * @param scaleStated whether the file, or the maker, states it in a unit that a ruler knows
 */
record Sheet(
        double widthMm,
        double heightMm,
        double viewWidth,
        double viewHeight,
        AffineTransform toPage,
        double millimetresPerUnit,
        boolean scaleStated,
        List<String> warnings) {
    private static final String INKSCAPE = "http://www.inkscape.org/namespaces/inkscape";
    private static final Pattern VERSION = Pattern.compile("0\\.(\\d+)");

    /** Reads the outermost element. */
    static Sheet of(Element root, String generator, OptionalDouble millimetresPerUnit) {
        List<String> warnings = new ArrayList<>();
        Optional<SvgLength> width = side(root, "width", warnings);
        Optional<SvgLength> height = side(root, "height", warnings);
        Optional<ViewBox> box = ViewBox.parse(root.getAttribute("viewBox"));
        if (box.isEmpty() && root.hasAttribute("viewBox")) {
            warnings.add("The viewBox \"" + root.getAttribute("viewBox") + "\" cannot be read; it is ignored.");
        }
        ViewBox view = box.orElseGet(() -> new ViewBox(
                0,
                0,
                width.map(w -> w.userUnits(0)).orElse(0.0),
                height.map(h -> h.userUnits(0)).orElse(0.0)));
        if (millimetresPerUnit.isPresent()) {
            return uniform(view, millimetresPerUnit.getAsDouble(), true, warnings);
        }
        boolean physical = width.or(() -> height).isPresent()
                && width.map(SvgLength::isPhysical).orElse(true)
                && height.map(SvgLength::isPhysical).orElse(true);
        double pixel = physical ? SvgLength.PIXEL : pixel(root, generator, width.or(() -> height), warnings);
        if (box.isEmpty()) {
            return uniform(view, pixel, physical, warnings);
        }
        if (width.isEmpty() && height.isEmpty()) {
            return uniform(view, pixel, false, warnings);
        }
        double factor = pixel / SvgLength.PIXEL;
        double ratio = view.height() / view.width();
        double widthMm = width.map(w -> w.millimetres() * factor)
                .orElseGet(() -> height.orElseThrow().millimetres() * factor / ratio);
        double heightMm = height.map(h -> h.millimetres() * factor).orElse(widthMm * ratio);
        AffineTransform fit = Viewport.fit(view, widthMm, heightMm, root.getAttribute("preserveAspectRatio"));
        if (Math.abs(fit.getScaleX() / fit.getScaleY() - 1) > 1e-3) {
            warnings.add(("The page has different scales in x and y (%.4f and %.4f mm to the unit): the pieces are "
                            + "stretched. Remove preserveAspectRatio=\"none\" if that is not meant.")
                    .formatted(fit.getScaleX(), fit.getScaleY()));
        }
        return new Sheet(widthMm, heightMm, view.width(), view.height(), fit, fit.getScaleX(), physical, warnings);
    }

    private static Sheet uniform(ViewBox view, double scale, boolean stated, List<String> warnings) {
        AffineTransform toPage = AffineTransform.getScaleInstance(scale, scale);
        toPage.translate(-view.x(), -view.y());
        return new Sheet(
                view.width() * scale,
                view.height() * scale,
                view.width(),
                view.height(),
                toPage,
                scale,
                stated,
                warnings);
    }

    /** Returns a side of the page; empty if it is missing, a share of a window, not positive or not readable. */
    private static Optional<SvgLength> side(Element root, String name, List<String> warnings) {
        String text = root.getAttribute(name);
        if (text.isBlank() || text.strip().endsWith("%") || text.strip().equals("auto")) {
            return Optional.empty();
        }
        Optional<SvgLength> length = SvgLength.parse(text).filter(l -> l.value() > 0);
        if (length.isEmpty()) {
            warnings.add("The " + name + " \"" + text + "\" of the page is not a length; it is ignored.");
        }
        return length;
    }

    /** Returns the millimetres to take for a pixel where no ruler's unit is stated, and warns. */
    private static double pixel(Element root, String generator, Optional<SvgLength> stated, List<String> warnings) {
        int dots = 96;
        String reason = "as the standard says";
        Matcher version = VERSION.matcher(root.getAttributeNS(INKSCAPE, "version"));
        if (generator.contains("Adobe Illustrator")) {
            dots = 72;
            reason = "because of the program that wrote the file";
        } else if (version.lookingAt() && Integer.parseInt(version.group(1)) < 92) {
            dots = 90;
            reason = "because of the version of the program that wrote the file";
        }
        warnings.add(("The physical size is %s; %d units to the inch are assumed, %s. State the scale, or a square of "
                        + "known size in the drawing.")
                .formatted(stated.isPresent() ? "stated only in pixels" : "not stated", dots, reason));
        return 25.4 / dots;
    }
}
