package lengthwise.report;

import java.util.List;
import java.util.stream.Stream;
import lengthwise.FabricRun;
import lengthwise.model.Fabric;
import lengthwise.plan.Waste;
import lengthwise.svg.Markup;

/** Where the cloth of a fabric goes: a bar of shares, and a table. */
final class WasteTable {
    /** A share of the bar that is narrower has no letter in it: the table has them in the same order. */
    private static final double LETTER_MM = 4;

    private final Markup html;

    WasteTable(Markup html) {
        this.html = html;
    }

    void write(FabricRun fabricRun) {
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
        Page.openPicture(html, "180", "8", "Shares of the cloth, as in the table");
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
}
