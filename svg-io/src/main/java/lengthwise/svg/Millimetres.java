package lengthwise.svg;

import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Ring;

/** Grid lengths as decimal millimetres with three digits after the point, the same in every locale. */
public final class Millimetres {
    private Millimetres() {}

    /** Returns for example {@code -0.040} for −40 µm. */
    public static String of(long micrometres) {
        long whole = Math.abs(micrometres);
        StringBuilder text = new StringBuilder(12);
        if (micrometres < 0) {
            text.append('-');
        }
        text.append(whole / 1000).append('.');
        long rest = whole % 1000;
        if (rest < 100) {
            text.append('0');
        }
        if (rest < 10) {
            text.append('0');
        }
        return text.append(rest).toString();
    }

    /** Returns a length in millimetres, to the nearest micrometre. */
    public static String of(double millimetres) {
        return of(StrictMath.round(millimetres * 1000));
    }

    /** Returns the path data of a closed outline, moved: absolute vertices, shell first. */
    static String path(Outline outline, Point by) {
        StringBuilder data = new StringBuilder();
        append(data, outline.shell(), by);
        outline.holes().forEach(hole -> append(data.append(' '), hole, by));
        return data.toString();
    }

    private static void append(StringBuilder data, Ring ring, Point by) {
        for (int i = 0; i < ring.size(); i++) {
            data.append(i == 0 ? "M" : " L")
                    .append(of(ring.x(i) + by.x()))
                    .append(' ')
                    .append(of(ring.y(i) + by.y()));
        }
        data.append(" Z");
    }
}
