package lengthwise.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Which garments can be made where cloth is short, by the maker's priority: as many as fit from the first on, then of
 * the rest whatever still fits, one after another. So no garment is passed over for one that the maker wants less, unless
 * it does not fit and the other does.
 *
 * @param made indices of the garments, in the order of their priority
 * @param enoughFor for each cloth, for how many garments it would do, from the first on, if the others were endless
 */
public record WhatFits(List<Integer> made, List<Integer> enoughFor) {
    /** What a look gets of the time of a whole search; most tell at once. */
    private static final double BRIEFLY = 0.05;

    /** What the last looks get, one or two for each cloth, which decide. */
    private static final double PATIENTLY = 0.2;

    public WhatFits {
        made = List.copyOf(made);
        enoughFor = List.copyOf(enoughFor);
    }

    /** A cloth of which there is only so much. */
    @FunctionalInterface
    public interface Cloth {
        /**
         * Says whether all that some garments need of this cloth finds room on it. A search may miss that it does.
         *
         * @param share of the time of a whole search
         */
        boolean holds(List<Integer> garments, double share);
    }

    /**
     * Chooses.
     *
     * @param kinds what each garment is, from the first wanted to the last; of equal ones, where one does not fit the next
     *     does not either
     */
    public static WhatFits of(List<Integer> kinds, List<? extends Cloth> cloths) {
        List<Integer> enoughFor =
                cloths.stream().map(cloth -> prefix(kinds.size(), cloth)).toList();
        int first = enoughFor.stream().mapToInt(count -> count).min().orElse(kinds.size());
        List<Integer> made = new ArrayList<>(upTo(first));
        Set<Integer> tooLarge = new HashSet<>();
        for (int garment = first; garment < kinds.size(); garment++) {
            if (tooLarge.contains(kinds.get(garment))) {
                continue;
            }
            made.add(garment);
            if (!cloths.stream().allMatch(cloth -> cloth.holds(List.copyOf(made), BRIEFLY))) {
                made.remove(made.size() - 1);
                tooLarge.add(kinds.get(garment));
            }
        }
        return new WhatFits(made, enoughFor);
    }

    /** Halves the span between a number that fits and one that does not, then tries a few more patiently. */
    private static int prefix(int all, Cloth cloth) {
        int fits = 0;
        int tooMany = all + 1;
        int next = all;
        while (tooMany - fits > 1) {
            if (cloth.holds(upTo(next), BRIEFLY)) {
                fits = next;
            } else {
                tooMany = next;
            }
            next = (fits + tooMany) / 2;
        }
        while (fits < all && cloth.holds(upTo(fits + 1), PATIENTLY)) {
            fits++;
        }
        return fits;
    }

    private static List<Integer> upTo(int count) {
        return IntStream.range(0, count).boxed().toList();
    }
}
