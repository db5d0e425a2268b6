package lengthwise;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.plan.Purchase;

/**
 * How an order was shared out over the pieces of cloth for one purpose.
 *
 * @param cloths all that there are: those on hand from the smallest on, then what is bought; also those that nothing is cut
 *     from
 * @param keepsGarments whether all that a garment needs comes from one piece of cloth
 * @param alone what would be bought if everything were cut from that, by a short search; empty where nothing is to be
 *     bought at all, or no such marker was found
 */
public record SharedRun(String purpose, List<Fabric> cloths, boolean keepsGarments, Optional<Purchase> alone) {
    public SharedRun {
        cloths = List.copyOf(cloths);
    }

    /** Returns the cloth that is bought; empty where all is on hand. */
    public Optional<Fabric> bought() {
        return cloths.stream().filter(fabric -> fabric.onHand().isEmpty()).findFirst();
    }

    /** Returns what a run cuts from one of the pieces of cloth; empty where that is nothing. */
    public static Optional<FabricRun> of(Fabric cloth, Run run) {
        return run.fabrics().stream()
                .filter(one -> one.marker().order().fabric().name().equals(cloth.name()))
                .findFirst();
    }

    /** Returns what is bought of cloth for the markers of a run. */
    public Optional<Purchase> purchase(Run run) {
        return bought().flatMap(cloth -> of(cloth, run)).map(FabricRun::purchase);
    }

    /** Returns how much less is bought for what is cut from the cloth on hand; never below nothing. */
    public Optional<Length> saved(Run run) {
        Length bought = purchase(run).map(Purchase::buy).orElse(Length.ZERO);
        return alone.map(all -> Length.max(Length.ZERO, all.buy().minus(bought)));
    }
}
