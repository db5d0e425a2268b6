package lengthwise.plan.lays;

import java.util.List;
import java.util.stream.IntStream;
import lengthwise.model.Length;

/** What no plan for an order can be below. */
final class PlanBounds {
    private final CutOrder order;
    private final LayLimits limits;
    private final PlyLength lengths;

    PlanBounds(CutOrder order, LayLimits limits, PlyLength lengths) {
        this.order = order;
        this.limits = limits;
        this.lengths = lengths;
    }

    /** Returns the garments that a marker may hold at most, of any sizes. */
    int mostGarments() {
        long shortest =
                lengths.garments().stream().mapToLong(Length::micrometres).min().orElse(0);
        return limits.table()
                .map(table -> table.minus(lengths.once()).micrometres())
                .map(room -> shortest == 0 ? limits.garments() : (int) Math.min(limits.garments(), room / shortest))
                .orElse(limits.garments());
    }

    /** Returns the garments of one size that a marker may hold at most. */
    int mostGarments(int size) {
        long each = lengths.garments().get(size).micrometres();
        return limits.table()
                .map(table -> table.minus(lengths.once()).micrometres())
                .map(room -> each == 0 ? limits.garments() : (int) Math.min(limits.garments(), room / each))
                .orElse(limits.garments());
    }

    /**
     * Returns the least plies of a colour: garments by what a marker holds, and each size by what a marker holds of it; where
     * the table is the limit, also length by length.
     */
    int plies(int colour) {
        List<Integer> fewest = sizes().map(size -> limits.fewest(order.garments(colour, size)))
                .boxed()
                .toList();
        int all = ceiling(fewest.stream().mapToInt(Integer::intValue).sum(), mostGarments());
        int single = sizes().map(size -> ceiling(fewest.get(size), mostGarments(size)))
                .max()
                .orElse(0);
        long net = sizes().mapToLong(size -> lengths.garments().get(size).micrometres() * fewest.get(size))
                .sum();
        long byTable = limits.table()
                .map(table -> table.minus(lengths.once()).micrometres())
                .map(room -> (net + room - 1) / Math.max(1, room))
                .orElse(0L);
        return (int) Math.max(Math.max(all, single), byTable);
    }

    /** Returns the least plies of all colours. */
    int plies() {
        return IntStream.range(0, order.colours().size()).map(this::plies).sum();
    }

    /** Returns the fewest lays: by the height of a lay. */
    int lays() {
        return Math.max(1, ceiling(plies(), limits.plies()));
    }

    /** Returns the least fabric: what the garments take, and what every ply has once. */
    Length fabric() {
        Length net = Length.ZERO;
        for (int colour = 0; colour < order.colours().size(); colour++) {
            for (int size = 0; size < order.sizes().size(); size++) {
                net = net.plus(lengths.garments().get(size).times(limits.fewest(order.garments(colour, size))));
            }
        }
        return net.plus(lengths.once().times(plies()));
    }

    private IntStream sizes() {
        return IntStream.range(0, order.sizes().size());
    }

    private static int ceiling(int count, int each) {
        return each <= 0 ? Integer.MAX_VALUE / 4 : (count + each - 1) / each;
    }
}
