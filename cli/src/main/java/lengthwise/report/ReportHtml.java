package lengthwise.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
import lengthwise.plan.Purchase;
import lengthwise.plan.Waste;
import lengthwise.solver.SearchResult.StopReason;
import lengthwise.svg.MarkerPicture;
import lengthwise.svg.Markup;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.StashDraw;

/** The report for people: one page that needs nothing but itself, to read on a screen or print. */
final class ReportHtml {
    private static final Length METRE = Length.ofMillimetres(1000);
    private static final Length YARD = Length.ofMillimetres(914.4);

    /** A share of the bar that is narrower has no letter in it: the table has them in the same order. */
    private static final double LETTER_MM = 4;

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

    private static String cost(OptionalDouble cost) {
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
        purchase(fabricRun);
        waste(fabricRun);
        leftovers(fabricRun);
        costs(fabricRun);
        assumptions(fabricRun);
        html.element("h3", "Spread and cut");
        Page.list(html, "ol", CuttingSteps.of(marker));
        blocks(StraightBlock.on(marker));
        strips(FoldedStrip.on(marker));
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
        figures.put("no marker can be shorter than", LengthWords.both(fabricRun.lowerBound()));
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

    private void purchase(FabricRun fabricRun) {
        Purchase purchase = fabricRun.purchase();
        Marker marker = fabricRun.marker();
        Fabric fabric = marker.order().fabric();
        html.open("div", "class", "together")
                .element("h3", fabric.onHand().isEmpty() ? "Length to buy" : "If it had to be bought");
        html.open("table").line().open("tbody").line();
        boolean withBindings =
                !run.toBuy(fabricRun).equals(purchase.buy()) && fabric.onHand().isEmpty();
        int lengths = fabric.spread().lengths();
        length(lengths == 1 ? "marker" : "marker, laid " + lengths + " times", purchase.marker());
        Length toWholeRepeat = marker.length().minus(marker.piecesEnd());
        if (fabric.repeat().isPresent() && toWholeRepeat.micrometres() > 0) {
            length("of it, behind the last piece to a whole repeat of the print", toWholeRepeat.times(lengths));
        }
        length(
                "%s, %s each"
                        .formatted(
                                lengths == 1 || fabric.spread().isFoldedCrosswise()
                                        ? "both ends"
                                        : "both ends of " + lengths + " plies",
                                LengthWords.both(fabric.spread().endAllowance())),
                purchase.ends());
        if (fabric.isWashedFirst()) {
            length(
                    "shrinkage in the wash, %s lengthwise: length ÷ %s"
                            .formatted(
                                    Figures.percent(fabric.shrinkage().lengthwise()),
                                    Figures.fixed(1 - fabric.shrinkage().lengthwise(), 3)),
                    purchase.shrinkage());
        }
        if (fabric.buying().squaring().micrometres() > 0) {
            length(
                    "to cut both ends square, %s each"
                            .formatted(LengthWords.both(fabric.buying().squaring())),
                    purchase.squaring());
        }
        if (fabric.buying().flaws() > 0) {
            length(
                    "for flaws, %s of all this"
                            .formatted(Figures.percent(fabric.buying().flaws())),
                    purchase.flaws());
        }
        length("rounded up to the shop's step of " + LengthWords.both(fabric.soldBy()), purchase.rounding());
        html.open("tr", "class", "sum").element("td", withBindings ? "for the marker alone" : "to buy");
        html.element("td", LengthWords.metricUp(purchase.buy()), "class", "number");
        html.element("td", LengthWords.yardsUp(purchase.buy()), "class", "number")
                .close()
                .line();
        html.close().line().close().line();
        if (withBindings) {
            html.element(
                            "p",
                            "With the cloth for bindings, as the shopping list has it, buy %s."
                                    .formatted(LengthWords.toBuy(run.toBuy(fabricRun))))
                    .line();
        }
        fabric.price()
                .ifPresent(price -> html.element(
                                "p",
                                "At %s per %s: %s."
                                        .formatted(
                                                Figures.money(price.amount()),
                                                per(price.per()),
                                                cost(
                                                        fabric.onHand().isPresent()
                                                                ? purchase.cost()
                                                                : run.cost(fabricRun))))
                        .line());
        html.close().line();
    }

    private static String per(Length length) {
        if (length.equals(METRE)) {
            return "m";
        }
        return length.equals(YARD) ? "yd" : LengthWords.both(length);
    }

    private void length(String what, Length length) {
        html.open("tr").element("td", what);
        html.element("td", LengthWords.metric(length), "class", "number");
        html.element("td", LengthWords.inches(length, 8), "class", "number");
        html.close().line();
    }

    private void waste(FabricRun fabricRun) {
        Fabric fabric = fabricRun.marker().order().fabric();
        Waste waste = Waste.of(fabricRun.marker(), fabricRun.purchase());
        html.open("div", "class", "together").element("h3", "Where the cloth goes");
        List<Share> shares = Share.of(waste);
        bar(shares, waste.bought());
        html.open("table").line().open("thead").line();
        html.open("tr").element("th", "in the bar, from the left");
        html.element("th", "m²", "class", "number").element("th", "sq yd", "class", "number");
        html.element("th", "share", "class", "number").close().line();
        html.close().line().open("tbody").line();
        for (Share share : shares) {
            html.open("tr").open("td");
            html.element("span", share.letter, "class", "tint", "style", "background: " + share.fill)
                    .text(share.what)
                    .close();
            html.element("td", Figures.squareMetres(share.area), "class", "number");
            html.element("td", Figures.squareYards(share.area), "class", "number");
            html.element("td", Figures.percent(share.area / waste.bought()), "class", "number");
            html.close().line();
        }
        html.open("tr", "class", "sum")
                .element("td", fabric.isWashedFirst() ? "bought, as it measures washed" : "bought");
        html.element("td", Figures.squareMetres(waste.bought()), "class", "number");
        html.element("td", Figures.squareYards(waste.bought()), "class", "number");
        html.element("td", Figures.percent(1), "class", "number").close().line();
        html.close().line().close().line();
        html.element(
                        "p",
                        "Marker efficiency %s: area of the pieces ÷ (marker length × cuttable width). Of the cloth on"
                                        .formatted(Figures.percent(
                                                fabricRun.marker().efficiency()))
                                + " the table, with its ends and edges, %s becomes pieces."
                                        .formatted(Figures.percent(waste.utilisation())),
                        "class",
                        "quiet")
                .close()
                .line();
    }

    /** A kind of cloth, with a letter for who cannot tell the fills apart. */
    private record Share(String letter, String what, String fill, double area) {
        static List<Share> of(Waste waste) {
            return Stream.of(
                            new Share("A", "in the pieces", "#b9d0c4", waste.pieces()),
                            new Share("B", "between the pieces", "#e3b98a", waste.betweenPieces()),
                            new Share("C", "along the edges, not cuttable", "#c3cbce", waste.edges()),
                            new Share("D", "at both ends", "#98a2a6", waste.ends()),
                            new Share("E", "bought for squaring and flaws", "#dccfe2", waste.allowances()),
                            new Share(
                                    "F",
                                    "left over from the shop's step, still whole cloth",
                                    "#ffffff",
                                    waste.leftOver()))
                    .filter(share -> !share.letter.equals("E") || share.area > 0)
                    .toList();
        }
    }

    private void bar(List<Share> shares, double bought) {
        html.open(
                "svg",
                "xmlns",
                Markup.SVG,
                "class",
                "picture",
                "viewBox",
                "0 0 180 8",
                "style",
                "width: 180mm; max-width: 100%",
                "role",
                "img",
                "aria-label",
                "Shares of the cloth, as in the table");
        double x = 0.2;
        for (Share share : shares) {
            double wide = Math.max(0, share.area / bought * 179.6);
            html.empty(
                    "rect",
                    "x",
                    Figures.fixed(x, 2),
                    "y",
                    "0.2",
                    "width",
                    Figures.fixed(wide, 2),
                    "height",
                    "7.6",
                    "fill",
                    share.fill,
                    "stroke",
                    "#1c2a30",
                    "stroke-width",
                    "0.2");
            if (wide > LETTER_MM) {
                html.element(
                        "text",
                        share.letter,
                        "x",
                        Figures.fixed(x + wide / 2, 2),
                        "y",
                        "5.1",
                        "font-size",
                        "3.2",
                        "font-weight",
                        "bold",
                        "text-anchor",
                        "middle",
                        "fill",
                        "#1c2a30");
            }
            x += wide;
        }
        html.close().line();
    }

    private void blocks(List<StraightBlock> blocks) {
        if (blocks.isEmpty()) {
            return;
        }
        html.element("h3", "Straight-cut blocks");
        html.element("p", StraightBlock.howToCut(blocks)).line();
        Page.list(html, "ul", blocks.stream().map(StraightBlock::sentence).toList());
    }

    private void strips(List<FoldedStrip.Kind> kinds) {
        if (kinds.isEmpty()) {
            return;
        }
        html.element("h3", "Ties and strips");
        html.element(
                        "p",
                        "To cut one to length, fold the strip end to end without stretching it, measure the half length"
                                + " from the fold, and trim both ends as one: never at the fold.")
                .line();
        html.open("table").line().open("thead").line();
        boolean sized = kinds.stream().anyMatch(kind -> !kind.strip().size().isEmpty());
        html.open("tr").element("th", "strip");
        if (sized) {
            html.element("th", "sizes");
        }
        html.element("th", "pieces", "class", "number").element("th", "cut width");
        html.element("th", "half length, folded")
                .element("th", "whole length")
                .close()
                .line();
        html.close().line().open("tbody").line();
        for (List<FoldedStrip.Kind> alike : FoldedStrip.alike(kinds)) {
            FoldedStrip strip = alike.get(0).strip();
            html.open("tr").element("td", strip.piece());
            if (sized) {
                html.element(
                        "td",
                        alike.stream()
                                .map(kind -> kind.strip().size() + " × " + kind.count())
                                .collect(Collectors.joining(", ")));
            }
            html.element(
                    "td",
                    Integer.toString(
                            alike.stream().mapToInt(FoldedStrip.Kind::count).sum()),
                    "class",
                    "number");
            html.element("td", LengthWords.both(strip.width()));
            html.element("td", LengthWords.both(strip.half()));
            html.element("td", LengthWords.both(strip.whole())).close().line();
        }
        html.close().line().close().line();
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
            case PROVEN_SHORTEST -> "the marker is as short as any can be";
            case NO_GAIN -> "nothing better came for so long that more was not expected";
            case CANCELLED -> "the search was interrupted; this is the best marker it had";
        };
    }
}
