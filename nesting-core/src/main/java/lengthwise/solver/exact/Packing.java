package lengthwise.solver.exact;

import java.util.List;

/** Where the rectangles of a task lie, in its order, and the length they take. */
public record Packing(List<Spot> spots, long length) {
    public Packing {
        spots = List.copyOf(spots);
    }

    /** The corner of a rectangle with the least x and y, and which of its ways it lies in. */
    public record Spot(int way, long x, long y) {}
}
