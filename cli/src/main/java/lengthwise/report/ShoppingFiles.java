package lengthwise.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import lengthwise.svg.Markup;
import lengthwise.workshop.MeasuredEdge.Along;
import lengthwise.workshop.ShoppingList;
import lengthwise.workshop.ShoppingList.Amount;
import lengthwise.workshop.ShoppingList.Line;

/** A shopping list as text, as a page, for spreadsheets and for programs. */
public final class ShoppingFiles {
    /** The version of the JSON layout; it changes when a reader of the old one would go wrong. */
    static final int VERSION = 1;

    private static final List<String> CSV_HEADINGS = List.of(
            "kind", "name", "details", "used_mm", "used_pieces", "buy_mm", "buy_pieces", "packs", "cost", "for");

    private ShoppingFiles() {}

    /** Writes shopping.html, .csv, .json and .txt; every text is complete before the first file is replaced. */
    public static void write(ShoppingList list, Path folder) throws IOException {
        String page = html(list);
        String csv = csv(list);
        String json = json(list);
        String text = text(list);
        WholeFile.write(folder.resolve("shopping.html"), page);
        WholeFile.write(folder.resolve("shopping.csv"), csv);
        WholeFile.write(folder.resolve("shopping.json"), json);
        WholeFile.write(folder.resolve("shopping.txt"), text);
    }

