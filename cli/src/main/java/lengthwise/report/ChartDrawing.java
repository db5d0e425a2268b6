package lengthwise.report;

import java.util.List;
import java.util.regex.Pattern;
import lengthwise.report.Chart.Cell;
import lengthwise.report.Chart.Cloth;
import lengthwise.svg.Markup;

/** Draws a chart: a small picture of the layout for each cell, with what is sold for it. Not at true scale, not to cut from. */
final class ChartDrawing {
    private static final double LABEL = 24;
    private static final double ACROSS = 44;
    private static final double DOWN = 34;
    private static final double HEAD = 14;
    private static final double TITLE = 12;
    private static final double PICTURE_WIDE = 40;
    private static final double PICTURE_HIGH = 22;
    /** Thin strips side by side would run together to black in lines as thick as those of larger pieces. */
    private static final double LINE = 0.12;

    private static final double PART_OF_THICKNESS = 0.12;
    private static final String FACES = "Arial, Helvetica, 'Liberation Sans', sans-serif";

    private final Markup svg;
    private final Cloth cloth;

    private ChartDrawing(Markup svg, Cloth cloth) {
        this.svg = svg;
        this.cloth = cloth;
    }

    /** Returns cloth millimetres to one of the drawing, the same in all cells of a row: longer cloth is drawn longer. */
    private double reduction(int row) {
        List<Cell> cells = cloth.cells().get(row).stream()
                .flatMap(List::stream)
                .filter(Cell::isLaid)
                .toList();
        double longest = cells.stream()
                .mapToDouble(cell -> cell.laid().millimetres())
                .max()
                .orElse(1);
        double widest = cells.stream()
                .mapToDouble(cell -> cell.laidWidth().millimetres())
                .max()
                .orElse(1);
        return Math.max(longest / PICTURE_WIDE, widest / PICTURE_HIGH);
    }

    /** Returns the text of an SVG file with all fabrics, one below the other. */
    static String file(Chart chart) {
        double wide =
                chart.fabrics().stream().mapToDouble(ChartDrawing::wide).max().orElse(0);
        double high = chart.fabrics().stream()
                .mapToDouble(cloth -> TITLE + high(cloth))
                .sum();
        Markup svg = new Markup();
        svg.xmlDeclaration();
        svg.openDrawing(0, 0, wide, high, "font-family", FACES, "font-size", "3")
                .line();
        svg.element("title", chart.job());
        double y = 0;
        for (Cloth cloth : chart.fabrics()) {
            svg.open("g", "transform", "translate(0 %s)".formatted(of(y)));
            svg.element("text", cloth.name() + ", for " + cloth.role(), "x", "1", "y", "8", "font-size", "5");
            svg.open("g", "transform", "translate(0 %s)".formatted(of(TITLE)));
            new ChartDrawing(svg, cloth).draw();
            svg.close().close().line();
            y += TITLE + high(cloth);
        }
        return svg.close().line().toString();
    }

    /** Writes an {@code svg} element for one fabric into a page. */
    static void picture(Markup page, Cloth cloth) {
        Page.openPicture(
                page,
                of(wide(cloth)),
                of(high(cloth)),
                "How each cell of the table was laid on %s".formatted(cloth.name()),
                "font-family",
                FACES,
                "font-size",
                "3");
        new ChartDrawing(page, cloth).draw();
        page.close().line();
    }

    private static double wide(Cloth cloth) {
        return LABEL + ACROSS * cloth.widths().size() * cloth.directions().size();
    }

    private static double high(Cloth cloth) {
        return HEAD + DOWN * cloth.rows().size();
    }

    private void draw() {
        int directions = cloth.directions().size();
        for (int width = 0; width < cloth.widths().size(); width++) {
            double left = LABEL + ACROSS * directions * width;
            text(cloth.width(width), left + ACROSS * directions / 2, 4, "middle", "bold");
            for (int direction = 0; direction < directions; direction++) {
                double middle = left + ACROSS * (direction + 0.5);
                text(ChartFiles.word(cloth.directions().get(direction)), middle, 10, "middle", "normal");
                for (int row = 0; row < cloth.rows().size(); row++) {
                    cell(
                            cloth.cell(row, width, direction),
                            middle - PICTURE_WIDE / 2,
                            HEAD + DOWN * row,
                            reduction(row));
                }
            }
        }
        for (int row = 0; row < cloth.rows().size(); row++) {
            double top = HEAD + DOWN * row;
            svg.empty(
                    "line",
                    "x1",
                    "0",
                    "x2",
                    of(wide(cloth)),
                    "y1",
                    of(top - 2),
                    "y2",
                    of(top - 2),
                    "stroke",
                    "#c9cfd1",
                    "stroke-width",
                    "0.2");
            text(cloth.rows().get(row), 1, top + 3, "start", "bold");
        }
    }

    private void cell(Cell cell, double left, double top, double reduction) {
        if (!cell.isLaid()) {
            text("no marker", left, top + 3, "start", "normal");
            return;
        }
        text(ChartFiles.metres(cell), left, top + 3, "start", "bold");
        text(ChartFiles.yards(cell), left + 12, top + 3, "start", "normal");
        svg.open(
                "g",
                "transform",
                "translate(%s %s) scale(%s)".formatted(of(left), of(top + 5), Figures.fixed(1 / reduction, 6)),
                "stroke",
                "#1c2a30",
                "fill",
                "#cfddd5");
        svg.empty(
                "rect",
                "stroke-width",
                of(LINE * reduction),
                "width",
                of(cell.laid().millimetres()),
                "height",
                of(cell.laidWidth().millimetres()),
                "fill",
                "#ffffff");
        cell.outlines()
                .forEach(outline -> svg.empty(
                        "path",
                        "stroke-width",
                        of(Math.min(LINE * reduction, PART_OF_THICKNESS * thickness(outline))),
                        "d",
                        outline));
        svg.close();
    }

    /** Returns how thick an outline is, by its area and its perimeter: of a long rectangle the shorter side. */
    static double thickness(String outline) {
        double doubleArea = 0;
        double perimeter = 0;
        for (String ring : outline.split("M", -1)) {
            double[] at = Pattern.compile("[LZ ]+")
                    .splitAsStream(ring.strip())
                    .filter(number -> !number.isEmpty())
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            for (int i = 0; i + 1 < at.length; i += 2) {
                double nextX = at[(i + 2) % at.length];
                double nextY = at[(i + 3) % at.length];
                doubleArea += at[i] * nextY - nextX * at[i + 1];
                perimeter += Math.hypot(nextX - at[i], nextY - at[i + 1]);
            }
        }
        return perimeter == 0 ? 0 : Math.abs(doubleArea) / perimeter;
    }

    private void text(String words, double x, double y, String anchor, String weight) {
        svg.element(
                "text", words, "x", of(x), "y", of(y), "text-anchor", anchor, "font-weight", weight, "fill", "#1c2a30");
    }

    private static String of(double value) {
        return Figures.fixed(value, 2);
    }
}
