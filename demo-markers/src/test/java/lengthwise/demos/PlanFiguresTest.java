package lengthwise.demos;

import static java.util.Objects.requireNonNull;
import static lengthwise.demos.Quantity.assertShows;
import static lengthwise.demos.Quantity.assertShowsToBuy;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import lengthwise.testing.Json;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** Every figure that the cut ticket of a plan shows is that of its JSON, in both systems of units. */
class PlanFiguresTest {
    @Test
    void theFiguresOfAFabricAreThoseOfTheJson() throws Exception {
        DemoRun run = DemoRun.of(DemoRun.PLAN);
        List<Json> fabrics = run.figures().objects("fabrics");
        List<Element> sections = sections(run);
        assertThat(sections).hasSameSizeAs(fabrics);
        double total = 0;
        for (int i = 0; i < sections.size(); i++) {
            Json fabric = fabrics.get(i);
            Map<String, String> figures = figures(sections.get(i));
            List<Json> lays = lays(run, fabric);
            assertThat(figures.get("Lays")).isEqualTo(Integer.toString(lays.size()));
            assertThat(Double.parseDouble(requireNonNull(figures.get("Plies in all"))))
                    .isEqualTo(fabric.number("plies"))
                    .isEqualTo(lays.stream()
                            .mapToDouble(lay -> lay.number("plies"))
                            .sum());
            assertShows(requireNonNull(figures.get("Cloth on the table")), fabric.number("total_mm"));
            assertShows(requireNonNull(figures.get("Cuttable width")), fabric.number("cuttable_width_mm"));
            assertThat(lays.stream()
                            .mapToDouble(lay -> lay.number("plies") * lay.number("ply_mm"))
                            .sum())
                    .isCloseTo(fabric.number("total_mm"), within(1e-6));
            total += fabric.number("total_mm");
        }
        assertThat(run.figures().number("total_mm")).isCloseTo(total, within(1e-6));
    }

    @Test
    void theTableOfLaysIsThatOfTheJson() throws Exception {
        DemoRun run = DemoRun.of(DemoRun.PLAN);
        List<Element> sections = sections(run);
        for (int i = 0; i < sections.size(); i++) {
            List<List<String>> rows =
                    Elements.rows(Elements.of(sections.get(i), "table").get(0));
            List<Json> lays = lays(run, run.figures().objects("fabrics").get(i));
            assertThat(rows).hasSameSizeAs(lays);
            for (int lay = 0; lay < rows.size(); lay++) {
                List<String> row = rows.get(lay);
                Json shown = lays.get(lay);
                assertThat(row.get(0)).isEqualTo(Integer.toString(lay + 1));
                assertThat(counts(row.get(1), "(\\S+) (\\d+)(?:, |$)"))
                        .isEqualTo(shown.has("colours") ? members(shown, "colours") : Map.of());
                assertThat(Double.parseDouble(row.get(1).replaceFirst(":.*", "")))
                        .isEqualTo(shown.number("plies"));
                assertThat(counts(row.get(2), "([^ ,]+)(?: × (\\d+))?(?:, |$)")).isEqualTo(members(shown, "sizes"));
                assertShows(row.get(3), shown.number("length_mm"));
                assertShows(row.get(4), shown.number("ply_mm"));
            }
        }
    }

    @Test
    void whatToBuyIsThatOfTheJson() throws Exception {
        DemoRun run = DemoRun.of(DemoRun.PLAN);
        List<Element> sections = sections(run);
        for (int i = 0; i < sections.size(); i++) {
            List<Json> buy = run.figures().objects("fabrics").get(i).objects("buy");
            List<List<String>> rows = Elements.rows(Elements.tableBehind(sections.get(i), "What to buy"));
            assertThat(rows).hasSameSizeAs(buy);
            for (int colour = 0; colour < rows.size(); colour++) {
                List<String> row = rows.get(colour);
                Json shown = buy.get(colour);
                if (shown.has("colour")) {
                    assertThat(row.get(0)).isEqualTo(shown.text("colour"));
                }
                List<String> parts = List.of("marker", "ends", "shrinkage", "squaring", "flaws", "rounding");
                double sum = 0;
                for (int part = 0; part < parts.size(); part++) {
                    double mm = shown.number(parts.get(part) + "_mm");
                    assertShows(row.get(part + 1), mm);
                    sum += mm;
                }
                assertThat(shown.number("buy_mm")).isCloseTo(sum, within(1e-6));
                assertShowsToBuy(row.get(7), shown.number("buy_mm"));
                assertThat(Double.parseDouble(row.get(8))).isEqualTo(shown.number("cost"));
            }
        }
    }

