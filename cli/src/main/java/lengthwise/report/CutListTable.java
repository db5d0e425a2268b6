package lengthwise.report;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.svg.Markup;

/** The cut list as a table, garment by garment, with a box to tick for each piece. */
final class CutListTable {
    private CutListTable() {}

    static void write(Markup html, CutList list) {
        html.element("h3", "Cut list: %s pieces".formatted(list.wanted()));
        html.open("table").line().open("thead").line();
        html.open("tr").element("th", "piece").element("th", "pieces", "class", "number");
        html.element("th", "numbers on the marker")
                .element("th", "laid")
                .element("th", "cut")
                .close()
                .line();
        html.close().line();
        Garment last = null;
        boolean fillers = false;
        for (CutList.Line line : list.lines()) {
            if (!(fillers && line.filler()) && !line.garment().equals(last)) {
                if (last != null) {
                    html.close().line();
                }
                html.open("tbody", "class", "together").line();
                last = line.garment();
                fillers = line.filler();
                String size = last.size().name();
                html.open("tr", "class", "group");
                html.element(
                                "td",
                                fillers
                                        ? "fillers"
                                        : "garment " + last.called() + (size.isEmpty() ? "" : ", size " + size),
                                "colspan",
                                "5")
                        .close()
                        .line();
            }
            html.open("tr").element("td", line.piece());
            html.element("td", Integer.toString(line.wanted()), "class", "number");
            html.element("td", numbers(line));
            if (line.isComplete()) {
                html.element("td", "✓");
            } else {
                html.element("td", line.found().size() + " of " + line.wanted(), "class", "wrong");
            }
            html.open("td");
            for (int i = 0; i < line.wanted(); i++) {
                html.element("span", "", "class", "box");
            }
            html.close().close().line();
        }
        if (last != null) {
            html.close().line();
        }
        html.close().line();
    }

    private static String numbers(CutList.Line line) {
        Map<Integer, List<CutList.Found>> byNumber = line.found().stream()
                .collect(Collectors.groupingBy(CutList.Found::number, TreeMap::new, Collectors.toList()));
        return byNumber.entrySet().stream()
                .map(entry -> entry.getKey() + hands(entry.getValue()))
                .collect(Collectors.joining(", "));
    }

    /** One contour on folded cloth gives two pieces. */
    private static String hands(List<CutList.Found> cutTogether) {
        String letters = cutTogether.stream()
                .map(found -> found.cutOut().hand())
                .filter(hand -> hand != Hand.NONE)
                .sorted()
                .map(Hand::letter)
                .collect(Collectors.joining(" + "));
        if (!letters.isEmpty()) {
            return " (" + letters + ")";
        }
        return cutTogether.size() == 2 ? " (two)" : "";
    }
}
