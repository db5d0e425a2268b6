package lengthwise.plan.lays;

import java.util.List;
import lengthwise.model.Length;

/**
 * A plan for an order.
 *
 * @param lays the highest first
 * @param fabric length of all plies
 * @param bound no plan takes less fabric (where the aim is fewest lays: no plan of so few lays)
 * @param fewestLays whether it is proven that fewer lays would not do as well: not at all where the aim is fewest lays, not
 *     with as little fabric otherwise
 */
public record CutPlan(List<Lay> lays, Length fabric, Length bound, boolean fewestLays) {
    public CutPlan {
        lays = List.copyOf(lays);
    }

    /** Returns the plies of all lays. */
    public int plies() {
        return lays.stream().mapToInt(Lay::allPlies).sum();
    }

    /** Returns how many garments of a size and colour are cut. */
    public int cut(int colour, int size) {
        return lays.stream().mapToInt(lay -> lay.cut(colour, size)).sum();
    }

    /** Returns how much less fabric another plan might take at the very most, as a share of the bound. */
    public double gap() {
        return bound.micrometres() == 0
                ? 0
                : (fabric.micrometres() - bound.micrometres()) / (double) bound.micrometres();
    }
}