    /** Whatever length the page shows is one of the JSON; what the plan takes more than it has to is a share. */
    @Test
    void noLengthIsShownThatTheJsonDoesNotHave() throws Exception {
        DemoRun run = DemoRun.of(DemoRun.PLAN);
        List<Double> lengths = new ArrayList<>();
        collect(run.figures(), "", lengths);
        int shown = 0;
        for (Element element : Elements.of(run.page(), "td", "b", "li", "h3")) {
            for (Quantity quantity : Quantity.in(element.getTextContent())) {
                assertThat(lengths)
                        .as("%s in: %s", quantity, element.getTextContent())
                        .anyMatch(mm -> quantity.shows(Math.abs(mm)) || quantity.showsUp(mm));
                shown++;
            }
        }
        assertThat(shown).isGreaterThan(30);
    }

    /** The plies that are cut from a bolt and what is left on it are the bolt: nothing of it is washed or squared in this demo. */
    @Test
    void theBoltsAddUp() throws Exception {
        DemoRun run = DemoRun.of(DemoRun.PLAN);
        int bolts = 0;
        for (Json fabric : run.figures().objects("fabrics")) {
            List<Json> lays = lays(run, fabric);
            for (Json bolt : fabric.objects("bolts")) {
                if (!bolt.has("left_mm")) {
                    continue;
                }
                List<?> plies = (List<?>) requireNonNull(bolt.members().get("plies"));
                double cut = 0;
                for (int lay = 0; lay < lays.size(); lay++) {
                    cut += (Double) plies.get(lay) * lays.get(lay).number("ply_mm");
                }
                assertThat(bolt.number("lost_at_ends_mm")).isZero();
                assertThat(bolt.number("length_mm")).isCloseTo(cut + bolt.number("left_mm"), within(1e-6));
                bolts++;
            }
        }
        assertThat(bolts).isPositive();
    }

    private static List<Element> sections(DemoRun run) throws Exception {
        return Elements.of(run.page(), "section").stream()
                .filter(section -> section.getAttribute("class").equals("fabric"))
                .toList();
    }

    private static List<Json> lays(DemoRun run, Json fabric) throws Exception {
        return run.figures().objects("lays").stream()
                .filter(lay -> lay.text("fabric").equals(fabric.text("name")))
                .toList();
    }

    private static Map<String, String> figures(Element section) {
        Map<String, String> figures = new TreeMap<>();
        for (Element figure : Elements.of(section, "div")) {
            List<Element> name = Elements.of(figure, "span");
            List<Element> value = Elements.of(figure, "b");
            if (name.size() == 1 && value.size() == 1) {
                figures.put(name.get(0).getTextContent(), value.get(0).getTextContent());
            }
        }
        return figures;
    }

    private static Map<String, Double> members(Json within, String name) {
        Map<String, Double> members = new TreeMap<>();
        ((Json) requireNonNull(within.members().get(name)))
                .members()
                .forEach((key, value) -> members.put(key, (Double) value));
        return members;
    }

    /** Returns "S, M × 2" as S 1, M 2. */
    private static Map<String, Double> counts(String cell, String pattern) {
        Map<String, Double> counts = new TreeMap<>();
        for (MatchResult found : Pattern.compile(pattern)
                .matcher(cell.replaceFirst("^\\d+(: |$)", ""))
                .results()
                .toList()) {
            counts.put(found.group(1), found.group(2) == null ? 1.0 : Double.parseDouble(found.group(2)));
        }
        return counts;
    }

    private static void collect(Object value, String name, List<Double> lengths) {
        if (value instanceof Json object) {
            object.members().forEach((key, member) -> collect(member, key, lengths));
        } else if (value instanceof List<?> items) {
            items.forEach(item -> collect(item, name, lengths));
        } else if (value instanceof Double number && name.endsWith("_mm")) {
            lengths.add(number);
        }
    }
}
