package lengthwise.hpgl;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.geometry.Point;

/** Reads plots of the few commands that {@link HpglMarker} writes; anything else is refused. */
final class HpglReader {
    private static final Pattern COMMAND = Pattern.compile("\\s*([A-Z]{2})(-?\\d+(?:,-?\\d+)*)?;\\s*");

    private final List<List<Stroke>> pages = new ArrayList<>();
    private List<Stroke> page = new ArrayList<>();
    private List<Point> line = new ArrayList<>();
    private Point at = Point.ORIGIN;
    private int pen;
    /** Plotter units of the square that the scale is stated by, and micrometres to a coordinate. */
    private long square;

    private long unit = HpglMarker.PLOTTER_UNIT;

    private HpglReader() {}

    /**
     * Returns the strokes of each page, on the axes of the plotter.
     *
     * @throws IllegalArgumentException if the text has another command, or draws without a pen
     */
    static List<List<Stroke>> pages(String text) {
        HpglReader reader = new HpglReader();
        Matcher command = COMMAND.matcher(text);
        int end = 0;
        while (end < text.length()) {
            if (!command.find(end) || command.start() != end) {
                throw new IllegalArgumentException("The plot breaks off at character " + end + ".");
            }
            reader.take(
                    Objects.requireNonNull(command.group(1)),
                    numbers(Objects.requireNonNullElse(command.group(2), "")));
            end = command.end();
        }
        return reader.pages;
    }

    private static long[] numbers(String list) {
        if (list.isEmpty()) {
            return new long[0];
        }
        return Arrays.stream(list.split(",", -1)).mapToLong(Long::parseLong).toArray();
    }

    private void take(String command, long[] numbers) {
        switch (command) {
            case "IN", "PA" -> {
                // Coordinates are absolute from the start.
            }
            case "PS" -> unit = HpglMarker.PLOTTER_UNIT;
            case "IP" -> square = numbers[2];
            case "SC" -> unit = HpglMarker.PLOTTER_UNIT * square / numbers[1];
            case "SP" -> {
                lift();
                pen = (int) numbers[0];
            }
            case "PU" -> {
                lift();
                move(numbers);
            }
            case "PD" -> {
                line.add(at);
                move(numbers);
            }
            case "PG" -> {
                lift();
                pages.add(page);
                page = new ArrayList<>();
            }
            default -> throw new IllegalArgumentException("The plot has the command " + command + ".");
        }
    }

    private void move(long[] numbers) {
        for (int i = 0; i + 1 < numbers.length; i += 2) {
            at = new Point(numbers[i] * unit, numbers[i + 1] * unit);
            if (!line.isEmpty()) {
                line.add(at);
            }
        }
    }

    private void lift() {
        if (line.size() > 1) {
            page.add(new Stroke(pen(), line));
        }
        line = new ArrayList<>();
    }

    private Stroke.Pen pen() {
        for (Stroke.Pen known : Stroke.Pen.values()) {
            if (known.number() == pen) {
                return known;
            }
        }
        throw new IllegalArgumentException("The plot draws with pen " + pen + ".");
    }
}
