package lengthwise.svg;

import java.util.Arrays;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.model.Length;
import lengthwise.model.Segment;

/** Paths and words of a marker's drawing, in millimetres on the cloth. */
record Strokes(Markup svg) {
    static String line(Segment segment) {
        return "M%s %s L%s %s"
                .formatted(
                        Millimetres.of(segment.from().x()),
                        Millimetres.of(segment.from().y()),
                        Millimetres.of(segment.to().x()),
                        Millimetres.of(segment.to().y()));
    }

    void rectangle(Point at, Length length, Length width, String... attributes) {
        path(
                Millimetres.path(Outline.of(new Box(0, 0, length.micrometres(), width.micrometres()).ring()), at),
                attributes);
    }

    void path(String data, String... attributes) {
        svg.empty("path", with(attributes, "d", data)).line();
    }

    void label(double x, double y, double size, String text) {
        svg.element("text", text, "x", Millimetres.of(x), "y", Millimetres.of(y), "font-size", Millimetres.of(size))
                .line();
    }

    void centred(double x, double y, double size, String text, int turn) {
        String[] attributes = {
            "x", Millimetres.of(x), "y", Millimetres.of(y), "font-size", Millimetres.of(size), "text-anchor", "middle"
        };
        svg.element(
                        "text",
                        text,
                        turn == 0
                                ? attributes
                                : with(
                                        attributes,
                                        "transform",
                                        "rotate(%s %s %s)".formatted(turn, Millimetres.of(x), Millimetres.of(y))))
                .line();
    }

    private static String[] with(String[] attributes, String name, String value) {
        String[] more = Arrays.copyOf(attributes, attributes.length + 2);
        more[attributes.length] = name;
        more[attributes.length + 1] = value;
        return more;
    }
}
