package lengthwise.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import lengthwise.FabricRun;
import lengthwise.Filling;
import lengthwise.Run;
import lengthwise.SharedRun;
import lengthwise.geometry.Box;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.model.SpreadWords;
import lengthwise.plan.Leftovers;
import lengthwise.solver.SearchResult.StopReason;
import lengthwise.svg.MarkerPicture;
import lengthwise.svg.Markup;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.StashDraw;

/** The report for people: one page that needs nothing but itself, to read on a screen or print. */
final class ReportHtml {
    private final Run run;
    private final List<String> names;
    private final Page page;
    private final Markup html;

    private ReportHtml(Run run, List<String> names) {
        this.run = run;
        this.names = names;
        page = new Page(run.job());
        html = page.content();
    }

    /**
     * Returns the text of the page.
     *
     * @param names of the fabrics' files, without their endings
     */
    static String of(Run run, List<String> names) {
        return new ReportHtml(run, names).write();
    }

    private String write() {
        html.element("h1", run.job());
        html.element("p", "What to buy, how it lies, what is cut.", "class", "quiet")
                .line();
        summary();
        run.shared().forEach(this::shared);
        warnings();
        customers();
        shopping();
        for (int i = 0; i < names.size(); i++) {
            fabric(run.fabrics().get(i), names.get(i));
        }
        Cautions.write(html);
        making();
        return page.text();
    }

    private void summary() {
        html.open("table").line().open("thead").line();
        html.open("tr");
        html.element("th", "Fabric").element("th", "For").element("th", "Buy").element("th", "Marker");
        html.element("th", "Cuttable width")
                .element("th", "Efficiency", "class", "number")
                .element("th", "Cost", "class", "number");
        html.close().line().close().line().open("tbody").line();
        for (FabricRun fabricRun : run.fabrics()) {
            Fabric fabric = fabricRun.marker().order().fabric();
            html.open("tr");
            html.element("td", fabric.name()).element("td", fabric.role());
            html.open("td")
                    .element(
                            "b",
                            fabric.onHand().isEmpty()
                                    ? LengthWords.toBuy(run.toBuy(fabricRun))
                                    : run.drawn(fabricRun)
                                            .map(drawn -> drawn.cloth() + ", from the stash")
                                            .orElse("on hand"))
                    .close();
            html.element("td", LengthWords.both(fabricRun.marker().length()));
            html.element("td", LengthWords.both(fabric.cuttableWidth()));
            html.element("td", Figures.percent(fabricRun.marker().efficiency()), "class", "number");
            html.element("td", cost(run.cost(fabricRun)), "class", "number");
            html.close().line();
        }
        html.close().line();
        if (run.fabrics().size() > 1 && cost(run).isPresent()) {
            html.open("tfoot").open("tr", "class", "sum");
            html.element("td", "All fabrics", "colspan", "6").element("td", cost(cost(run)), "class", "number");
            html.close().close().line();
        }
        html.close().line();
    }

    private void shared(SharedRun shared) {
        html.element("h3", "The pieces of cloth for " + shared.purpose());
        html.open("table").line().open("thead").line();
        Page.cells(
                html,
                "th",
                "Cloth",
                "There is",
                "Contours",
                "Laid, with its ends",
                "Left behind that",
                "Of it in pieces");
        html.close().line().open("tbody").line();
        for (Fabric cloth : shared.cloths()) {
            Optional<FabricRun> cut = SharedRun.of(cloth, run);
            Optional<Marker> marker = cut.map(FabricRun::marker);
            Page.cells(
                    html,
                    "td",
                    cloth.name(),
                    cloth.onHand()
                            .map(there -> LengthWords.both(there.length()))
                            .or(() -> cut.map(bought -> "buy " + LengthWords.toBuy(run.toBuy(bought))))
                            .orElse("not bought"),
                    marker.map(laid -> Integer.toString(laid.placements().size()))
                            .orElse("none"),
                    marker.map(laid -> LengthWords.both(cloth.spread().onTable(laid.length())))
                            .orElse(""),
                    marker.flatMap(Marker::left).map(LengthWords::both).orElse(""),
                    cut.map(SharedWords::share).map(Figures::percent).orElse(""));
        }
        html.close().line().close().line();
        Page.list(html, "ul", SharedWords.of(shared, run));
    }

    /** Returns the sum of the costs as they are shown; empty where the price of a fabric is not known. */
    static OptionalDouble cost(Run run) {
        List<OptionalDouble> costs = run.fabrics().stream().map(run::cost).toList();
        return costs.stream().allMatch(OptionalDouble::isPresent)
                ? OptionalDouble.of(costs.stream()
                        .mapToDouble(cost -> Double.parseDouble(Figures.money(cost.getAsDouble())))
                        .sum())
                : OptionalDouble.empty();
    }

