package lengthwise.svg;

import java.util.Optional;
import org.apache.batik.css.engine.StyleMap;
import org.jspecify.annotations.Nullable;

/**
 * The properties that matter to a pattern, as they hold for an element where it is drawn.
 *
 * @param displayed whether no element above is switched off
 * @param markerStart the id of the marker at the start of lines; empty for none
 */
record Style(
        boolean displayed,
        boolean visible,
        boolean filled,
        boolean stroked,
        boolean evenOdd,
        boolean dashed,
        String markerStart,
        String markerEnd,
        double fontSize,
        String anchor) {
    static final Style INITIAL = new Style(true, true, true, false, false, false, "", "", 16, "start");

    /** Returns the style of a child. */
    Style child(Cascade cascade, StyleMap declared) {
        return new Style(
                displayed && !"none".equals(cascade.text(declared, "display")),
                text(cascade, declared, "visibility").map("visible"::equals).orElse(visible),
                text(cascade, declared, "fill")
                        .map(fill -> !fill.equals("none"))
                        .orElse(filled),
                text(cascade, declared, "stroke")
                        .map(stroke -> !stroke.equals("none"))
                        .orElse(stroked),
                text(cascade, declared, "fill-rule").map("evenodd"::equals).orElse(evenOdd),
                text(cascade, declared, "stroke-dasharray")
                        .map(dashes -> dashes.matches(".*[1-9].*"))
                        .orElse(dashed),
                text(cascade, declared, "marker-start").map(Style::fragment).orElse(markerStart),
                text(cascade, declared, "marker-end").map(Style::fragment).orElse(markerEnd),
                text(cascade, declared, "font-size")
                        .flatMap(SvgLength::parse)
                        .map(size -> size.userUnits(fontSize))
                        .orElse(fontSize),
                text(cascade, declared, "text-anchor").orElse(anchor));
    }

    private static Optional<String> text(Cascade cascade, StyleMap declared, String property) {
        @Nullable String text = cascade.text(declared, property);
        return Optional.ofNullable(text);
    }

    private static String fragment(String url) {
        int hash = url.indexOf('#');
        return hash < 0 ? "" : url.substring(hash + 1).replaceAll("[\"')\\s]+$", "");
    }

    /** Says whether a shape of this style shows. */
    boolean shows() {
        return displayed && visible && (filled || stroked);
    }
}
