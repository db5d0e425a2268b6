package lengthwise.plan.lays;

import java.util.ArrayList;
import java.util.List;

/**
 * How many garments of each size are wanted in each colour.
 *
 * @param garments by colour, then by size; every colour has all sizes, some of them maybe 0 times
 */
public record CutOrder(List<String> sizes, List<String> colours, List<List<Integer>> garments) {
    public CutOrder {
        sizes = List.copyOf(sizes);
        colours = List.copyOf(colours);
        garments = garments.stream().map(List::copyOf).toList();
        int perColour = sizes.size();
        if (garments.size() != colours.size()
                || garments.stream().anyMatch(colour -> colour.size() != perColour)
                || garments.stream().flatMap(List::stream).anyMatch(count -> count < 0)) {
            throw new IllegalArgumentException(
                    "An order needs a count from 0 for every size of every colour: " + garments);
        }
    }

    /** An order in one colour. */
    public static CutOrder of(List<String> sizes, List<Integer> garments) {
        return new CutOrder(sizes, List.of(""), List.of(garments));
    }

    public int garments(int colour, int size) {
        return garments.get(colour).get(size);
    }

    /** Returns the same order with another count of one size in one colour. */
    CutOrder with(int colour, int size, int count) {
        List<List<Integer>> changed = new ArrayList<>();
        garments.forEach(of -> changed.add(new ArrayList<>(of)));
        changed.get(colour).set(size, count);
        return new CutOrder(sizes, colours, changed);
    }

    public int allGarments() {
        return garments.stream()
                .flatMap(List::stream)
                .mapToInt(Integer::intValue)
                .sum();
    }
}
