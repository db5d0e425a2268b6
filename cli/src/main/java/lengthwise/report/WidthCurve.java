package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.Laid;
import lengthwise.model.Length;
import lengthwise.svg.Markup;

/**
 * Draws length against width of a fabric: what is bought, the marker, and what no marker can be shorter than. Metric scales
 * stand at the left and below, inches and yards at the right and above.
 */
final class WidthCurve {
    private static final double LEFT = 16;
    private static final double TOP = 12;
    private static final double WIDE = 146;
    private static final double HIGH = 68;
    private static final String INK = "#1c2a30";
    private static final String QUIET = "#56646a";
    private static final String FAINT = "#dde1e2";
    private static final String BUY = "#9a4f1c";
    private static final double YARD = 914.4;
    private static final double INCH = 25.4;

    private final Markup html;
    private final Cloth cloth;
    private final List<Laid> laid;
    private final double fromWidth;
    private final double toWidth;
    private final double fromLength;
    private final double toLength;

    private WidthCurve(Markup html, Cloth cloth) {
        this.html = html;
        this.cloth = cloth;
        laid = cloth.laid();
        double narrowest = laid.get(0).width().millimetres();
        double widest = laid.get(laid.size() - 1).width().millimetres();
        double beside = Math.max(20, (widest - narrowest) * 0.06);
        fromWidth = narrowest - beside;
        toWidth = widest + beside;
        double least = laid.stream()
                .mapToDouble(each -> each.lowerBound().millimetres())
                .min()
                .orElse(0);
        double most = laid.stream()
                .mapToDouble(each -> each.purchase().buy().millimetres())
                .max()
                .orElse(1);
        double around = Math.max(20, (most - least) * 0.1);
        fromLength = Math.max(0, least - around);
        toLength = most + around;
    }

    /** Writes an {@code svg} element into a page, where there are two widths or more to compare. */
    static void draw(Markup html, Cloth cloth) {
        if (cloth.laid().size() > 1) {
            new WidthCurve(html, cloth).draw();
        }
    }

    private void draw() {
        Page.openPicture(
                html,
                "180",
                "104",
                "Length to buy of %s by its width, as in the table".formatted(cloth.name()),
                "font-family",
                "Arial, Helvetica, 'Liberation Sans', sans-serif",
                "font-size",
                "2.8",
                "fill",
                INK);
        scales();
        rectangle();
        curve(each -> each.lowerBound(), QUIET, "1.2 1");
        curve(each -> each.marker().length(), INK, "");
        curve(each -> each.purchase().buy(), BUY, "");
        Optional<Laid> cheapest = cloth.cheapest();
        laid.forEach(each -> mark(each, cheapest.filter(each::equals).isPresent()));
        legend();
        html.close().line();
    }

    private interface Of {
        Length length(Laid laid);
    }

    private void scales() {
        for (double metres : ticks(fromLength / 1000, toLength / 1000, 6)) {
            double y = y(metres * 1000);
            line(LEFT, y, LEFT + WIDE, y, FAINT, 0.2);
            text(plain(metres), LEFT - 1.2, y + 1, "end", QUIET);
        }
        for (double yards : ticks(fromLength / YARD, toLength / YARD, 6)) {
            double y = y(yards * YARD);
            line(LEFT + WIDE, y, LEFT + WIDE + 1, y, QUIET, 0.2);
            text(plain(yards), LEFT + WIDE + 1.8, y + 1, "start", QUIET);
        }
        for (double centimetres : ticks(fromWidth / 10, toWidth / 10, 9)) {
            double x = x(centimetres * 10);
            line(x, TOP, x, TOP + HIGH, FAINT, 0.2);
            text(plain(centimetres), x, TOP + HIGH + 4, "middle", QUIET);
        }
        for (double inches : ticks(fromWidth / INCH, toWidth / INCH, 9)) {
            double x = x(inches * INCH);
            line(x, TOP - 1, x, TOP, QUIET, 0.2);
            text(plain(inches), x, TOP - 2, "middle", QUIET);
        }
        text("m", LEFT - 1.2, TOP - 2, "end", QUIET);
        text("yd", LEFT + WIDE + 1.8, TOP - 2, "start", QUIET);
        text("width, cm", LEFT + WIDE / 2, TOP + HIGH + 8.5, "middle", QUIET);
        text("width, in", LEFT + WIDE / 2, TOP - 6.5, "middle", QUIET);
    }

