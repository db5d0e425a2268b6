package lengthwise.solver;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lengthwise.geometry.Box;
import lengthwise.model.Axis;
import lengthwise.rules.Bond;

/**
 * What bonds ask of demands that have to lie {@link Bond.Within within} some stretch of the strip: for any two of them, how
 * far apart their far sides may be along x and along y. Two that are farther apart hinder each other by what is too much,
 * as two that overlap do by their depth.
 */
final class Nearness {
    private static final int[] NONE = {};
    private static final long ANY = Long.MAX_VALUE / 4;

    private final List<Bond.Within> bonds;
    private final int[][] fellows;
    private final long[][] alongX;
    private final long[][] alongY;

    Nearness(int demands, List<Bond.Within> bonds) {
        this.bonds = bonds;
        this.fellows = new int[demands][];
        this.alongX = new long[bonds.isEmpty() ? 0 : demands][demands];
        this.alongY = new long[bonds.isEmpty() ? 0 : demands][demands];
        for (long[][] most : List.of(alongX, alongY)) {
            Arrays.stream(most).forEach(row -> Arrays.fill(row, ANY));
        }
        for (Bond.Within bond : bonds) {
            long[][] most = bond.axis() == Axis.LENGTHWISE ? alongX : alongY;
            for (int i : bond.members()) {
                for (int j : bond.members()) {
                    most[i][j] = i == j ? ANY : Math.min(most[i][j], bond.extent());
                }
            }
        }
        Arrays.setAll(
                fellows,
                i -> bonds.isEmpty()
                        ? NONE
                        : IntStream.range(0, demands)
                                .filter(j -> alongX[i][j] < ANY || alongY[i][j] < ANY)
                                .toArray());
    }

    /** Says whether nothing is asked of any two. */
    boolean isEmpty() {
        return bonds.isEmpty();
    }

    List<Bond.Within> bonds() {
        return bonds;
    }

    /** Returns the demands that one has to lie near to. */
    int[] fellowsOf(int demand) {
        return fellows[demand];
    }

    /** Returns a demand and all that lie near to it, or near to one that does, and so on; in their order. */
    List<Integer> groupOf(int demand) {
        TreeSet<Integer> group = new TreeSet<>(List.of(demand));
        Deque<Integer> open = new ArrayDeque<>(group);
        while (!open.isEmpty()) {
            for (int fellow : fellows[open.remove()]) {
                if (group.add(fellow)) {
                    open.add(fellow);
                }
            }
        }
        return List.copyOf(group);
    }

    /** Says whether it matters how far two are apart along x. */
    boolean asksAlongX(int one, int other) {
        return alongX[one][other] < ANY;
    }

    /** Says whether it matters how far two are apart along y. */
    boolean asksAlongY(int one, int other) {
        return alongY[one][other] < ANY;
    }

    /** Returns how far it may be along x from where the first of two begins to where the last ends; very far for any way. */
    long alongX(int one, int other) {
        return alongX[one][other];
    }

    /** Returns the same along y. */
    long alongY(int one, int other) {
        return alongY[one][other];
    }

    /** Returns by how much two of an arrangement are too far apart, along x and along y together, in micrometres. */
    double excess(Arrangement state, int one, int other) {
        if (one >= state.pieces || other >= state.pieces) {
            return 0;
        }
        Box box = state.shape[one].box();
        Box next = state.shape[other].box();
        double spanX = Math.max(state.x[one] + box.maxX(), state.x[other] + next.maxX())
                - Math.min(state.x[one] + box.minX(), state.x[other] + next.minX());
        double spanY = Math.max(state.y[one] + box.maxY(), state.y[other] + next.maxY())
                - Math.min(state.y[one] + box.minY(), state.y[other] + next.minY());
        return Math.max(0, spanX - alongX[one][other]) + Math.max(0, spanY - alongY[one][other]);
    }

    /** Says whether a layout keeps every bond, to the micrometre. */
    boolean isKept(Variant[] chosen, long[] x, long[] y) {
        return bonds.stream().allMatch(bond -> {
            boolean along = bond.axis() == Axis.LENGTHWISE;
            long from = Long.MAX_VALUE;
            long to = Long.MIN_VALUE;
            for (int member : bond.members()) {
                Box box = chosen[member].shape().box();
                from = Math.min(from, along ? x[member] + box.minX() : y[member] + box.minY());
                to = Math.max(to, along ? x[member] + box.maxX() : y[member] + box.maxY());
            }
            return to - from <= bond.extent();
        });
    }
}
