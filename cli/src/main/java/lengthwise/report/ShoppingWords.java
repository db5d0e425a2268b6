package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.workshop.BindingCloth;
import lengthwise.workshop.MeasuredEdge;
import lengthwise.workshop.ShoppingList;
import lengthwise.workshop.ShoppingList.Amount;
import lengthwise.workshop.ShoppingList.Binding;
import lengthwise.workshop.ShoppingList.Line;
import lengthwise.workshop.ShoppingList.SeamThread;

/** What a shopping list says in words. */
final class ShoppingWords {
    static final List<String> HEADINGS = List.of("what", "", "used", "buy", "cost", "for");

    static final String NO_PRICE = "no price given";

    private ShoppingWords() {}

    /** Returns a row for each line, under {@link #HEADINGS}. */
    static List<List<String>> rows(ShoppingList list) {
        List<List<String>> rows = new ArrayList<>();
        for (Line line : list.lines()) {
            rows.add(List.of(
                    line.name(),
                    line.details(),
                    used(line.need()),
                    buy(line),
                    line.cost().isPresent() ? Figures.money(line.cost().getAsDouble()) : NO_PRICE,
                    line.why()));
        }
        return rows;
    }

    /** Returns what the sum is called: where prices are missing it is not all. */
    static String totalHeading(ShoppingList list) {
        List<String> missing = list.withoutPrice();
        return missing.isEmpty() ? "All together" : "All together, without " + String.join(", ", missing);
    }

    private static String used(Amount amount) {
        return amount instanceof Amount.ByLength by
                ? LengthWords.metricUp(by.length())
                : Long.toString(((Amount.ByPiece) amount).pieces());
    }

    private static String buy(Line line) {
        if (line.packs().isPresent()) {
            return line.packs().get().words();
        }
        return line.buy() instanceof Amount.ByLength by
                ? LengthWords.toBuy(by.length())
                : Long.toString(((Amount.ByPiece) line.buy()).pieces());
    }

    /** Returns how each binding is cut, a sentence each. */
    static List<String> bindings(ShoppingList list) {
        return list.bindings().stream().map(ShoppingWords::binding).toList();
    }

    private static String binding(Binding binding) {
        BindingCloth cloth = binding.cloth();
        String strips = "%d %s %s wide"
                .formatted(
                        cloth.strips(), cloth.strips() == 1 ? "strip" : "strips", LengthWords.both(binding.cutWidth()));
        String joins = cloth.joins() == 0 ? "no join" : cloth.joins() == 1 ? "one join" : cloth.joins() + " joins";
        boolean square = cloth.length().equals(cloth.width());
        return binding.onBias()
                ? "%s, %s on the bias: %s of %s, %s by %s, gives %s at 45°, with %s."
                        .formatted(
                                binding.name(),
                                LengthWords.both(binding.length()),
                                square ? "a square" : "an oblong",
                                binding.fabric(),
                                LengthWords.both(up(cloth.length())),
                                LengthWords.both(up(cloth.width())),
                                strips,
                                joins)
                : "%s, %s cut straight: %s across %s, with %s."
                        .formatted(binding.name(), LengthWords.both(binding.length()), strips, binding.fabric(), joins);
    }

    /** To a whole millimetre, and not below it. */
    private static Length up(Length length) {
        return length.upTo(Length.ofMillimetres(1));
    }

    /** Returns a heading and a row for each stitch class. */
    static List<List<String>> seams(ShoppingList list) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("stitch (ISO 4915)", "seams", "thread", "needle", "looper or bobbin"));
        for (SeamThread seam : list.seams()) {
            Optional<Length> needle = seam.needle();
            rows.add(List.of(
                    Integer.toString(seam.stitch()),
                    LengthWords.metric(seam.seam()),
                    LengthWords.metric(seam.thread()),
                    needle.map(LengthWords::metric).orElse("not known"),
                    needle.map(part -> LengthWords.metric(seam.thread().minus(part)))
                            .orElse("not known")));
        }
        return rows;
    }

    /** Returns a heading and a row for each edge that was measured, in each size. */
    static List<List<String>> edges(ShoppingList list) {
        boolean stated = list.edges().stream().anyMatch(edge -> edge.stated().isPresent());
        boolean sized = list.edges().stream().anyMatch(edge -> !edge.size().isEmpty());
        List<List<String>> rows = new ArrayList<>();
        rows.add(edgeRow(List.of("edge", "size", "drawn", "stated, which counts", "along", "where"), sized, stated));
        for (MeasuredEdge edge : list.edges()) {
            rows.add(edgeRow(
                    List.of(
                            edge.edge(),
                            edge.size(),
                            LengthWords.both(edge.drawn()),
                            edge.stated()
                                    .map(length -> "%s%s: %s"
                                            .formatted(
                                                    edge.isOff() ? "look: " : "",
                                                    LengthWords.both(length),
                                                    edge.difference().orElseThrow()))
                                    .orElse("—"),
                            edge.along() == MeasuredEdge.Along.SEW_LINE ? "sew line" : "cut line",
                            edge.where()),
                    sized,
                    stated));
        }
        return rows;
    }

    private static List<String> edgeRow(List<String> cells, boolean sized, boolean stated) {
        List<String> row = new ArrayList<>(cells);
        if (!stated) {
            row.remove(3);
        }
        if (!sized) {
            row.remove(1);
        }
        return row;
    }

    static String kind(ShoppingList.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