    /** Returns round numbers from one to another: steps of 1, 2 or 5 times a power of ten, at most so many. */
    static List<Double> ticks(double from, double to, int most) {
        double step = StrictMath.pow(10, StrictMath.floor(StrictMath.log10((to - from) / most)));
        double[] factors = {1, 2, 5, 10};
        int factor = 0;
        while ((to - from) / (step * factors[factor]) > most) {
            factor++;
        }
        double apart = step * factors[factor];
        List<Double> ticks = new ArrayList<>();
        for (long i = (long) StrictMath.ceil(from / apart); i * apart <= to; i++) {
            ticks.add(i * apart);
        }
        return ticks;
    }

    private static String plain(double value) {
        return Figures.fixed(value, 2).replaceFirst("\\.?0+$", "");
    }

    private void curve(Of of, String colour, String dashes) {
        StringBuilder data = new StringBuilder();
        for (Laid each : laid) {
            data.append(data.isEmpty() ? "M" : " L")
                    .append(Figures.fixed(x(each.width().millimetres()), 2))
                    .append(' ')
                    .append(Figures.fixed(y(of.length(each).millimetres()), 2));
        }
        html.empty(
                "path",
                "d",
                data.toString(),
                "fill",
                "none",
                "stroke",
                colour,
                "stroke-width",
                "0.45",
                "stroke-dasharray",
                dashes.isEmpty() ? "none" : dashes);
    }

    private void mark(Laid each, boolean cheapest) {
        double x = x(each.width().millimetres());
        double buy = y(each.purchase().buy().millimetres());
        double marker = y(each.marker().length().millimetres());
        dot(x, marker, 0.8, INK, "none");
        if (cheapest) {
            dot(x, buy, 2.2, "none", BUY);
            text("cheapest", x, buy - 4.2, "middle", BUY);
        }
        html.empty(
                "rect",
                "x",
                Figures.fixed(x - 0.9, 2),
                "y",
                Figures.fixed(buy - 0.9, 2),
                "width",
                "1.8",
                "height",
                "1.8",
                "fill",
                BUY);
    }

    private void dot(double x, double y, double radius, String fill, String stroke) {
        html.empty(
                "circle",
                "cx",
                Figures.fixed(x, 2),
                "cy",
                Figures.fixed(y, 2),
                "r",
                Figures.fixed(radius, 2),
                "fill",
                fill,
                "stroke",
                stroke,
                "stroke-width",
                "0.4");
    }

    private void legend() {
        double y = TOP + HIGH + 16;
        line(LEFT, y - 1, LEFT + 6, y - 1, BUY, 0.45);
        text("to buy, by the shop's step", LEFT + 8, y, "start", INK);
        line(LEFT + 52, y - 1, LEFT + 58, y - 1, INK, 0.45);
        text("marker", LEFT + 60, y, "start", INK);
        html.empty(
                "path",
                "d",
                "M%s %s h6".formatted(Figures.fixed(LEFT + 78, 2), Figures.fixed(y - 1, 2)),
                "stroke",
                QUIET,
                "stroke-width",
                "0.45",
                "stroke-dasharray",
                "1.2 1");
        text("no marker can be shorter", LEFT + 86, y, "start", INK);
    }

    private void rectangle() {
        html.empty(
                "rect",
                "x",
                Figures.fixed(LEFT, 2),
                "y",
                Figures.fixed(TOP, 2),
                "width",
                Figures.fixed(WIDE, 2),
                "height",
                Figures.fixed(HIGH, 2),
                "fill",
                "none",
                "stroke",
                QUIET,
                "stroke-width",
                "0.25");
    }

    private void line(double x1, double y1, double x2, double y2, String colour, double wide) {
        html.empty(
                "line",
                "x1",
                Figures.fixed(x1, 2),
                "y1",
                Figures.fixed(y1, 2),
                "x2",
                Figures.fixed(x2, 2),
                "y2",
                Figures.fixed(y2, 2),
                "stroke",
                colour,
                "stroke-width",
                Figures.fixed(wide, 2));
    }

    private void text(String words, double x, double y, String anchor, String colour) {
        html.element(
                "text",
                words,
                "x",
                Figures.fixed(x, 2),
                "y",
                Figures.fixed(y, 2),
                "text-anchor",
                anchor,
                "fill",
                colour);
    }

    private double x(double width) {
        return LEFT + (width - fromWidth) / (toWidth - fromWidth) * WIDE;
    }

    private double y(double length) {
        return TOP + HIGH - (length - fromLength) / (toLength - fromLength) * HIGH;
    }
}
