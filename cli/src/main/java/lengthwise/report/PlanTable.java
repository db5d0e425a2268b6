package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import lengthwise.model.LengthWords;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.Lay;

/** A plan for the terminal. */
public final class PlanTable {
    private PlanTable() {}

    /** Returns for each fabric a heading, a line for each lay and what follows from them, each ended by a line feed. */
    public static String of(PlanRun run) {
        StringBuilder text = new StringBuilder();
        for (PlanRun.Cloth cloth : run.cloths()) {
            if (!text.isEmpty()) {
                text.append('\n');
            }
            text.append("%s: %d %s, %s of cloth on the table.\n"
                    .formatted(
                            cloth.fabric().name(),
                            cloth.plan().lays().size(),
                            cloth.plan().lays().size() == 1 ? "lay" : "lays",
                            PlanWords.cloth(cloth.plan().fabric())));
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of("lay", "plies", "garments", "marker", "ply with ends"));
            for (int i = 0; i < cloth.lays().size(); i++) {
                Lay lay = cloth.plan().lays().get(i);
                rows.add(List.of(
                        Integer.toString(i + 1),
                        PlanWords.plies(cloth.order(), lay),
                        PlanWords.ratio(cloth.order(), lay.ratio()),
                        LengthWords.both(cloth.lays().get(i).marker().length()),
                        LengthWords.both(cloth.ply(i))));
            }
            text.append(Columns.of(rows));
            PlanWords.counts(cloth)
                    .forEach(line -> text.append("cut   ").append(line).append('\n'));
            for (int colour = 0; colour < cloth.purchases().size(); colour++) {
                Purchase purchase = cloth.purchases().get(colour);
                text.append("buy   ")
                        .append(PlanWords.hasColours(cloth.order()) ? PlanWords.colour(cloth, colour) + ": " : "")
                        .append(LengthWords.toBuy(purchase.buy()))
                        .append(
                                purchase.cost().isPresent()
                                        ? ", " + Figures.money(purchase.cost().getAsDouble())
                                        : "")
                        .append('\n');
            }
            cloth.bolts().stream()
                    .flatMap(bolts -> PlanWords.bolts(cloth, bolts).stream())
                    .forEach(sentence -> text.append("      ").append(sentence).append('\n'));
            PlanWords.proof(cloth)
                    .forEach(sentence -> text.append("      ").append(sentence).append('\n'));
            cloth.changes()
                    .forEach(change -> text.append("or    ")
                            .append(PlanWords.change(cloth, change))
                            .append('\n'));
        }
        return text.toString();
    }
}
