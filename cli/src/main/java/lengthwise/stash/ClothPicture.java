package lengthwise.stash;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import lengthwise.job.JobFabric.Corner;
import lengthwise.job.JobFabric.Flaw;
import lengthwise.model.Fabric.UnusableEdge;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;

/** A cloth of the stash as an SVG drawing to look at: one unit is a millimetre, the cut end on the left. */
public final class ClothPicture {
    private static final double LONGEST_PIXELS = 1000;

    private final StashCloth cloth;
    private final double length;
    private final double width;
    private final double letter;
    private final StringBuilder svg = new StringBuilder();

    private ClothPicture(StashCloth cloth) {
        this.cloth = cloth;
        this.length = cloth.there().length().millimetres();
        this.width = cloth.width().millimetres();
        this.letter = Math.max(length, width) / 45;
    }

    /** Returns the drawing. Names have no letters in them that XML would mind. */
    public static String of(StashCloth cloth) {
        return new ClothPicture(cloth).drawn();
    }

    private String drawn() {
        double left = 4 * letter;
        double top = 5 * letter;
        double wide = length + 2 * left;
        double high = width + 2 * top;
        double scale = LONGEST_PIXELS / Math.max(wide, high);
        line(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\" viewBox=\"%.2f %.2f %.2f %.2f\" font-family=\"sans-serif\" font-size=\"%.2f\">",
                wide * scale, high * scale, -left, -top, wide, high, letter);
        line("<title>%s</title>", cloth.name());
        line("<rect x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" fill=\"#fff\"/>", -left, -top, wide, high);
        cloth();
        cloth.edge().ifPresent(this::edges);
        cloth.flaws().forEach(this::flaw);
        grain();
        words();
        line("</svg>");
        return svg.toString();
    }

    private void cloth() {
        line(
                "<path d=\"M %s Z\" fill=\"#e9f1f5\" stroke=\"#234\" stroke-width=\"%.2f\"/>",
                corners().stream()
                        .map(corner -> formatted(
                                "%.3f %.3f",
                                corner.fromStart().millimetres(),
                                corner.fromSelvedge().millimetres()))
                        .collect(Collectors.joining(" L ")),
                letter / 8);
        for (double y : new double[] {0, width}) {
            line(
                    "<path d=\"M 0 %.3f H %.3f\" stroke=\"#234\" stroke-width=\"%.2f\" stroke-dasharray=\"%.2f %.2f\"/>",
                    y, length, letter / 4, letter, letter / 2);
        }
    }

    private List<Corner> corners() {
        if (!cloth.isStraight()) {
            return cloth.there().corners();
        }
        Length far = cloth.there().length();
        return List.of(
                new Corner(Length.ZERO, Length.ZERO),
                new Corner(far, Length.ZERO),
                new Corner(far, cloth.width()),
                new Corner(Length.ZERO, cloth.width()));
    }

    private void edges(UnusableEdge edge) {
        double far = edge.far().millimetres();
        band(0, edge.near().millimetres());
        band(width - far, far);
    }

    private void band(double y, double high) {
        line(
                "<rect x=\"0\" y=\"%.3f\" width=\"%.3f\" height=\"%.3f\" fill=\"#234\" fill-opacity=\"0.15\"/>",
                y, length, high);
    }

    private void flaw(Flaw flaw) {
        double x = flaw.fromStart().millimetres();
        double y = flaw.fromSelvedge().millimetres();
        double along = flaw.length().millimetres();
        double across = flaw.width().millimetres();
        line(
                "<path d=\"M %2$.3f %3$.3f h %4$.3f v %5$.3f h -%4$.3f Z l %4$.3f %5$.3f m 0 -%5$.3f l -%4$.3f %5$.3f\" fill=\"none\" stroke=\"#b00\" stroke-width=\"%1$.2f\"/>",
                letter / 6, x, y, along, across);
    }

    private void grain() {
        boolean bothWays =
                cloth.direction().stream().noneMatch(way -> way.name().startsWith("ONE"));
        double from = length / 3;
        double to = 2 * length / 3;
        line(
                "<path d=\"M %.3f %.3f H %.3f m %5$.3f -%6$.3f L %3$.3f %2$.3f l %5$.3f %6$.3f%4$s\" fill=\"none\" stroke=\"#234\" stroke-width=\"%7$.2f\"/>",
                from,
                width / 2,
                to,
                bothWays
                        ? formatted(
                                " M %1$.3f %2$.3f m %3$.3f -%4$.3f L %1$.3f %2$.3f l %3$.3f %4$.3f",
                                from, width / 2, letter / 2, letter / 3)
                        : "",
                -letter / 2,
                letter / 3,
                letter / 8);
    }

    private void words() {
        text(
                0,
                -3 * letter,
                "start",
                cloth.name() + ": " + cloth.fabric()
                        + cloth.colour().map(c -> ", " + c).orElse(""));
        text(0, -1.6 * letter, "start", "near selvedge");
        text(length, -1.6 * letter, "end", LengthWords.both(cloth.there().length()) + " long");
        text(
                0,
                width + 1.8 * letter,
                "start",
                LengthWords.both(cloth.width()) + " wide" + (cloth.flaws().isEmpty() ? "" : "; red: flaws"));
        text(length, width + 1.8 * letter, "end", "far selvedge");
        line(
                "<text transform=\"translate(%.2f %.2f) rotate(-90)\" text-anchor=\"middle\">cut end</text>",
                -letter, width / 2);
    }

    private void text(double x, double y, String anchor, String words) {
        line("<text x=\"%.2f\" y=\"%.2f\" text-anchor=\"%s\">%s</text>", x, y, anchor, words);
    }

    private void line(String format, Object... values) {
        svg.append(formatted(format, values)).append('\n');
    }

    private static String formatted(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
