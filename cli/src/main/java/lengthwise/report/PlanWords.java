package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.plan.lays.CutOrder;
import lengthwise.plan.lays.Lay;
import lengthwise.plan.lays.OrderChanges.Change;

/** Sentences and cells about a plan, the same in every form of it. */
final class PlanWords {
    private PlanWords() {}

    /** Returns a length of cloth, for example "3.645 m (3.99 yd)". */
    static String cloth(Length length) {
        return LengthWords.metric(length) + " (" + Figures.fixed(length.micrometres() / 914_400.0, 2) + " yd)";
    }

    /** Returns for example "S, M × 2". */
    static String ratio(CutOrder order, List<Integer> ratio) {
        return IntStream.range(0, ratio.size())
                .filter(size -> ratio.get(size) > 0)
                .mapToObj(size -> order.sizes().get(size) + (ratio.get(size) > 1 ? " × " + ratio.get(size) : ""))
                .reduce((a, b) -> a + ", " + b)
                .orElse("");
    }

    /** Returns for example "3: red 2, blue 1", or only the number where there are no colours. */
    static String plies(CutOrder order, Lay lay) {
        if (!hasColours(order)) {
            return Integer.toString(lay.allPlies());
        }
        List<String> colours = new ArrayList<>();
        for (int colour = 0; colour < order.colours().size(); colour++) {
            if (lay.plies().get(colour) > 0) {
                colours.add(order.colours().get(colour) + " " + lay.plies().get(colour));
            }
        }
        return lay.allPlies() + ": " + String.join(", ", colours);
    }

    static boolean hasColours(CutOrder order) {
        return !order.colours().equals(List.of(""));
    }

    /** Returns the name of a colour of a fabric: the fabric's own where there are no colours. */
    static String colour(PlanRun.Cloth cloth, int colour) {
        return hasColours(cloth.order())
                ? cloth.order().colours().get(colour)
                : cloth.fabric().name();
    }

    /** Returns how near the plan is to the best. */
    static List<String> proof(PlanRun.Cloth cloth) {
        List<String> sentences = new ArrayList<>();
        Length fabric = cloth.plan().fabric();
        double gap =
                fabric.micrometres() / (double) Math.max(1, cloth.plan().bound().micrometres()) - 1;
        sentences.add(
                "No plan of this order takes less than %s: garments by their area, plies by their number. This one takes %s more."
                        .formatted(cloth(cloth.plan().bound()), Figures.percent(Math.max(0, gap))));
        double byGuess =
                fabric.micrometres() / (double) Math.max(1, cloth.byGuess().micrometres()) - 1;
        sentences.add(
                byGuess <= 0
                        ? "If markers of other size ratios use the cloth as well as those laid, no plan takes less fabric."
                        : "If markers of other size ratios use the cloth as well as those laid, a plan can save at most %s."
                                .formatted(Figures.percent(byGuess)));
        if (cloth.plan().fewestLays()) {
            sentences.add("By these lengths fewer lays would not do as well; that is proven.");
        }
        if (!cloth.settled()) {
            sentences.add(
                    "The last round of planning asked for markers that were new to it: a longer run may still find a better plan.");
        }
        return sentences;
    }

    /** Returns what a change of the order would do, a sentence. */
    static String change(PlanRun.Cloth cloth, Change change) {
        CutOrder order = cloth.order();
        String garment = "%d %s of %s%s"
                .formatted(
                        Math.abs(change.by()),
                        change.by() > 0 ? "more" : "fewer",
                        order.sizes().get(change.size()),
                        hasColours(order) ? " in " + order.colours().get(change.colour()) : "");
        String fabric = change.fabric() == 0
                ? "as much cloth"
                : "%s %s"
                        .formatted(
                                cloth(new Length(Math.abs(change.fabric()))),
                                change.fabric() > 0 ? "more cloth" : "less cloth");
        return "%s: %d %s, %s, by lengths guessed from the markers laid."
                .formatted(garment, change.lays(), change.lays() == 1 ? "lay" : "lays", fabric);
    }

    /** Returns how many garments are cut and ordered, size by size in each colour. */
    static List<String> counts(PlanRun.Cloth cloth) {
        CutOrder order = cloth.order();
        List<String> lines = new ArrayList<>();
        for (int colour = 0; colour < order.colours().size(); colour++) {
            List<String> sizes = new ArrayList<>();
            for (int size = 0; size < order.sizes().size(); size++) {
                int ordered = order.garments(colour, size);
                int cut = cloth.plan().cut(colour, size);
                if (ordered > 0 || cut > 0) {
                    sizes.add("%s %d%s"
                            .formatted(
                                    order.sizes().get(size), cut, cut == ordered ? "" : " of " + ordered + " ordered"));
                }
            }
            lines.add((hasColours(order) ? order.colours().get(colour) + ": " : "") + String.join(", ", sizes));
        }
        return lines;
    }

    /** Returns which plies are cut from which bolt, a sentence each. */
    static List<String> bolts(PlanRun.Cloth cloth, PlanRun.Bolts bolts) {
        String colour = hasColours(cloth.order()) ? cloth.order().colours().get(bolts.colour()) + ", " : "";
        if (bolts.plies().isEmpty()) {
            return List.of(
                    bolts.shortfall() > 0
                            ? "%sbolts: they hold %s too little; buy that much more, or make fewer."
                                    .formatted(colour, cloth(new Length(bolts.shortfall())))
                            : "%sbolts: together they are long enough, but no way was found to cut every ply whole from one of them; a ply must not be joined. Another table-length or max-garments gives shorter plies."
                                    .formatted(colour));
        }
        List<String> sentences = new ArrayList<>();
        for (int bolt = 0; bolt < bolts.lengths().size(); bolt++) {
            List<Integer> plies = bolts.plies().get().plies().get(bolt);
            List<String> cut = new ArrayList<>();
            for (int lay = 0; lay < plies.size(); lay++) {
                if (plies.get(lay) > 0) {
                    cut.add("%d %s of lay %d"
                            .formatted(plies.get(lay), plies.get(lay) == 1 ? "ply" : "plies", lay + 1));
                }
            }
            Length unused = bolts.unused().get(bolt);
            sentences.add("%s%s of %s: %s; %s%s left%s."
                    .formatted(
                            colour,
                            bolts.names().get(bolt).orElse("bolt " + (bolt + 1)),
                            cloth(bolts.lengths().get(bolt)),
                            cut.isEmpty() ? "not begun" : String.join(", ", cut),
                            bolts.lost().micrometres() > 0 && !cut.isEmpty()
                                    ? "%s lost at its ends, ".formatted(LengthWords.both(bolts.lost()))
                                    : "",
                            cloth(bolts.plies().get().left().get(bolt)),
                            unused.micrometres() > 0 && !cut.isEmpty()
                                    ? ", and %s of its width unused".formatted(LengthWords.both(unused))
                                    : ""));
        }
        return sentences;
    }
}
