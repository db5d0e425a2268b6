package lengthwise.demos;

import static java.util.Objects.requireNonNull;
import static lengthwise.demos.Quantity.assertShows;
import static lengthwise.demos.Quantity.assertShowsAtLeast;
import static lengthwise.demos.Quantity.assertShowsToBuy;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lengthwise.testing.Json;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** Every figure that the page of a run shows is that of its JSON, in both systems of units. */
class ReportFiguresTest {
    private static final double SQUARE_YARD_MM2 = 914.4 * 914.4;

    static Stream<String> markers() {
        return Stream.of(DemoRun.MARKERS);
    }

    @ParameterizedTest
    @MethodSource("markers")
    void theFirstTableIsThatOfTheJson(String job) throws Exception {
        DemoRun run = DemoRun.of(job);
        Element table = Elements.of(run.page(), "table").get(0);
        List<Json> fabrics = run.figures().objects("fabrics");
        List<List<String>> rows = Elements.rows(table);
        assertThat(rows).hasSameSizeAs(fabrics);
        for (int i = 0; i < rows.size(); i++) {
            List<String> row = rows.get(i);
            Json fabric = fabrics.get(i);
            assertThat(row.get(0)).isEqualTo(fabric.text("name"));
            assertThat(row.get(1)).isEqualTo(fabric.text("role"));
            if (fabric.has("on_hand_mm")) {
                assertThat(row.get(2)).isEqualTo("on hand");
            } else {
                assertShowsToBuy(row.get(2), fabric.number("buy_mm"));
            }
            assertShows(row.get(3), fabric.number("length_mm"));
            assertShows(row.get(4), fabric.number("cuttable_width_mm"));
            assertPercent(row.get(5), fabric.number("efficiency"));
            assertMoney(row.get(6), fabric);
        }
        for (Element sum : Elements.of(table, "tfoot")) {
            assertMoney(Elements.cells(sum).get(1), run.figures());
            assertThat(run.figures().number("cost"))
                    .isCloseTo(
                            fabrics.stream()
                                    .mapToDouble(fabric -> fabric.number("cost"))
                                    .sum(),
                            within(1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("markers")
    void theTablesOfAFabricAreThoseOfTheJson(String job) throws Exception {
        DemoRun run = DemoRun.of(job);
        List<Json> fabrics = run.figures().objects("fabrics");
        List<Element> sections = sections(run);
        assertThat(sections).hasSameSizeAs(fabrics);
        for (int i = 0; i < sections.size(); i++) {
            assertFigures(sections.get(i), fabrics.get(i));
            assertPurchase(sections.get(i), fabrics.get(i));
            assertWaste(sections.get(i), fabrics.get(i));
            assertLeftovers(sections.get(i), fabrics.get(i));
            assertStrips(sections.get(i), fabrics.get(i));
            assertCutList(sections.get(i), fabrics.get(i));
        }
    }

    /** Whatever length a page shows, also in a sentence that stands in the JSON too, is a length of the JSON. */
    @ParameterizedTest
    @MethodSource("markers")
    void noLengthIsShownThatTheJsonDoesNotHave(String job) throws Exception {
        DemoRun run = DemoRun.of(job);
        List<String> sentences = new ArrayList<>();
        List<Double> lengths = new ArrayList<>();
        collect(run.figures(), "", sentences, lengths);
        lengths.add(914.4);
        List<Double> bounds = run.figures().objects("fabrics").stream()
                .map(fabric -> fabric.number("lower_bound_mm"))
                .toList();
        int shown = 0;
        for (Element element : Elements.of(run.page(), "td", "b", "li", "p", "h3")) {
            String text = element.getTextContent();
            if (sentences.stream().anyMatch(text::contains)) {
                continue;
            }
            for (Quantity quantity : Quantity.in(text)) {
                assertThat(lengths)
                        .as("%s in: %s", quantity, text)
                        .anyMatch(mm -> quantity.shows(mm)
                                || quantity.showsUp(mm)
                                || sixteenth(quantity).shows(mm)
                                || (bounds.contains(mm) && quantity.showsDown(mm)));
                shown++;
            }
        }
        assertThat(shown).isGreaterThan(30);
    }

    /** Blocks of strips are measured to a sixteenth of an inch. */
    private static Quantity sixteenth(Quantity shown) {
        return shown.unit().equals("in") ? new Quantity(shown.value(), 1 / 16.0, "in") : shown;
    }

    @ParameterizedTest
    @MethodSource("markers")
    void theStepsAreThoseOfTheJson(String job) throws Exception {
        DemoRun run = DemoRun.of(job);
        List<Json> fabrics = run.figures().objects("fabrics");
        List<Element> sections = sections(run);
        for (int i = 0; i < sections.size(); i++) {
            List<String> steps = Elements.of(Elements.of(sections.get(i), "ol").get(0), "li").stream()
                    .map(Element::getTextContent)
                    .toList();
            assertThat(steps).isEqualTo(fabrics.get(i).members().get("steps"));
            double laid = fabrics.get(i).number("laid_length_mm");
            assertThat(Quantity.in(steps.toString())).anyMatch(shown -> shown.shows(laid));
        }
    }

    private static List<Element> sections(DemoRun run) throws Exception {
        return Elements.of(run.page(), "section").stream()
                .filter(section -> section.getAttribute("class").equals("fabric"))
                .toList();
    }

    private static void assertFigures(Element section, Json fabric) {
        Map<String, String> figures = new HashMap<>();
        for (Element figure : Elements.of(section, "div")) {
            List<Element> name = Elements.of(figure, "span");
            if (name.size() == 1 && Elements.of(figure, "b").size() == 1) {
                figures.put(
                        name.get(0).getTextContent(),
                        Elements.of(figure, "b").get(0).getTextContent());
            }
        }
        assertThat(figures).hasSizeGreaterThan(4);
        figures.forEach((name, value) -> {
            switch (name) {
                case "buy" -> assertShowsToBuy(value, fabric.number("buy_mm"));
                case "marker length" -> assertShows(value, fabric.number("length_mm"));
                case "on hand" -> assertShows(value, fabric.number("on_hand_mm"));
                case "it fits; left over" -> assertShows(value, fabric.number("left_mm"));
                case "marker efficiency" -> assertPercent(value, fabric.number("efficiency"));
                case "no marker can be shorter than" -> assertShowsAtLeast(value, fabric.number("lower_bound_mm"));
                case "cost" -> assertMoney(value, fabric);
                default -> {
                    assertThat(name).startsWith("cuttable width");
                    assertShows(value, fabric.number("cuttable_width_mm"));
                }
            }
        });
    }

    private static void assertPurchase(Element section, Json fabric) {
        List<List<String>> rows = Elements.rows(
                Elements.tableBehind(section, fabric.has("on_hand_mm") ? "If it had to be bought" : "Length to buy"));
        Json purchase = object(fabric, "purchase");
        double sum = 0;
        for (List<String> row : rows) {
            String what = row.get(0);
            String key = Map.of(
                            "marker", "marker_mm",
                            "of it", "of_it_to_a_whole_repeat_mm",
                            "both ends", "ends_mm",
                            "shrinkage", "shrinkage_mm",
                            "to cut both", "squaring_mm",
                            "for flaws", "flaws_mm",
                            "rounded up", "rounding_mm",
                            "to buy", "buy_mm",
                            "for the marker alone", "buy_mm")
                    .entrySet()
                    .stream()
                    .filter(entry -> what.startsWith(entry.getKey()))
                    .map(Map.Entry::getValue)
                    .findFirst()
                    .orElseThrow();
            double mm = purchase.number(key);
            if (key.equals("buy_mm")) {
                assertThat(what.equals("to buy")).isEqualTo(mm == fabric.number("buy_mm"));
                assertShowsToBuy(row.get(1), mm);
                assertShowsToBuy(row.get(2), mm);
                assertThat(sum).isCloseTo(mm, within(1e-6));
            } else {
                assertShows(row.get(1), mm);
                assertShows(row.get(2), mm);
                sum += key.startsWith("of_it") ? 0 : mm;
            }
        }
        assertThat(rows.get(rows.size() - 1).get(0)).isIn("to buy", "for the marker alone");
    }

    private static void assertWaste(Element section, Json fabric) {
        Json waste = object(fabric, "waste");
        double bought = waste.number("bought_mm2");
        double sum = 0;
        List<List<String>> rows = Elements.rows(Elements.tableBehind(section, "Where the cloth goes"));
        for (List<String> row : rows) {
            String what = row.get(0).replaceFirst("^[A-F]", "");
            double area = waste.number(Map.of(
                            "in the pieces", "pieces_mm2",
                            "between", "between_pieces_mm2",
                            "along", "edges_mm2",
                            "at both", "ends_mm2",
                            "bought for", "allowances_mm2",
                            "left over", "left_over_mm2")
                    .entrySet()
                    .stream()
                    .filter(entry -> what.startsWith(entry.getKey()))
                    .map(Map.Entry::getValue)
                    .findFirst()
                    .orElse("bought_mm2"));
            assertThat(Double.parseDouble(row.get(1))).as(what).isCloseTo(area / 1e6, within(0.000_051));
            assertThat(Double.parseDouble(row.get(2))).as(what).isCloseTo(area / SQUARE_YARD_MM2, within(0.000_051));
            assertPercent(row.get(3), area / bought);
            sum += what.matches("bought|bought, .*") ? 0 : area;
        }
        assertThat(sum).isCloseTo(bought, within(1.0));
    }

    private static void assertLeftovers(Element section, Json fabric) {
        List<Json> leftovers = fabric.objects("leftovers");
        if (leftovers.isEmpty()) {
            return;
        }
        List<List<String>> rows = Elements.rows(Elements.tableBehind(section, "Whole cloth left over"));
        assertThat(rows).hasSameSizeAs(leftovers);
        for (int i = 0; i < rows.size(); i++) {
            assertShows(rows.get(i).get(0), leftovers.get(i).number("lengthwise_mm"));
            assertShows(rows.get(i).get(1), leftovers.get(i).number("crosswise_mm"));
            assertShows(rows.get(i).get(2), leftovers.get(i).number("x_mm"));
            assertShows(rows.get(i).get(3), leftovers.get(i).number("y_mm"));
        }
    }

    /** Folded end to end, half the length: whole = 2 × half (plane geometry). */
    private static void assertStrips(Element section, Json fabric) {
        List<Json> strips = fabric.objects("strips");
        if (strips.isEmpty()) {
            return;
        }
        List<List<String>> rows = Elements.rows(Elements.tableBehind(section, "Ties and strips"));
        List<Json> left = new ArrayList<>(strips);
        for (List<String> row : rows) {
            int last = row.size() - 1;
            List<Json> alike = left.stream()
                    .filter(strip -> strip.text("piece").equals(row.get(0))
                            && strip.number("whole_length_mm") == left.get(0).number("whole_length_mm")
                            && strip.number("cut_width_mm") == left.get(0).number("cut_width_mm"))
                    .toList();
            assertThat(alike).isNotEmpty();
            if (last == 5) {
                assertThat(row.get(1))
                        .isEqualTo(alike.stream()
                                .map(strip -> strip.text("size") + " × " + Math.round(strip.number("pieces")))
                                .collect(Collectors.joining(", ")));
            }
            assertThat(Double.parseDouble(row.get(last - 3)))
                    .isEqualTo(alike.stream()
                            .mapToDouble(strip -> strip.number("pieces"))
                            .sum());
            for (Json strip : alike) {
                assertShows(row.get(last - 2), strip.number("cut_width_mm"));
                assertShows(row.get(last - 1), strip.number("half_length_mm"));
                assertShows(row.get(last), strip.number("whole_length_mm"));
                assertThat(strip.number("whole_length_mm"))
                        .isCloseTo(2 * strip.number("half_length_mm"), within(0.0011));
            }
            left.removeAll(alike);
        }
        assertThat(left).isEmpty();
    }

    private static void assertCutList(Element section, Json fabric) {
        List<Json> lines = fabric.objects("cut_list");
        List<Element> shown = spans(Elements.tableBehind(section, "Cut list: "), "cut");
        assertThat(shown).hasSameSizeAs(lines);
        double pieces = 0;
        for (int i = 0; i < shown.size(); i++) {
            assertThat(Elements.of(shown.get(i), "b").get(0).getTextContent())
                    .isEqualTo(lines.get(i).text("piece"));
            assertThat(lines.get(i).number("laid")).isEqualTo(lines.get(i).number("wanted"));
            assertThat(spans(shown.get(i), "box")).hasSize((int) lines.get(i).number("laid"));
            assertThat(numbers(shown.get(i))).isEqualTo(numbers(fabric, lines.get(i)));
            pieces += lines.get(i).number("laid");
        }
        assertThat(fabric.objects("pieces")).hasSize((int) pieces);
        assertThat(section.getTextContent()).contains("Cut list: " + (int) pieces + " pieces");
    }

    private static List<Element> spans(Element within, String kind) {
        return Elements.of(within, "span").stream()
                .filter(span -> span.getAttribute("class").equals(kind))
                .toList();
    }

    /** Returns the numbers behind the boxes of a piece. */
    private static List<Integer> numbers(Element piece) {
        return spans(piece, "tick").stream()
                .map(tick -> Integer.valueOf(tick.getTextContent().replaceFirst("^(\\d+).*", "$1")))
                .toList();
    }

    /** Returns the numbers of the contours that give a line of the cut list; fillers of a kind are one line. */
    private static List<Integer> numbers(Json fabric, Json line) {
        return fabric.objects("pieces").stream()
                .filter(piece -> piece.text("piece").equals(line.text("piece"))
                        && (line.has("filler")
                                ? piece.number("garment") > lastGarment(fabric)
                                : piece.number("garment") == line.number("garment")))
                .map(piece -> (int) piece.number("number"))
                .distinct()
                .sorted()
                .toList();
    }

    private static double lastGarment(Json fabric) {
        return fabric.objects("cut_list").stream()
                .filter(line -> line.has("garment"))
                .mapToDouble(line -> line.number("garment"))
                .max()
                .orElse(0);
    }

    private static Json object(Json within, String name) {
        return (Json) requireNonNull(within.members().get(name));
    }

    private static void assertPercent(String cell, double share) {
        assertThat(cell).matches("\\d+\\.\\d\\d %");
        assertThat(Double.parseDouble(cell.replace(" %", ""))).as(cell).isCloseTo(share * 100, within(0.005_1));
    }

    private static void assertMoney(String cell, Json priced) {
        if (cell.equals("no price given")) {
            assertThat(priced.text("cost")).isEqualTo("null");
        } else {
            assertThat(Double.parseDouble(cell)).isEqualTo(priced.number("cost"));
        }
    }

    private static void collect(Object value, String name, List<String> sentences, List<Double> lengths) {
        if (value instanceof Json object) {
            object.members().forEach((key, member) -> collect(member, key, sentences, lengths));
        } else if (value instanceof List<?> items) {
            items.forEach(item -> collect(item, name, sentences, lengths));
        } else if (value instanceof Double number && name.endsWith("_mm")) {
            lengths.add(number);
        } else if (value instanceof String text
                && (text.length() > 20 || (name.equals("details") && !text.isEmpty()))) {
            sentences.add(text);
        }
    }
}
