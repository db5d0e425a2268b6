package lengthwise.dxf;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import lengthwise.drawing.DrawingException;
import lengthwise.drawing.PatternDrawing;
import lengthwise.drawing.ScaleStatement;

/** Small drawings put together in tests. A group is written "code value", one a line. */
final class Dxf {
    static final String MILLIMETRES = section("HEADER", "9 $ACADVER\n1 AC1015\n9 $INSUNITS\n70 4\n");

    private Dxf() {}

    static String section(String name, String groups) {
        return "0 SECTION\n2 " + name + "\n" + groups + "0 ENDSEC\n";
    }

    /** Returns a whole drawing in millimetres. */
    static String drawing(String entities) {
        return MILLIMETRES + section("ENTITIES", entities) + "0 EOF\n";
    }

    /** Returns a drawing with blocks. */
    static String drawing(String blocks, String entities) {
        return MILLIMETRES + section("BLOCKS", blocks) + section("ENTITIES", entities) + "0 EOF\n";
    }

    static String block(String name, String things) {
        return "0 BLOCK\n8 0\n2 " + name + "\n70 0\n10 0\n20 0\n3 " + name + "\n" + things + "0 ENDBLK\n8 0\n";
    }

    static String insert(String name, double x, double y, String more) {
        return "0 INSERT\n8 0\n2 " + name + "\n10 " + x + "\n20 " + y + "\n" + more;
    }

    /** Returns a polyline through points x, y. */
    static String polyline(String layer, boolean closed, double... coordinates) {
        StringBuilder groups = new StringBuilder(
                "0 LWPOLYLINE\n8 " + layer + "\n90 " + coordinates.length / 2 + "\n70 " + (closed ? 1 : 0) + "\n");
        for (int i = 0; i < coordinates.length; i += 2) {
            groups.append("10 ")
                    .append(coordinates[i])
                    .append("\n20 ")
                    .append(coordinates[i + 1])
                    .append('\n');
        }
        return groups.toString();
    }

    static String rectangle(String layer, double x, double y, double width, double height) {
        return polyline(layer, true, x, y, x + width, y, x + width, y + height, x, y + height);
    }

    static String line(String layer, double x1, double y1, double x2, double y2) {
        return "0 LINE\n8 %s\n10 %s\n20 %s\n11 %s\n21 %s\n".formatted(layer, x1, y1, x2, y2);
    }

    static String text(String layer, double x, double y, String words) {
        return "0 TEXT\n8 %s\n10 %s\n20 %s\n40 5\n1 %s\n".formatted(layer, x, y, words);
    }

    static String point(String layer, double x, double y) {
        return "0 POINT\n8 %s\n10 %s\n20 %s\n".formatted(layer, x, y);
    }

    static byte[] bytes(String groups, Charset charset) {
        StringBuilder file = new StringBuilder();
        for (String group : groups.split("\n", -1)) {
            if (!group.isEmpty()) {
                int blank = group.indexOf(' ');
                file.append(group, 0, blank)
                        .append('\n')
                        .append(group.substring(blank + 1))
                        .append('\n');
            }
        }
        return file.toString().getBytes(charset);
    }

    static PatternDrawing read(String groups) throws DrawingException {
        return read(groups, StandardCharsets.UTF_8);
    }

    static PatternDrawing read(String groups, Charset charset) throws DrawingException {
        return DxfPattern.read("plover.dxf", bytes(groups, charset), ScaleStatement.NONE);
    }
}
