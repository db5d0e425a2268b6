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
 * @param squaring what is cut off to make both ends of the bought length square
 * @param flaws what is bought more for flaws that are not known yet
 * @param rounding what the shop's step adds
 * @param cost price of {@code buy}; empty where the fabric has no price
 */
public record Purchase(
        Length marker,
        Length ends,
        Length shrinkage,
        Length squaring,
        Length flaws,
        Length rounding,
        Length buy,
        OptionalDouble cost) {
    /**
     * Returns (marker + both ends) / (1 − s), as often as the cloth is laid, and the two allowances on it, rounded up to the
     * shop's step from the exact length. The division, not a multiplication by 1 + s, is what brings the length back after
     * washing. The allowance for flaws is a share of all that comes before it.
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
        Length washed = ceil(laid.micrometres() / fabric.lengthKept());
        Length squaring = fabric.buying().squaring().times(2);
        Length square = washed.plus(squaring);
        Length needed = ceil(square.micrometres() * (1 + fabric.buying().flaws()));
        Length buy = needed.upTo(Length.max(fabric.soldBy(), new Length(1)));
        OptionalDouble cost = fabric.price().isPresent()
                ? OptionalDouble.of(fabric.price().get().amount()
                        * buy.micrometres()
                        / fabric.price().get().per().micrometres())
                : OptionalDouble.empty();
        return new Purchase(
                markers, ends, washed.minus(laid), squaring, needed.minus(square), buy.minus(needed), buy, cost);
    }

    /** Returns what is needed, exactly: what is bought without the rounding. */
    public Length needed() {
        return buy.minus(rounding);
    }

    private static Length ceil(double micrometres) {
        return new Length((long) StrictMath.ceil(micrometres - 1e-6));
    }
}
