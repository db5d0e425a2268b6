package lengthwise.plan.lays;

import java.util.List;

/**
 * One lay: plies on each other, cut to one marker.
 *
 * @param ratio garments in the marker, by size
 * @param plies by colour
 */
public record Lay(List<Integer> ratio, List<Integer> plies) {
    public Lay {
        ratio = List.copyOf(ratio);
        plies = List.copyOf(plies);
    }

    /** Returns the plies of all colours. */
    public int allPlies() {
        return plies.stream().mapToInt(Integer::intValue).sum();
    }

    /** Returns the garments in the marker. */
    public int allGarments() {
        return ratio.stream().mapToInt(Integer::intValue).sum();
    }

    /** Returns how many garments of a size and colour come of it. */
    public int cut(int colour, int size) {
        return ratio.get(size) * plies.get(colour);
    }
}
