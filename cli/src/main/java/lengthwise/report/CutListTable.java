package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.report.CutList.Found;
import lengthwise.report.CutList.Line;
import lengthwise.svg.Markup;

/** The cut list as a table, a row for each garment: its pieces one behind the other, each with a box to tick. */
final class CutListTable {
    private CutListTable() {}

    static void write(Markup html, CutList list) {
        html.element("h3", "Cut list: %s pieces".formatted(list.wanted()));
        html.open("table", "class", "cuts").line().open("thead").line();
        Page.cells(html, "th", "garment", "a box to tick for each piece, with its number on the marker");
        html.close().line().open("tbody").line();
        for (List<Line> garment : garments(list)) {
            html.open("tr").element("td", called(garment.get(0))).open("td");
            garment.forEach(line -> piece(html, line));
            html.close().close().line();
        }
        html.close().line().close().line();
    }

    /** Returns the lines of each garment, then those of all fillers. */
    private static List<List<Line>> garments(CutList list) {
        List<List<Line>> garments = new ArrayList<>();
        for (Line line : list.lines()) {
            boolean goesOn = !garments.isEmpty()
                    && belongs(line, garments.get(garments.size() - 1).get(0));
            if (!goesOn) {
                garments.add(new ArrayList<>());
            }
            garments.get(garments.size() - 1).add(line);
        }
        return garments;
    }

    private static boolean belongs(Line line, Line first) {
        return line.filler() == first.filler()
                && (line.filler() || line.garment().equals(first.garment()));
    }

    private static String called(Line line) {
        Garment garment = line.garment();
        String size = garment.size().name();
        return line.filler() ? "fillers" : garment.called() + (size.isEmpty() ? "" : ", size " + size);
    }

    private static void piece(Markup html, Line line) {
        html.open("span", "class", "cut").element("b", line.piece());
        Map<Integer, List<Found>> byNumber =
                line.found().stream().collect(Collectors.groupingBy(Found::number, TreeMap::new, Collectors.toList()));
        int behind = byNumber.size();
        for (Map.Entry<Integer, List<Found>> number : byNumber.entrySet()) {
            behind--;
            html.text(" ").open("span", "class", "tick");
            number.getValue().forEach(piece -> html.element("span", "", "class", "box"));
            html.text(number.getKey() + hands(number.getValue()) + (behind > 0 ? "," : ""));
            html.close();
        }
        if (!line.isComplete()) {
            html.text(" ").element("span", line.found().size() + " of " + line.wanted() + " laid", "class", "wrong");
        }
        html.close().text(" ");
    }

    /** One contour on folded cloth gives two pieces. */
    private static String hands(List<Found> cutTogether) {
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
