package lengthwise.report;

import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.Marker;
import lengthwise.plan.Purchase;
import lengthwise.svg.Markup;

/** How the length to buy of a fabric comes about, and what it costs. */
final class PurchaseTable {
    private static final Length METRE = Length.ofMillimetres(1000);
    private static final Length YARD = Length.ofMillimetres(914.4);

    private final Run run;
    private final Markup html;

    PurchaseTable(Run run, Markup html) {
        this.run = run;
        this.html = html;
    }

    void write(FabricRun fabricRun) {
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
                                                ReportHtml.cost(
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
}
