package lengthwise.dxf;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import lengthwise.geometry.Point;

/** The groups of a DXF file being written: a code and a value, each on a line of its own, in ASCII. */
final class Groups {
    private final StringBuilder text = new StringBuilder();

    Groups add(int code, String value) {
        text.append(code).append("\r\n").append(value).append("\r\n");
        return this;
    }

    Groups add(int code, int value) {
        return add(code, Integer.toString(value));
    }

    /** Adds a length: micrometres, written as millimetres. */
    Groups length(int code, long micrometres) {
        return add(code, millimetres(micrometres));
    }

    /** Adds a point, its coordinates being groups code, code + 10 and code + 20. */
    Groups point(int code, Point at) {
        return length(code, at.x()).length(code + 10, at.y()).length(code + 20, 0);
    }

    Groups section(String name) {
        return add(0, "SECTION").add(2, name);
    }

    Groups endSection() {
        return add(0, "ENDSEC");
    }

    Groups polyline(String layer, List<Point> points, boolean closed) {
        add(0, "POLYLINE").add(8, layer).add(66, 1).point(10, Point.ORIGIN).add(70, closed ? 1 : 0);
        points.forEach(point -> add(0, "VERTEX").add(8, layer).point(10, point));
        return add(0, "SEQEND").add(8, layer);
    }

    Groups line(String layer, Point from, Point to) {
        return add(0, "LINE").add(8, layer).point(10, from).point(11, to);
    }

    Groups dot(String layer, Point at) {
        return add(0, "POINT").add(8, layer).point(10, at);
    }

    /** Adds one line of lettering with its middle at a point, turned anticlockwise. */
    Groups lettering(String layer, Point middle, long height, String words, int degrees) {
        return add(0, "TEXT")
                .add(8, layer)
                .point(10, middle)
                .length(40, Math.max(100, height))
                .add(1, escaped(words))
                .add(50, degrees)
                .add(72, 1)
                .point(11, middle)
                .add(73, 2);
    }

    /** Writes letters beyond ASCII, and those that mean something else in a text, by their numbers. */
    static String escaped(String words) {
        StringBuilder escaped = new StringBuilder();
        for (int i = 0; i < words.length(); i++) {
            char letter = words.charAt(i);
            if (letter < ' ') {
                escaped.append(' ');
            } else if (letter > '~' || letter == '^' || letter == '%' || letter == '\\') {
                String digits = Integer.toHexString(0x10000 | letter).toUpperCase(Locale.ROOT);
                escaped.append("\\U+").append(digits, 1, 5);
            } else {
                escaped.append(letter);
            }
        }
        return escaped.toString();
    }

    /** Returns for example {@code -0.040} for −40 µm. */
    static String millimetres(long micrometres) {
        return BigDecimal.valueOf(micrometres, 3).toPlainString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
