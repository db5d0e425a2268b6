package lengthwise.report;

import java.util.List;
import java.util.Optional;
import lengthwise.Estimate;
import lengthwise.Estimate.Cloth;
import lengthwise.Estimate.InWidth;
import lengthwise.Estimate.Laid;
import lengthwise.model.LengthWords;
import lengthwise.svg.MarkerPicture;
import lengthwise.svg.Markup;

/** An estimate as one page that needs nothing but itself, to read on a screen or print. */
final class EstimateHtml {
    private final Estimate estimate;
    private final Page page;
    private final Markup html;

    private EstimateHtml(Estimate estimate) {
        this.estimate = estimate;
        page = new Page(estimate.job());
        html = page.content();
    }

    static String of(Estimate estimate) {
        return new EstimateHtml(estimate).write();
    }

    private String write() {
        html.element("h1", estimate.job());
        html.element("p", "How much to buy, by the width of the cloth.", "class", "quiet")
                .line();
        html.element("h3", EstimateWords.garmentsHeading(estimate));
        table(EstimateWords.garments(estimate));
        html.element(
                        "p",
                        "Ends, waste, allowances and the shop's step are shared between the garments by the area of their pieces.",
                        "class",
                        "quiet")
                .line();
        if (!estimate.warnings().isEmpty()) {
            html.element("h3", "Mind");
            Page.list(html, "ul", estimate.warnings());
        }
        estimate.fabrics().forEach(this::cloth);
        html.element(
                        "p",
                        "Lengthwise %s. These figures are for planning: make the marker at the width you buy before you cut (lengthwise marker), and cut a sample first."
                                .formatted(estimate.version()),
                        "class",
                        "quiet")
                .line();
        return page.text();
    }

    private void table(List<List<String>> rows) {
        html.open("table").line().open("thead").line();
        row("th", rows.get(0));
        html.close().line().open("tbody").line();
        rows.subList(1, rows.size() - 1).forEach(each -> row("td", each));
        html.close().line().open("tfoot").line();
        html.open("tr", "class", "sum");
        cells("td", rows.get(rows.size() - 1));
        html.close().line().close().line().close().line();
    }

    private void row(String kind, List<String> texts) {
        html.open("tr");
        cells(kind, texts);
        html.close().line();
    }

    private void cells(String kind, List<String> texts) {
        for (int i = 0; i < texts.size(); i++) {
            if (i == 0) {
                html.element(kind, texts.get(i));
            } else {
                html.element(kind, texts.get(i), "class", "number");
            }
        }
    }

    private void cloth(Cloth cloth) {
        html.open("section", "class", "fabric").line();
        html.element("h2", cloth.name());
        html.element("p", "For " + cloth.role() + ".", "class", "quiet").line();
        WidthCurve.draw(html, cloth);
        widths(cloth);
        Page.list(html, "ul", EstimateWords.about(cloth, estimate));
        cloth.chosen().ifPresent(this::picture);
        html.close().line();
    }

    private void widths(Cloth cloth) {
        List<EstimateColumn> columns = EstimateColumn.of(cloth);
        Optional<Laid> cheapest = cloth.cheapest();
        html.open("table", "class", "sheet").line().open("thead").line().open("tr");
        html.element("th", "width");
        columns.forEach(column -> html.element("th", column.heading(), "class", "number"));
        html.element("th", "").close().line().close().line().open("tbody").line();
        for (InWidth width : cloth.widths()) {
            html.open("tr");
            html.open("td").text(EstimateWords.centimetres(width.width())).empty("br");
            html.element("span", LengthWords.inches(width.width(), 8), "class", "quiet")
                    .close();
            if (width instanceof Laid laid) {
                columns.forEach(column -> figure(column, laid));
                html.open("td");
                if (cheapest.filter(laid::equals).isPresent()) {
                    html.element("b", "cheapest");
                }
                html.close();
            } else {
                html.element("td", "no marker, see below", "colspan", Integer.toString(columns.size() + 1));
            }
            html.close().line();
        }
        html.close().line().close().line();
    }

    private void figure(EstimateColumn column, Laid laid) {
        html.open("td", "class", "number").text(column.metric().apply(laid));
        String imperial = column.imperial().apply(laid);
        if (!imperial.isEmpty()) {
            html.empty("br").element("span", imperial, "class", "quiet");
        }
        html.close();
    }

    private void picture(Laid laid) {
        html.open("div", "class", "together")
                .element(
                        "h3",
                        "How it lies on %s%s"
                                .formatted(
                                        EstimateWords.width(laid.width(), estimate.inches()),
                                        laid.cutDownTo()
                                                .map(to ->
                                                        ", cut down to " + EstimateWords.width(to, estimate.inches()))
                                                .orElse("")));
        MarkerPicture.draw(html, laid.marker(), 90);
        html.close().line();
    }
}