    static String cost(OptionalDouble cost) {
        return cost.isPresent() ? Figures.money(cost.getAsDouble()) : "no price given";
    }

    private void warnings() {
        if (!run.warnings().isEmpty()) {
            html.element("h3", "Mind");
            Page.list(html, "ul", run.warnings());
        }
    }

    private void shopping() {
        if (run.shopping().isPresent()) {
            html.element("h3", "Shopping list");
            ShoppingFiles.section(html, run.shopping().get());
        }
    }

    private void customers() {
        if (run.customers().isEmpty()) {
            return;
        }
        html.element("h3", "Made to measure");
        html.open("table").line().open("thead").line();
        html.open("tr").element("th", "Customer").element("th", "Garments").element("th", "Size");
        html.element("th", "Her measures")
                .element("th", "Cut to her length")
                .close()
                .line();
        html.close().line().open("tbody").line();
        for (MadeToMeasure made : run.customers()) {
            html.open("tr").open("td").element("b", made.customer()).close();
            html.element("td", made.garments().stream().map(String::valueOf).collect(Collectors.joining(", ")));
            html.element("td", made.size().name()).element("td", made.why());
            html.element(
                            "td",
                            made.cut().stream()
                                    .map(cut -> cut.piece() + " " + LengthWords.both(cut.length()))
                                    .collect(Collectors.joining(", ")))
                    .close()
                    .line();
        }
        html.close().line().close().line();
    }

    private void fabric(FabricRun fabricRun, String name) {
        Marker marker = fabricRun.marker();
        html.open("section", "class", "fabric").line();
        html.element("h2", marker.order().fabric().name());
        figures(fabricRun);
        MarkerPicture.draw(html, marker, 110);
        html.open("p", "class", "quiet").text("Numbers are in laying order, as on the placement sheet, ");
        Page.link(html, name + "-placement.html");
        html.text(". To cut from, print the marker at true scale, ");
        Page.link(html, name + ".svg");
        html.text(", and measure its check squares first.").close().line();
        run.drawn(fabricRun).ifPresent(this::drawn);
        new PurchaseTable(run, html).write(fabricRun);
        new WasteTable(html).write(fabricRun);
        leftovers(fabricRun);
        costs(fabricRun);
        assumptions(fabricRun);
        html.element("h3", "Spread and cut");
        Page.list(html, "ol", CuttingSteps.of(marker));
        StripTable strips = new StripTable(html);
        strips.blocks(StraightBlock.on(marker));
        strips.strips(FoldedStrip.on(marker));
        CutListTable.write(html, CutList.of(marker));
        fillers(fabricRun.fillers());
        surplus(fabricRun.surplus());
        html.close().line();
    }

    private void figures(FabricRun fabricRun) {
        Marker marker = fabricRun.marker();
        Fabric fabric = marker.order().fabric();
        Map<String, String> figures = new LinkedHashMap<>();
        if (fabric.onHand().isEmpty()) {
            figures.put("buy", LengthWords.toBuy(run.toBuy(fabricRun)));
        }
        figures.put("marker length", LengthWords.both(marker.length()));
        figures.put(
                "cuttable width" + SpreadWords.afterWidth(fabric.spread()), LengthWords.both(fabric.cuttableWidth()));
        fabric.onHand().ifPresent(there -> {
            figures.put("on hand", LengthWords.both(there.length()));
            figures.put("it fits; left over", LengthWords.both(marker.left().orElseThrow()));
        });
        figures.put("marker efficiency", Figures.percent(marker.efficiency()));
        figures.put("no marker can be shorter than", LengthWords.atLeast(fabricRun.lowerBound()));
        if (run.cost(fabricRun).isPresent()) {
            figures.put("cost", Figures.money(run.cost(fabricRun).getAsDouble()));
        }
        html.open("div", "class", "figures").line();
        figures.forEach((name, value) -> html.open("div")
                .element("span", name)
                .element("b", value)
                .close()
                .line());
        html.close().line();
    }

    private void drawn(StashDraw drawn) {
        html.open("div", "class", "together").element("h3", "From the stash");
        html.element(
                        "p",
                        "%s: %s of its %s spent%s."
                                .formatted(
                                        drawn.cloth(),
                                        LengthWords.both(drawn.spent()),
                                        LengthWords.both(drawn.length()),
                                        drawn.value().isPresent()
                                                ? ", worth "
                                                        + Figures.money(
                                                                drawn.value().getAsDouble())
                                                : ""))
                .line();
        html.element(
                        "p",
                        drawn.back().isEmpty()
                                ? "Nothing goes back."
                                : "Back in the stash: %s."
                                        .formatted(drawn.back().stream()
                                                .map(back -> LengthWords.both(back.length()) + " × "
                                                        + LengthWords.both(back.width()))
                                                .collect(Collectors.joining("; "))))
                .close()
                .line();
    }

