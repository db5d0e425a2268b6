package lengthwise.plan.lays;

import java.util.List;
import lengthwise.model.Length;

/**
 * How long a ply is for a size ratio: what each lay has once for every ply (the end allowances, and what the marker loses at
 * its ragged end), and what each garment adds.
 *
 * @param garments by size
 */
public record PlyLength(Length once, List<Length> garments) {
    public PlyLength {
        garments = List.copyOf(garments);
    }

    /** Returns the length of a ply. */
    public Length of(List<Integer> ratio) {
        Length length = once;
        for (int size = 0; size < ratio.size(); size++) {
            length = length.plus(garments.get(size).times(ratio.get(size)));
        }
        return length;
    }
}
