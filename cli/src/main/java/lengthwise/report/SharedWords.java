package lengthwise.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.FabricRun;
import lengthwise.Run;
import lengthwise.SharedRun;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.model.OnHand;
import lengthwise.plan.Purchase;
import lengthwise.plan.Waste;

/** Says how an order was shared out over several pieces of cloth. */
final class SharedWords {
    private SharedWords() {}

    /** Returns sentences for the maker. */
    static List<String> of(SharedRun shared, Run run) {
        List<String> sentences = new ArrayList<>();
        for (Fabric cloth : shared.cloths()) {
            if (SharedRun.of(cloth, run).isEmpty()) {
                sentences.add(
                        cloth.onHand().isPresent()
                                ? "Nothing is cut from %s: it stays as it is.".formatted(cloth.name())
                                : "Nothing has to be bought of %s.".formatted(cloth.name()));
            }
        }
        if (shared.keepsGarments()) {
            sentences.add("All that a garment needs for %s comes from one piece of cloth.".formatted(shared.purpose()));
        }
        shared.alone().ifPresent(alone -> sentences.add(saved(shared, run, alone)));
        return sentences;
    }

    private static String saved(SharedRun shared, Run run, Purchase alone) {
        Length saved = shared.saved(run).orElseThrow();
        String money =
                savedCost(shared, run).map(cost -> ", " + Figures.money(cost)).orElse("");
        return "With all of it cut from %s a search of a fifth of the time found a marker for which %s are to be bought: the cloth on hand saves %s."
                .formatted(
                        shared.bought().orElseThrow().name(),
                        LengthWords.toBuy(alone.buy()),
                        saved.equals(Length.ZERO)
                                ? "nothing that the shop's step shows"
                                : LengthWords.both(saved) + money);
    }

    /** Returns what that comes to; empty where the cloth has no price. */
    static Optional<Double> savedCost(SharedRun shared, Run run) {
        OptionalDouble alone = shared.alone().map(Purchase::cost).orElse(OptionalDouble.empty());
        double paid = shared.purchase(run)
                .map(Purchase::cost)
                .filter(OptionalDouble::isPresent)
                .map(OptionalDouble::getAsDouble)
                .orElse(0.0);
        return alone.isPresent() ? Optional.of(Math.max(0, alone.getAsDouble() - paid)) : Optional.empty();
    }

    /** Returns which share of a piece of cloth becomes pieces, from 0 to 1: of all that there is, or that is bought. */
    static double share(FabricRun run) {
        Fabric fabric = run.marker().order().fabric();
        Waste waste = Waste.of(run.marker(), run.purchase());
        return waste.pieces()
                / fabric.onHand().map(there -> squareMillimetres(fabric, there)).orElse(waste.bought());
    }

    private static double squareMillimetres(Fabric fabric, OnHand there) {
        return there.outline()
                .map(outline -> outline.squareMillimetres())
                .orElse(there.length().millimetres()
                        * fabric.lengthKept()
                        * fabric.width().millimetres()
                        * fabric.widthKept());
    }
}