    private void costs(FabricRun fabricRun) {
        if (!fabricRun.costs().isEmpty()) {
            html.element("h3", "What the rules cost");
            Page.list(html, "ul", fabricRun.costs());
        }
    }

    private void leftovers(FabricRun fabricRun) {
        Marker marker = fabricRun.marker();
        List<Box> boxes = Leftovers.of(marker, fabricRun.purchase());
        if (boxes.isEmpty()) {
            return;
        }
        html.open("div", "class", "together").element("h3", "Whole cloth left over");
        html.open("table").line().open("thead").line();
        Page.cells(html, "th", "lengthwise, with the grain", "crosswise", "from the start", "from the near edge");
        html.close().line().open("tbody").line();
        for (Box box : boxes) {
            Page.cells(
                    html,
                    "td",
                    LengthWords.both(new Length(box.width())),
                    LengthWords.both(new Length(box.height())),
                    LengthWords.both(new Length(box.minX())),
                    LengthWords.both(new Length(box.minY())));
        }
        html.close().line().close().line();
        html.element(
                        "p",
                        "The largest rectangles between the pieces and behind them, measured from the corner of the cuttable"
                                + " area as it lies on the table%s."
                                        .formatted(
                                                marker.order().fabric().spread().layers() > 1
                                                        ? ", once in each layer"
                                                        : ""),
                        "class",
                        "quiet")
                .line();
        html.close().line();
    }

    private void assumptions(FabricRun fabricRun) {
        if (fabricRun.assumptions().isEmpty()) {
            return;
        }
        html.element("h3", "Assumed, because it was not said");
        html.open("table").line().open("thead").line();
        Page.cells(html, "th", "assumed", "what the other choice would cost");
        html.close().line().open("tbody").line();
        for (FabricRun.Assumption assumption : fabricRun.assumptions()) {
            Page.cells(
                    html,
                    "td",
                    assumption.text(),
                    assumption.otherChoice().isEmpty() ? "not worked out" : assumption.otherChoice());
        }
        html.close().line().close().line();
    }

    private void fillers(List<Filling.Kind> fillers) {
        if (!fillers.isEmpty()) {
            html.element("h3", "Fillers, where they add no length");
            Page.list(html, "ul", fillers.stream().map(ReportHtml::sentence).toList());
        }
    }

    private static String sentence(Filling.Kind kind) {
        int out = kind.atMost() - kind.laid();
        return "%s: %s of %s %s laid%s."
                .formatted(
                        kind.piece(),
                        Integer.toString(kind.laid()),
                        Integer.toString(kind.atMost()),
                        kind.laid() == 1 ? "is" : "are",
                        out == 0 ? "" : "; for " + out + " no room was found");
    }

    private void surplus(List<String> surplus) {
        if (!surplus.isEmpty()) {
            html.element("h3", "Cut and not ordered");
            Page.list(html, "ul", surplus);
        }
    }

    private void making() {
        html.open("section").line().element("h2", "How this was made");
        html.element(
                        "p",
                        "Lengthwise %s, seed %s, workers %s. %s"
                                .formatted(
                                        run.version(),
                                        Long.toString(run.seed()),
                                        Integer.toString(run.workers()),
                                        run.reproducible()
                                                ? "The same job with the same seed, workers and iterations gives the same"
                                                        + " markers."
                                                : "A clock or an interrupt ended the search, so the same seed may give"
                                                        + " another marker next time."))
                .line();
        html.open("ul").line();
        for (FabricRun fabricRun : run.fabrics()) {
            html.element(
                            "li",
                            "%s: %s, after %s rounds of the search."
                                    .formatted(
                                            fabricRun.marker().order().fabric().name(),
                                            why(fabricRun.reason()),
                                            Long.toString(fabricRun.progress().iteration())))
                    .line();
        }
        html.close().line().close().line();
    }

    private static String why(StopReason reason) {
        return switch (reason) {
            case BUDGET -> "the search used up its time or its iterations";
            case PROVEN_SHORTEST -> "no marker can be shorter by as much as a quarter of a millimetre";
            case NO_GAIN -> "nothing better came for so long that more was not expected";
            case CANCELLED -> "the search was interrupted; this is the best marker it had";
        };
    }
}
