package lengthwise.report;

import java.util.List;
import java.util.stream.Collectors;
import lengthwise.model.LengthWords;
import lengthwise.svg.Markup;

/** How strips are cut: blocks cut straight across, and ties folded to length. */
final class StripTable {
    private final Markup html;

    StripTable(Markup html) {
        this.html = html;
    }

    void blocks(List<StraightBlock> blocks) {
        if (blocks.isEmpty()) {
            return;
        }
        html.element("h3", "Straight-cut blocks");
        html.element("p", StraightBlock.howToCut(blocks)).line();
        Page.list(html, "ul", blocks.stream().map(StraightBlock::sentence).toList());
    }

    void strips(List<FoldedStrip.Kind> kinds) {
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
}
