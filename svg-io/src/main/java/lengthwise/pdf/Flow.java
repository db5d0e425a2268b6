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

    /** So many lines at least stand on the page of their heading. */
    private static final int HEADED = 3;

    /** How wide the parts of a table that stand side by side are at least, and what is between them. */
    private static final double NARROWEST = 85;

    private static final double BESIDE = 8;

    /** Fewer rows than this are not set apart. */
    private static final int FEWEST = 9;

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
        keep(BODY * 1.3 * LEADING);
        lines(words, BODY * 1.3, true);
        skip(BODY * 0.2);
    }

    void paragraph(String words) throws IOException {
        lines(words, BODY, false);
        skip(BODY * 0.4);
    }

    /** Leaves room for a heading of this height and what it heads, so that none stands alone at the foot of a page. */
    void keep(double height) throws IOException {
        need(height + HEADED * BODY * LEADING);
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
     * Sets a table: where the paper is wide in several parts side by side, each under the headings.
     *
     * @param parts of a row that its cells take, together no more than 1
     */
    void table(List<Double> parts, List<String> headings, List<List<String>> rows) throws IOException {
        int room = (int) Math.max(1, Math.floor((area.width() + BESIDE) / (NARROWEST + BESIDE)));
        int across = Math.min(room, (rows.size() + FEWEST - 1) / FEWEST);
        int set = 0;
        while (set < rows.size()) {
            double width = (area.width() + BESIDE) / across - BESIDE;
            Row heading = new Row(parts, headings, true, width);
            List<Row> left = new ArrayList<>();
            for (List<String> cells : rows.subList(set, rows.size())) {
                left.add(new Row(parts, cells, false, width));
            }
            need(heading.height() + left.get(0).height());
            List<Integer> ends = ends(left, left() - heading.height(), across);
            double top = y;
            double lowest = top;
            int from = 0;
            for (int part = 0; part < ends.size(); part++) {
                double x = area.minX() + part * (width + BESIDE);
                y = top;
                heading.set(x);
                for (Row row : left.subList(from, ends.get(part))) {
                    row.set(x);
                }
                lowest = Math.max(lowest, y);
                from = ends.get(part);
            }
            y = lowest;
            set += from;
        }
    }

    /** Returns where the parts of a table end: as evenly as it goes where all of it has room, else full ones. */
    private static List<Integer> ends(List<Row> rows, double room, int across) {
        double total = rows.stream().mapToDouble(Row::height).sum();
        double step = rows.stream().mapToDouble(Row::height).max().orElse(1);
        double height = Math.min(room, total / across);
        while (true) {
            List<Integer> ends = new ArrayList<>();
            int next = 0;
            while (next < rows.size() && ends.size() < across) {
                double filled = 0;
                int from = next;
                while (next < rows.size()
                        && (next == from || filled + rows.get(next).height() <= height + 1e-6)) {
                    filled += rows.get(next++).height();
                }
                ends.add(next);
            }
            if (next == rows.size() || height >= room) {
                return ends;
            }
            height = Math.min(room, height + step);
        }
    }

    /** A row of a table, each cell wrapped in its column. */
    private final class Row {
        private static final double SIZE = BODY * 0.85;
        private final List<Double> parts;
        private final List<List<String>> wrapped = new ArrayList<>();
        private final boolean bold;
        private final double width;
        private int most = 1;

        Row(List<Double> parts, List<String> cells, boolean bold, double width) throws IOException {
            this.parts = parts;
            this.bold = bold;
            this.width = width;
            for (int i = 0; i < cells.size(); i++) {
                double end = i + 1 < parts.size() ? parts.get(i + 1) * width - 2 : width;
                wrapped.add(wrapped(canvas, cells.get(i), SIZE, end - parts.get(i) * width));
                most = Math.max(most, wrapped.get(i).size());
            }
        }

        double height() {
            return most * SIZE * LEADING + 1;
        }

        void set(double x) throws IOException {
            for (int i = 0; i < wrapped.size(); i++) {
                for (int line = 0; line < wrapped.get(i).size(); line++) {
                    canvas.words(new Painted.Words(
                            wrapped.get(i).get(line),
                            x + parts.get(i) * width,
                            y + SIZE + line * SIZE * LEADING,
                            SIZE,
                            0,
                            Anchor.START,
                            bold,
                            Canvas.BLACK));
                }
            }
            y += height();
            canvas.line(x, y - 0.6, x + width, y - 0.6, Painted.Line.of(Canvas.PALE, 0.2));
        }
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
