package lengthwise;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.model.Length;
import lengthwise.workshop.MadeToMeasure;
import lengthwise.workshop.ShoppingList;
import lengthwise.workshop.ShoppingList.Amount;
import lengthwise.workshop.ShoppingList.Kind;
import lengthwise.workshop.ShoppingList.Line;
import lengthwise.workshop.StashDraw;

/**
 * A whole run: one job, a marker for each of its fabrics.
 *
 * @param version of Lengthwise
 * @param reproducible false when a clock or an interrupt ended the search: the same seed may then give another marker
 * @param customers what is made for whom, in the order of the order
 * @param shopping all that has to be bought, where the job says what its garments are sewn with
 * @param drawn what is cut from the stash
 * @param shared for each purpose that several pieces of cloth are for, how its order was shared out
 */
public record Run(
        String job,
        String version,
        long seed,
        int workers,
        boolean reproducible,
        List<FabricRun> fabrics,
        List<String> warnings,
        List<MadeToMeasure> customers,
        Optional<ShoppingList> shopping,
        List<StashDraw> drawn,
        List<SharedRun> shared) {
    /** A run for nobody by name, on one piece of cloth for each purpose. */
    public Run(
            String job,
            String version,
            long seed,
            int workers,
            boolean reproducible,
            List<FabricRun> fabrics,
            List<String> warnings) {
        this(
                job,
                version,
                seed,
                workers,
                reproducible,
                fabrics,
                warnings,
                List.of(),
                Optional.empty(),
                List.of(),
                List.of());
    }

    /** Returns the same run, cut from the stash. */
    public Run drawing(List<StashDraw> cloths) {
        return new Run(
                job,
                version,
                seed,
                workers,
                reproducible,
                fabrics,
                warnings,
                customers,
                shopping,
                List.copyOf(cloths),
                shared);
    }

    /** Returns what is cut from the stash for a fabric. */
    public Optional<StashDraw> drawn(FabricRun fabric) {
        String name = fabric.marker().order().fabric().name();
        return drawn.stream().filter(cloth -> cloth.fabric().equals(name)).findFirst();
    }

    /** Returns how much to buy of a fabric: for its marker, and for the bindings that the shopping list has. */
    public Length toBuy(FabricRun fabric) {
        return listed(fabric)
                .map(line -> line.buy() instanceof Amount.ByLength by ? by.length() : Length.ZERO)
                .orElse(fabric.purchase().buy());
    }

    /** Returns what that costs; empty where the fabric has no price. Cloth on hand costs nothing. */
    public OptionalDouble cost(FabricRun fabric) {
        return fabric.marker().order().fabric().onHand().isPresent()
                ? OptionalDouble.of(0)
                : listed(fabric).map(Line::cost).orElse(fabric.purchase().cost());
    }

    private Optional<Line> listed(FabricRun fabric) {
        String name = fabric.marker().order().fabric().name();
        return shopping.flatMap(list -> list.lines().stream()
                .filter(line -> line.kind() == Kind.FABRIC && line.name().equals(name))
                .findFirst());
    }
}
