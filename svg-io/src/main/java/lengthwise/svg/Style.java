package lengthwise.svg;

import java.util.List;
import java.util.Map;
import java.util.Optional;

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
    /** The properties that {@link #child} looks at. */
    static final List<String> PROPERTIES = List.of(
            "display",
            "visibility",
            "fill",
            "stroke",
            "fill-rule",
            "stroke-dasharray",
            "marker-start",
            "marker-end",
            "font-size",
            "text-anchor");

    static final Style INITIAL = new Style(true, true, true, false, false, false, "", "", 16, "start");

    /** Returns the style of a child. */
    Style child(Map<String, String> declared) {
        return new Style(
                displayed && !"none".equals(declared.get("display")),
                text(declared, "visibility").map("visible"::equals).orElse(visible),
                text(declared, "fill").map(fill -> !fill.equals("none")).orElse(filled),
                text(declared, "stroke").map(stroke -> !stroke.equals("none")).orElse(stroked),
                text(declared, "fill-rule").map("evenodd"::equals).orElse(evenOdd),
                text(declared, "stroke-dasharray")
                        .map(dashes -> dashes.matches(".*[1-9].*"))
                        .orElse(dashed),
                text(declared, "marker-start").map(Style::fragment).orElse(markerStart),
                text(declared, "marker-end").map(Style::fragment).orElse(markerEnd),
                text(declared, "font-size")
                        .flatMap(SvgLength::parse)
                        .map(size -> size.userUnits(fontSize))
                        .orElse(fontSize),
                text(declared, "text-anchor").orElse(anchor));
    }

    private static Optional<String> text(Map<String, String> declared, String property) {
        return Optional.ofNullable(declared.get(property));
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
