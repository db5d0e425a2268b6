package lengthwise.benchmarks;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Three small plots side by side, as SVG: time of a move, memory, and time to the first layout, over pieces. */
final class ScalePlot {
    private static final int WIDTH = 250;
    private static final int HEIGHT = 180;
    private static final int LEFT = 55;
    private static final int TOP = 30;
    private static final int PANEL = WIDTH + LEFT + 20;

    private final List<ScaleRow> rows;
    private final StringBuilder svg = new StringBuilder();

    /** Of rows by size. */
    ScalePlot(List<ScaleRow> rows) {
        this.rows = List.copyOf(rows);
    }

    String svg() {
        svg.setLength(0);
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\""
                        + " font-size=\"11\">%n",
                3 * PANEL, HEIGHT + TOP + 45);
        add("<rect width=\"100%%\" height=\"100%%\" fill=\"white\"/>%n");
        panel(0, "processor time of a move, µs", ScaleRow::microsecondsAMove);
        panel(1, "heap after collection, MB", ScaleRow::heapAfterCollection);
        panel(2, "first legal layout, s", ScaleRow::firstLegalSeconds);
        add("</svg>%n");
        return svg.toString();
    }

    private void panel(int number, String title, ToDoubleFunction<ScaleRow> value) {
        double most = rows.stream()
                .mapToDouble(value)
                .filter(v -> !Double.isNaN(v))
                .max()
                .orElse(1);
        double top = niceAbove(most);
        int left = number * PANEL + LEFT;
        add("<text x=\"%d\" y=\"%d\" font-weight=\"bold\">%s</text>%n", left, TOP - 12, title);
        for (int tick = 0; tick <= 4; tick++) {
            double y = TOP + HEIGHT * (1 - tick / 4.0);
            add("<path d=\"M%d %.1fh%d\" stroke=\"#ddd\"/>%n", left, y, WIDTH);
            add("<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s</text>%n", left - 6, y + 4, number(top * tick / 4));
        }
        StringBuilder line = new StringBuilder();
        for (ScaleRow row : rows) {
            double x = left + WIDTH * across(row.pieces());
            add("<path d=\"M%.1f %dv5\" stroke=\"#555\"/>%n", x, TOP + HEIGHT);
            add("<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%d</text>%n", x, TOP + HEIGHT + 18, row.pieces());
            if (!Double.isNaN(value.applyAsDouble(row))) {
                double y = TOP + HEIGHT * (1 - value.applyAsDouble(row) / top);
                line.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
                add("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3\" fill=\"#1f5f8b\"/>%n", x, y);
            }
        }
        add(
                "<polyline points=\"%s\" fill=\"none\" stroke=\"#1f5f8b\" stroke-width=\"1.5\"/>%n",
                line.toString().strip());
        add("<text x=\"%d\" y=\"%d\" text-anchor=\"middle\">pieces</text>%n", left + WIDTH / 2, TOP + HEIGHT + 36);
    }

    /** Where a number of pieces lies across a plot, by its logarithm. */
    private double across(int pieces) {
        double least = rows.stream().mapToInt(ScaleRow::pieces).min().orElse(1);
        double most = rows.stream().mapToInt(ScaleRow::pieces).max().orElse(1);
        return most > least ? Math.log(pieces / least) / Math.log(most / least) : 0.5;
    }

    /** Returns a round number that is not below a value. */
    static double niceAbove(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(Math.max(value, 1e-9))));
        for (double factor : new double[] {1, 2, 4, 8}) {
            if (factor * power >= value) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    private static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.3g", value);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
