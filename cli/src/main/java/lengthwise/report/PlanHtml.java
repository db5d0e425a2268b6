package lengthwise.report;

import java.util.List;
import lengthwise.model.LengthWords;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.Lay;
import lengthwise.svg.MarkerPicture;
import lengthwise.svg.Markup;

/** The cut ticket of a plan: a page for each fabric, to print and to tick off. */
final class PlanHtml {
    private static final double TALLEST_PICTURE = 60;

    private final PlanRun run;
    private final Page page;
    private final Markup html;

    private PlanHtml(PlanRun run) {
        this.run = run;
        this.page = new Page("Cut ticket: " + run.job());
        this.html = page.content();
    }

    /**
     * Returns the text of the page.
     *
     * @param names of the lays' files, without their endings, fabric by fabric
     */
    static String of(PlanRun run, List<List<String>> names) {
        return new PlanHtml(run).write(names);
    }

    private String write(List<List<String>> names) {
        html.element("h1", run.job()).line();
        html.element("p", "Cut ticket · Lengthwise " + run.version() + ", seed " + run.seed(), "class", "quiet")
                .line();
        if (!run.warnings().isEmpty()) {
            html.element("h3", "Look at this first").line();
            Page.list(html, "ul", run.warnings());
        }
        for (int i = 0; i < run.cloths().size(); i++) {
            html.open("section", "class", "fabric").line();
            cloth(run.cloths().get(i), names.get(i));
            html.close().line();
        }
        cautions();
        return page.text();
    }

    private void cloth(PlanRun.Cloth cloth, List<String> names) {
        html.element("h2", cloth.fabric().name()).line();
        figures(cloth);
        lays(cloth);
        for (int i = 0; i < cloth.lays().size(); i++) {
            lay(cloth, i, names.get(i));
        }
        html.element("h3", "What is cut").line();
        Page.list(html, "ul", PlanWords.counts(cloth));
        buy(cloth);
        html.element("h3", "How good the plan is").line();
        Page.list(html, "ul", PlanWords.proof(cloth));
        if (!cloth.changes().isEmpty()) {
            html.element("h3", "If the order were a little different").line();
            Page.list(
                    html,
                    "ul",
                    cloth.changes().stream()
                            .map(change -> PlanWords.change(cloth, change))
                            .toList());
        }
        if (!cloth.assumptions().isEmpty()) {
            html.element("h3", "Assumed").line();
            Page.list(html, "ul", cloth.assumptions());
        }
    }

    private void figures(PlanRun.Cloth cloth) {
        html.open("div", "class", "figures");
        figure("Lays", Integer.toString(cloth.plan().lays().size()));
        figure("Plies in all", Integer.toString(cloth.plan().plies()));
        figure("Cloth on the table", PlanWords.cloth(cloth.plan().fabric()));
        figure("Cuttable width", LengthWords.both(cloth.fabric().cuttableWidth()));
        html.close().line();
    }

    private void figure(String name, String value) {
        html.open("div").element("span", name).element("b", value).close();
    }

    private void lays(PlanRun.Cloth cloth) {
        html.open("table").line().open("thead");
        Page.cells(
                html,
                "th",
                "Lay",
                "Plies",
                "Garments in the marker",
                "Marker",
                "Length of a ply, ends included",
                "Cut");
        html.close().open("tbody").line();
        for (int i = 0; i < cloth.lays().size(); i++) {
            Lay lay = cloth.plan().lays().get(i);
            html.open("tr")
                    .element("td", Integer.toString(i + 1))
                    .element("td", PlanWords.plies(cloth.order(), lay))
                    .element("td", PlanWords.ratio(cloth.order(), lay.ratio()))
                    .element("td", LengthWords.both(cloth.lays().get(i).marker().length()))
                    .element("td", LengthWords.both(cloth.ply(i)))
                    .open("td")
                    .element("span", "", "class", "box")
                    .close()
                    .close()
                    .line();
        }
        html.close().close().line();
    }

    private void lay(PlanRun.Cloth cloth, int number, String name) {
        html.open("div", "class", "together").line();
        Lay lay = cloth.plan().lays().get(number);
        html.element(
                        "h3",
                        "Lay %d: %s, %s"
                                .formatted(
                                        number + 1,
                                        PlanWords.ratio(cloth.order(), lay.ratio()),
                                        lay.allPlies() == 1 ? "1 ply" : lay.allPlies() + " plies"))
                .line();
        MarkerPicture.draw(html, cloth.lays().get(number).marker(), TALLEST_PICTURE);
        html.open("p", "class", "quiet").text("Marker ");
        Page.link(html, name + ".svg");
        html.text(" · placement sheet ");
        Page.link(html, name + "-placement.html");
        html.close().line();
        html.close().line();
    }

    private void buy(PlanRun.Cloth cloth) {
        html.element("h3", "What to buy").line();
        html.open("table").line().open("thead");
        Page.cells(
                html, "th", "Cloth", "Markers", "Ends", "Shrinkage", "Squaring", "Flaws", "Shop's step", "Buy", "Cost");
        html.close().open("tbody").line();
        for (int colour = 0; colour < cloth.purchases().size(); colour++) {
            Purchase purchase = cloth.purchases().get(colour);
            Page.cells(
                    html,
                    "td",
                    PlanWords.colour(cloth, colour),
                    LengthWords.metric(purchase.marker()),
                    LengthWords.metric(purchase.ends()),
                    LengthWords.metric(purchase.shrinkage()),
                    LengthWords.metric(purchase.squaring()),
                    LengthWords.metric(purchase.flaws()),
                    LengthWords.metric(purchase.rounding()),
                    LengthWords.toBuy(purchase.buy()),
                    purchase.cost().isPresent() ? Figures.money(purchase.cost().getAsDouble()) : "–");
        }
        html.close().close().line();
        List<String> bolts = cloth.bolts().stream()
                .flatMap(of -> PlanWords.bolts(cloth, of).stream())
                .toList();
        if (!bolts.isEmpty()) {
            html.element("h3", "From which bolt").line();
            Page.list(html, "ul", bolts);
        }
    }

    private void cautions() {
        html.open("section", "class", "together").line();
        html.element("h3", "Before you cut").line();
        Page.list(
                html,
                "ul",
                List.of(
                        "Let knit cloth rest before it is spread, lay every ply without pulling, and line up one edge.",
                        "Spread one ply, lay the marker on it and measure: a marker must not run off the cloth."));
        html.close().line();
        Cautions.write(html);
    }
}