    /** Returns the list for the terminal, each line ended by a line feed. */
    public static String text(ShoppingList list) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(ShoppingWords.HEADINGS);
        rows.addAll(ShoppingWords.rows(list));
        StringBuilder text = new StringBuilder(Columns.of(rows));
        text.append("%s: %s\n".formatted(ShoppingWords.totalHeading(list), Figures.money(list.known())));
        if (!list.seams().isEmpty()) {
            text.append('\n').append(Columns.ofFigures(ShoppingWords.seams(list)));
        }
        if (!list.edges().isEmpty()) {
            text.append('\n').append(Columns.of(ShoppingWords.edges(list)));
        }
        ShoppingWords.bindings(list).forEach(sentence -> text.append(sentence).append('\n'));
        list.notes().forEach(note -> text.append("Assumed: ").append(note).append('\n'));
        return text.toString();
    }

    static String csv(ShoppingList list) {
        List<List<String>> rows = new ArrayList<>(List.of(CSV_HEADINGS));
        for (Line line : list.lines()) {
            rows.add(List.of(
                    ShoppingWords.kind(line.kind()),
                    line.name(),
                    line.details(),
                    millimetres(line.need()),
                    pieces(line.need()),
                    millimetres(line.buy()),
                    pieces(line.buy()),
                    line.packs().map(packs -> Long.toString(packs.count())).orElse(""),
                    line.cost().isPresent() ? Figures.money(line.cost().getAsDouble()) : "",
                    line.why()));
        }
        List<String> total = new ArrayList<>(List.of("total", ShoppingWords.totalHeading(list)));
        while (total.size() < CSV_HEADINGS.size() - 2) {
            total.add("");
        }
        total.add(Figures.money(list.known()));
        total.add("");
        rows.add(total);
        return Csv.of(rows);
    }

    private static String millimetres(Amount amount) {
        return amount instanceof Amount.ByLength by ? Figures.fixed(by.length().millimetres(), 3) : "";
    }

    private static String pieces(Amount amount) {
        return amount instanceof Amount.ByPiece by ? Long.toString(by.pieces()) : "";
    }

    /** Returns the text of {@code shopping.json}. */
    public static String json(ShoppingList list) {
        return JsonText.of(json -> {
            json.count("version", VERSION);
            json.text("lengthwise", list.version());
            json.text("job", list.job());
            members(json, list);
        });
    }

    /** Writes the list itself: members of an object. */
    static void members(JsonText json, ShoppingList list) throws IOException {
        json.objects("lines", list.lines(), line -> {
            json.text("kind", ShoppingWords.kind(line.kind()));
            json.text("name", line.name());
            json.text("details", line.details());
            amount(json, "used", line.need());
            amount(json, "buy", line.buy());
            if (line.packs().isPresent()) {
                json.count("packs", line.packs().get().count());
            }
            json.number("cost", line.cost(), 2);
            json.text("for", line.why());
        });
        json.objects("seams", list.seams(), seam -> {
            json.count("stitch", seam.stitch());
            json.length("seam_mm", seam.seam());
            json.length("thread_mm", seam.thread());
            if (seam.needle().isPresent()) {
                json.length("needle_mm", seam.needle().get());
                json.length("looper_mm", seam.thread().minus(seam.needle().get()));
            }
        });
        json.objects("bindings", list.bindings(), binding -> {
            json.text("name", binding.name());
            json.text("fabric", binding.fabric());
            json.length("length_mm", binding.length());
            json.length("cut_width_mm", binding.cutWidth());
            json.yes("on_bias", binding.onBias());
            json.length("cloth_length_mm", binding.cloth().length());
            json.length("cloth_width_mm", binding.cloth().width());
            json.count("strips", binding.cloth().strips());
            json.count("joins", binding.cloth().joins());
        });
        json.objects("edges", list.edges(), edge -> {
            json.text("edge", edge.edge());
            json.text("size", edge.size());
            json.length("drawn_mm", edge.drawn());
            json.text("along", edge.along() == Along.SEW_LINE ? "sew-line" : "cut-line");
            json.text("where", edge.where());
            if (edge.stated().isPresent()) {
                json.length("stated_mm", edge.stated().get());
                json.yes("off", edge.isOff());
            }
        });
        json.number(
                "cost", list.withoutPrice().isEmpty() ? OptionalDouble.of(list.known()) : OptionalDouble.empty(), 2);
        json.number("cost_known", list.known(), 2);
        json.texts("without_price", list.withoutPrice());
        json.texts("assumed", list.notes());
    }

    private static void amount(JsonText json, String name, Amount amount) throws IOException {
        if (amount instanceof Amount.ByLength by) {
            json.length(name + "_mm", by.length());
        } else {
            json.count(name + "_pieces", ((Amount.ByPiece) amount).pieces());
        }
    }

    static String html(ShoppingList list) {
        Page page = new Page(list.job());
        Markup html = page.content();
        html.element("h1", list.job());
        html.element("p", "What to buy for it.", "class", "quiet").line();
        section(html, list);
        html.element(
                        "p",
                        "Lengthwise %s. Cut and sew a sample before you buy for all: machines and elastics differ."
                                .formatted(list.version()),
                        "class",
                        "quiet")
                .line();
        return page.text();
    }

    /** Writes the list into a page. */
    static void section(Markup html, ShoppingList list) {
        html.open("table").line().open("thead").line();
        row(html, "th", ShoppingWords.HEADINGS, "");
        html.close().line().open("tbody").line();
        ShoppingWords.rows(list).forEach(row -> row(html, "td", row, "box"));
        html.close().line().open("tfoot").line();
        html.open("tr", "class", "sum")
                .element("td", "")
                .element("td", ShoppingWords.totalHeading(list), "colspan", "4");
        html.element("td", Figures.money(list.known()), "class", "number")
                .element("td", "")
                .close()
                .line();
        html.close().line().close().line();
        if (!list.seams().isEmpty()) {
            html.element("h3", "Thread by stitch");
            table(html, "", ShoppingWords.seams(list));
        }
        if (!list.edges().isEmpty()) {
            html.element("h3", "Edges measured on the drawing");
            table(html, "edges", ShoppingWords.edges(list));
        }
        if (!list.bindings().isEmpty()) {
            html.element("h3", "Bindings");
            Page.list(html, "ul", ShoppingWords.bindings(list));
        }
        if (!list.notes().isEmpty()) {
            html.element("h3", "Assumed");
            Page.list(html, "ul", list.notes());
        }
    }

    private static void table(Markup html, String kind, List<List<String>> rows) {
        html.open("table", "class", kind).line().open("thead").line();
        Page.cells(html, "th", rows.get(0).toArray(new String[0]));
        html.close().line().open("tbody").line();
        rows.subList(1, rows.size()).forEach(row -> Page.cells(html, "td", row.toArray(new String[0])));
        html.close().line().close().line();
    }

    /** The fifth column is money; before the first there is a box to tick, where one is asked for. */
    private static void row(Markup html, String kind, List<String> texts, String box) {
        html.open("tr").open(kind);
        if (!box.isEmpty()) {
            html.element("span", "", "class", box);
        }
        html.close();
        for (int i = 0; i < texts.size(); i++) {
            if (i == 4) {
                html.element(kind, texts.get(i), "class", "number");
            } else if (i == 3 && kind.equals("td")) {
                html.open(kind).element("b", texts.get(i)).close();
            } else {
                html.element(kind, texts.get(i));
            }
        }
        html.close().line();
    }
}
