package lengthwise.plan.lays;

import java.util.Optional;
import java.util.OptionalInt;
import lengthwise.model.Length;

/**
 * What a lay may be, and how far what is cut may be off the order.
 *
 * @param plies at most, of all colours together
 * @param leastPlies in a lay that is laid at all
 * @param garments in the marker at most
 * @param table the longest ply, ends included; empty where the table is long enough for any
 * @param over what may be cut too many of each size in each colour, as a share of what is ordered: 0.05 for 5 %
 * @param under what may be cut too few, likewise
 * @param lays at most; empty where there may be as many as it takes
 */
public record LayLimits(
        int plies, int leastPlies, int garments, Optional<Length> table, double over, double under, OptionalInt lays) {
    public LayLimits {
        if (plies < 1 || garments < 1 || leastPlies < 1 || leastPlies > plies) {
            throw new IllegalArgumentException("A lay has at least one ply and one garment: " + leastPlies + " to "
                    + plies + " plies, " + garments + " garments.");
        }
        if (!(over >= 0) || !(under >= 0) || under > 1) {
            throw new IllegalArgumentException("Over and under are shares of the order: " + over + ", " + under + ".");
        }
    }

    /** Limits of plies and garments; exactly what is ordered is cut. */
    public LayLimits(int plies, int garments) {
        this(plies, 1, garments, Optional.empty(), 0, 0, OptionalInt.empty());
    }

    /** Returns the fewest garments that will do for an ordered count. */
    int fewest(int ordered) {
        return (int) Math.ceil(ordered * (1 - under) - 1e-9);
    }

    /** Returns the most garments that may be cut for an ordered count. */
    int most(int ordered) {
        return (int) Math.min(Integer.MAX_VALUE / 2.0, Math.floor(ordered * (1 + over) + 1e-9));
    }
}
