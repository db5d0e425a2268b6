package lengthwise.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import lengthwise.drawing.Painted;
import lengthwise.drawing.Painted.Anchor;

/** Sets lines of text from top to bottom, and goes on on a new page where one is full. */
final class Flow {
    static final double BODY = 3.4;
    private static final double LEADING = 1.35;
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    private final NextPage nextPage;
    private Canvas canvas;
    private Extent area;
    private double y;

    /** A new page and the room on it. */
    record Page(Canvas canvas, Extent area) {}

    interface NextPage {
        Page open() throws IOException;
    }

    Flow(Page first, NextPage nextPage) {
        this.nextPage = nextPage;
        this.canvas = first.canvas;
        this.area = first.area;
        this.y = area.minY();
    }

    void heading(String words) throws IOException {
        skip(BODY);
        lines(words, BODY * 1.3, true);
        skip(BODY * 0.2);
    }

    void paragraph(String words) throws IOException {
        lines(words, BODY, false);
        skip(BODY * 0.4);
    }

    void skip(double height) {
        y += height;
    }

    private void lines(String words, double size, boolean bold) throws IOException {
        for (String line : wrapped(canvas, words, size, area.width())) {
            need(size * LEADING);
            canvas.words(new Painted.Words(line, area.minX(), y + size, size, 0, Anchor.START, bold, Canvas.BLACK));
            y += size * LEADING;
        }
    }

    /**
     * Sets a row of a table, each cell wrapped in its column.
     *
     * @param columns where they begin, from the left edge
     */
    void row(List<Double> columns, List<String> cells, boolean bold) throws IOException {
        double size = BODY * 0.85;
        List<List<String>> wrapped = new ArrayList<>();
        int most = 1;
        for (int i = 0; i < cells.size(); i++) {
            double end = i + 1 < columns.size() ? columns.get(i + 1) - 2 : area.width();
            wrapped.add(wrapped(canvas, cells.get(i), size, end - columns.get(i)));
            most = Math.max(most, wrapped.get(i).size());
        }
        need(most * size * LEADING + 1);
        for (int i = 0; i < cells.size(); i++) {
            for (int line = 0; line < wrapped.get(i).size(); line++) {
                canvas.words(new Painted.Words(
                        wrapped.get(i).get(line),
                        area.minX() + columns.get(i),
                        y + size + line * size * LEADING,
                        size,
                        0,
                        Anchor.START,
                        bold,
                        Canvas.BLACK));
            }
        }
        y += most * size * LEADING + 1;
        canvas.line(area.minX(), y - 0.6, area.maxX(), y - 0.6, Painted.Line.of(Canvas.PALE, 0.2));
    }

    /** Leaves room for something painted and returns it; on a new page where this one has too little. */
    Page room(double height) throws IOException {
        need(height);
        Page room = new Page(canvas, new Extent(area.minX(), y, area.maxX(), y + height));
        y += height;
        return room;
    }

    double left() {
        return area.maxY() - y;
    }

    private void need(double height) throws IOException {
        if (y + height > area.maxY() && y > area.minY()) {
            Page next = nextPage.open();
            canvas = next.canvas;
            area = next.area;
            y = area.minY();
        }
    }

    /** Breaks words at blanks, and inside a word that is longer than a line. */
    static List<String> wrapped(Canvas canvas, String words, double size, double width) throws IOException {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : BLANKS.split(words.strip(), -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (canvas.width(longer, size) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (canvas.width(line, size) > width && line.codePointCount(0, line.length()) > 1) {
                int fits = 1;
                while (canvas.width(line.substring(0, line.offsetByCodePoints(0, fits + 1)), size) <= width) {
                    fits++;
                }
                int at = line.offsetByCodePoints(0, fits);
                lines.add(line.substring(0, at));
                line = line.substring(at);
            }
        }
        lines.add(line);
        return lines;
    }
}
