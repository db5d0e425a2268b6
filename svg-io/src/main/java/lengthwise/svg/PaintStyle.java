package lengthwise.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.drawing.Painted;
import org.jspecify.annotations.Nullable;

/** The properties that matter to painting, as they hold for an element where it is drawn; lengths in user units. */
record PaintStyle(
        boolean shown,
        Optional<Integer> fill,
        Optional<Integer> stroke,
        double strokeWidth,
        double strokeOpacity,
        List<Double> dashes,
        double fontSize,
        Painted.Anchor anchor,
        boolean bold) {
    /** The properties that {@link #child} looks at. */
    static final List<String> PROPERTIES = List.of(
            "display",
            "visibility",
            "fill",
            "stroke",
            "stroke-width",
            "stroke-opacity",
            "stroke-dasharray",
            "font-size",
            "text-anchor",
            "font-weight");

    static final PaintStyle INITIAL =
            new PaintStyle(true, Optional.of(0), Optional.empty(), 1, 1, List.of(), 16, Painted.Anchor.START, false);

    private static final Pattern RGB =
            Pattern.compile("rgb\\(\\s*([0-9.]+)\\s*,\\s*([0-9.]+)\\s*,\\s*([0-9.]+)\\s*\\)");
    private static final Pattern BOLD = Pattern.compile("bold|bolder|[6-9]00(\\.0)?");

    PaintStyle child(Map<String, String> declared) {
        return new PaintStyle(
                shown
                        && !"none".equals(declared.get("display"))
                        && !"hidden".equals(declared.get("visibility"))
                        && !"collapse".equals(declared.get("visibility")),
                colour(declared.get("fill"), fill),
                colour(declared.get("stroke"), stroke),
                number(declared, "stroke-width", strokeWidth),
                Math.max(0, Math.min(1, number(declared, "stroke-opacity", strokeOpacity))),
                text(declared, "stroke-dasharray").map(PaintStyle::lengths).orElse(dashes),
                number(declared, "font-size", fontSize),
                text(declared, "text-anchor").map(PaintStyle::anchor).orElse(anchor),
                text(declared, "font-weight")
                        .map(weight -> BOLD.matcher(weight).matches())
                        .orElse(bold));
    }

    private static Optional<String> text(Map<String, String> declared, String property) {
        return Optional.ofNullable(declared.get(property));
    }

    private static double number(Map<String, String> declared, String property, double otherwise) {
        return text(declared, property)
                .flatMap(SvgLength::parse)
                .map(length -> length.userUnits(otherwise))
                .orElse(otherwise);
    }

    /** Colours come from the style engine as {@code rgb(r, g, b)}; of what it leaves a name, only white is not dark. */
    private static Optional<Integer> colour(@Nullable String text, Optional<Integer> inherited) {
        if (text == null) {
            return inherited;
        }
        if (text.equals("none") || text.equals("transparent")) {
            return Optional.empty();
        }
        Matcher rgb = RGB.matcher(text);
        if (rgb.matches()) {
            return Optional.of(channel(rgb.group(1)) << 16 | channel(rgb.group(2)) << 8 | channel(rgb.group(3)));
        }
        return Optional.of(text.equals("white") ? 0xffffff : 0);
    }

    private static int channel(String text) {
        return (int) Math.max(0, Math.min(255, Math.round(Double.parseDouble(text))));
    }

    private static List<Double> lengths(String text) {
        Scanner scanner = new Scanner(text.replace("px", ""));
        List<Double> lengths = new ArrayList<>();
        while (!scanner.atEnd()) {
            OptionalDouble number = scanner.number();
            if (number.isEmpty()) {
                return List.of();
            }
            lengths.add(Math.max(0, number.getAsDouble()));
        }
        return lengths.stream().anyMatch(length -> length > 0) ? lengths : List.of();
    }

    private static Painted.Anchor anchor(String text) {
        return switch (text) {
            case "middle" -> Painted.Anchor.MIDDLE;
            case "end" -> Painted.Anchor.END;
            default -> Painted.Anchor.START;
        };
    }
}
