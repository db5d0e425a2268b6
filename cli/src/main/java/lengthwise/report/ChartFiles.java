package lengthwise.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lengthwise.model.Direction;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.report.Chart.Cell;
import lengthwise.report.Chart.Cloth;
import lengthwise.svg.Markup;

/** A chart as text, and as files: a page, a drawing, a table for a spreadsheet. */
public final class ChartFiles {
    private static final String NOTE =
            "Rounded up from the exact length, with ends and allowances: to 10 cm, and to 1/8 yd.";

    private ChartFiles() {}

    /** Writes them; every text is complete before the first file is replaced. */
    public static void write(Chart chart, Path folder) throws IOException {
        String page = html(chart);
        String drawing = ChartDrawing.file(chart);
        String csv = csv(chart);
        WholeFile.write(folder.resolve("chart.html"), page);
        WholeFile.write(folder.resolve("chart.svg"), drawing);
        WholeFile.write(folder.resolve("chart.csv"), csv);
        WholeFile.write(folder.resolve("chart.txt"), text(chart));
    }

    /** Returns a table for each fabric, for the terminal. */
    public static String text(Chart chart) {
        StringBuilder text = new StringBuilder();
        for (Cloth cloth : chart.fabrics()) {
            text.append(cloth.name()).append(", for ").append(cloth.role()).append('\n');
            text.append(Columns.ofFigures(table(cloth)));
            notes(cloth).forEach(note -> text.append(note).append('\n'));
            text.append('\n');
        }
        return text.append(NOTE).append('\n').toString();
    }

    private static List<List<String>> table(Cloth cloth) {
        List<List<String>> rows = new ArrayList<>();
        List<String> widths = new ArrayList<>(List.of("width"));
        List<String> directions = new ArrayList<>(List.of("cloth"));
        for (int width = 0; width < cloth.widths().size(); width++) {
            for (Direction direction : cloth.directions()) {
                widths.add(cloth.width(width));
                directions.add(word(direction));
            }
        }
        rows.add(widths);
        rows.add(directions);
        for (int row = 0; row < cloth.rows().size(); row++) {
            List<String> cells = new ArrayList<>(List.of(cloth.rows().get(row)));
            for (int width = 0; width < cloth.widths().size(); width++) {
                for (int direction = 0; direction < cloth.directions().size(); direction++) {
                    Cell cell = cloth.cell(row, width, direction);
                    cells.add(cell.isLaid() ? metres(cell) + ", " + yards(cell) : "none");
                }
            }
            rows.add(cells);
        }
        return rows;
    }

    static String metres(Cell cell) {
        return Figures.fixed(cell.metric().micrometres() / 1e6, 1) + " m";
    }

    static String yards(Cell cell) {
        return LengthWords.yardsUp(cell.yards());
    }

