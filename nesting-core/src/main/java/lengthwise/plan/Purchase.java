package lengthwise.plan;

import java.util.OptionalDouble;
import lengthwise.model.Fabric;
import lengthwise.model.Length;

/**
 * How much of a fabric to buy for one marker or for several, and why.
 *
 * @param marker the marker's length as laid, once for each length of cloth that lies under it
 * @param ends the end allowances of all plies
 * @param shrinkage what washing takes, where the cloth is washed before cutting
 * @param rounding what the shop's step adds
 * @param cost price of {@code buy}; empty where the fabric has no price
 */
public record Purchase(Length marker, Length ends, Length shrinkage, Length rounding, Length buy, OptionalDouble cost) {
    /**
     * Returns (marker + both ends) / (1 − s), as often as the cloth is laid, rounded up to the shop's step from the exact length. The division, not a
     * multiplication by 1 + s, is what brings the length back after washing.
     */
    public static Purchase of(Length marker, Fabric fabric) {
        int lengths = fabric.spread().lengths();
        Length onTable = fabric.spread().onTable(marker);
        return of(marker.times(lengths), onTable.minus(marker).times(lengths), fabric);
    }

    /**
     * Returns likewise what to buy for several plies together.
     *
     * @param markers length of the markers of all plies
     * @param ends the end allowances of all plies
     */
    public static Purchase of(Length markers, Length ends, Fabric fabric) {
        Length laid = markers.plus(ends);
        Length needed = new Length((long) StrictMath.ceil(laid.micrometres() / fabric.lengthKept() - 1e-6));
        long step = Math.max(1, fabric.soldBy().micrometres());
        Length buy = new Length((needed.micrometres() + step - 1) / step * step);
        OptionalDouble cost = fabric.price().isPresent()
                ? OptionalDouble.of(fabric.price().get().amount()
                        * buy.micrometres()
                        / fabric.price().get().per().micrometres())
                : OptionalDouble.empty();
        return new Purchase(markers, ends, needed.minus(laid), buy.minus(needed), buy, cost);
    }
}