    static String word(Direction direction) {
        return direction.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Why cells have no marker, each reason once. */
    private static List<String> reasons(Cloth cloth) {
        List<String> reasons = new ArrayList<>();
        for (int row = 0; row < cloth.rows().size(); row++) {
            for (int width = 0; width < cloth.widths().size(); width++) {
                Cell cell = cloth.cell(row, width, 0);
                if (!cell.isLaid()) {
                    reasons.add("%s, %s wide: there is no marker. %s"
                            .formatted(cloth.rows().get(row), cloth.width(width), cell.reason()));
                }
            }
        }
        return reasons;
    }

    /** What has to be said of cells beside their figures. */
    private static List<String> notes(Cloth cloth) {
        List<String> notes = new ArrayList<>(reasons(cloth));
        for (int row = 0; row < cloth.rows().size(); row++) {
            for (int width = 0; width < cloth.widths().size(); width++) {
                for (int direction = 0; direction < cloth.directions().size(); direction++) {
                    Optional<Length> cutDownTo =
                            cloth.cell(row, width, direction).cutDownTo();
                    if (cutDownTo.isPresent()) {
                        notes.add("%s, %s wide, %s: %s"
                                .formatted(
                                        cloth.rows().get(row),
                                        cloth.width(width),
                                        word(cloth.directions().get(direction)),
                                        EstimateWords.cutDown(cutDownTo.get(), cloth.inches())));
                    }
                }
            }
        }
        if (cloth.isLongerSomewhere()) {
            notes.add(EstimateWords.A_WIDER_ONE_IS_LONGER);
        }
        return notes;
    }

    static String csv(Chart chart) {
        List<List<String>> rows = new ArrayList<>(List.of(List.of(
                "fabric",
                "for",
                "laid",
                "width_mm",
                "direction",
                "marker_mm",
                "lower_bound_mm",
                "needed_mm",
                "sold_m",
                "sold_yd",
                "efficiency",
                "note")));
        for (Cloth cloth : chart.fabrics()) {
            for (int row = 0; row < cloth.rows().size(); row++) {
                for (int width = 0; width < cloth.widths().size(); width++) {
                    for (int direction = 0; direction < cloth.directions().size(); direction++) {
                        List<String> line = new ArrayList<>(List.of(
                                cloth.name(),
                                cloth.role(),
                                cloth.rows().get(row),
                                millimetres(cloth.widths().get(width)),
                                word(cloth.directions().get(direction))));
                        line.addAll(figures(cloth.cell(row, width, direction)));
                        rows.add(line);
                    }
                }
            }
        }
        return Csv.of(rows);
    }

    private static List<String> figures(Cell cell) {
        return cell.isLaid()
                ? List.of(
                        millimetres(cell.marker()),
                        millimetres(cell.lowerBound()),
                        millimetres(cell.needed()),
                        Figures.fixed(cell.metric().micrometres() / 1e6, 1),
                        Figures.fixed(cell.yards().micrometres() / 914_400.0, 3),
                        Figures.fixed(cell.efficiency(), 6),
                        cell.cutDownTo()
                                .map(to -> "cut down to %s mm before it is laid".formatted(millimetres(to)))
                                .orElse(""))
                : List.of("", "", "", "", "", "", cell.reason());
    }

    private static String millimetres(Length length) {
        return Figures.fixed(length.millimetres(), 3);
    }

    static String html(Chart chart) {
        Page page = new Page(chart.job());
        Markup html = page.content();
        html.element("h1", chart.job());
        html.element("p", "Cloth for each size, by width and direction. " + NOTE, "class", "quiet")
                .line();
        for (Cloth cloth : chart.fabrics()) {
            html.open("section", "class", "fabric").line();
            html.element("h2", cloth.name());
            html.element("p", "For " + cloth.role() + ".", "class", "quiet").line();
            table(html, cloth);
            Page.list(html, "ul", notes(cloth));
            ChartDrawing.picture(html, cloth);
            html.close().line();
        }
        html.element(
                        "p",
                        "Lengthwise %s. Each figure is that of a marker that was found and checked; the pictures are not to cut from."
                                .formatted(chart.version()),
                        "class",
                        "quiet")
                .line();
        return page.text();
    }

    private static void table(Markup html, Cloth cloth) {
        String across = Integer.toString(cloth.directions().size());
        html.open("table", "class", "sheet")
                .line()
                .open("thead")
                .line()
                .open("tr")
                .element("th", "");
        for (int width = 0; width < cloth.widths().size(); width++) {
            html.element("th", cloth.width(width), "class", "over", "colspan", across);
        }
        html.close().line().open("tr").element("th", "");
        for (int width = 0; width < cloth.widths().size(); width++) {
            cloth.directions().forEach(direction -> html.element("th", word(direction), "class", "number"));
        }
        html.close().line().close().line().open("tbody").line();
        for (int row = 0; row < cloth.rows().size(); row++) {
            html.open("tr").element("td", cloth.rows().get(row));
            for (int width = 0; width < cloth.widths().size(); width++) {
                for (int direction = 0; direction < cloth.directions().size(); direction++) {
                    Cell cell = cloth.cell(row, width, direction);
                    html.open("td", "class", "number");
                    if (cell.isLaid()) {
                        html.text(metres(cell)).empty("br").element("span", yards(cell), "class", "quiet");
                    } else {
                        html.text("none");
                    }
                    html.close();
                }
            }
            html.close().line();
        }
        html.close().line().close().line();
    }
}
