package lengthwise.solver.exact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;
import lengthwise.solver.exact.RectangleTask.Size;

/**
 * Short packings at once: rectangles are put, one after the other, where the skyline of those that lie is lowest. Of
 * those that fit in there, the first in a sequence that fits best is taken: one that fills the notch from wall to wall,
 * or ends level with a wall. Simulated annealing exchanges places in the sequence.
 *
 * <p>Reference: S. Leung, D. Zhang, K. Sim, <i>A two-stage intelligent search algorithm for the two-dimensional strip
 * packing problem</i>, European Journal of Operational Research 215, 2011; simplified.
 */
final class Skyline {
    /** Comparisons that take about a second. */
    private static final double STEPS_A_SECOND = 3e7;

    private static final long NO_WALL = Long.MAX_VALUE;
    private static final double HOT = 0.005;
    private static final double COLD = 0.0002;
    private static final double COOLING = 0.9;

    private final RectangleTask task;
    private final long height;
    private final int count;
    /** Of each way of each rectangle, grown by the gap. */
    private final long[][] width;

    private final long[][] tall;

    /** The skyline from y = 0 on: where each level stretch begins, and how far the packing reaches there. */
    private final long[] from;

    private final long[] reach;
    private int stretches;

    private final boolean[] laid;
    private final long[] x;
    private final long[] y;
    private final int[] way;
    private double steps;

    Skyline(RectangleTask task) {
        this.task = task;
        this.height = task.height() + task.gap();
        this.count = task.items().size();
        this.width = new long[count][];
        this.tall = new long[count][];
        for (int i = 0; i < count; i++) {
            List<Size> ways = task.items().get(i).ways();
            width[i] =
                    ways.stream().mapToLong(size -> size.width() + task.gap()).toArray();
            tall[i] =
                    ways.stream().mapToLong(size -> size.height() + task.gap()).toArray();
        }
        this.from = new long[count + 2];
        this.reach = new long[count + 2];
        this.laid = new boolean[count];
        this.x = new long[count];
        this.y = new long[count];
        this.way = new int[count];
    }

    /** Says whether all rectangles may lie anywhere. */
    static boolean canLay(RectangleTask task) {
        return task.items().stream().noneMatch(Item::atEdge);
    }

    /**
     * Returns the shortest packing found.
     *
     * @param seconds effort, about, counted in steps
     * @param lowerBound where it may stop
     */
    Packing shortest(double seconds, long lowerBound, long seed, BooleanSupplier enough) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] best = sorted(orders().get(0));
        Packing shortest = packing(lay(best));
        for (Comparator<Integer> order : orders()) {
            int[] sequence = sorted(order);
            long length = lay(sequence);
            if (length < shortest.length()) {
                shortest = packing(length);
                best = sequence;
            }
        }
        double most = seconds * STEPS_A_SECOND;
        int[] sequence = best.clone();
        double current = Double.MAX_VALUE;
        double heat = HOT;
        for (long n = 1; shortest.length() > lowerBound && steps < most && !enough.getAsBoolean(); n++) {
            int a = random.nextInt(count);
            int b = random.nextInt(count);
            swap(sequence, a, b);
            long length = lay(sequence);
            double cost = length + level();
            if (cost <= current
                    || random.nextDouble() < StrictMath.exp((current - cost) / heat / (double) shortest.length())) {
                current = cost;
            } else {
                swap(sequence, a, b);
            }
            if (length < shortest.length()) {
                shortest = packing(length);
                best = sequence.clone();
            }
            if (n % count == 0) {
                heat *= COOLING;
            }
            if (heat < COLD) {
                heat = HOT;
                sequence = best.clone();
                current = Double.MAX_VALUE;
            }
        }
        return shortest;
    }

    private int[] sorted(Comparator<Integer> order) {
        return IntStream.range(0, count).boxed().sorted(order).mapToInt(i -> i).toArray();
    }

    private List<Comparator<Integer>> orders() {
        return List.of(
                Comparator.comparingLong(i -> -width[i][0] * tall[i][0]),
                Comparator.comparingLong(i -> -width[i][0]),
                Comparator.comparingLong(i -> -tall[i][0]));
    }

    private static void swap(int[] sequence, int a, int b) {
        int item = sequence[a];
        sequence[a] = sequence[b];
        sequence[b] = item;
    }

    /** Returns how far the skyline reaches on average: an end that is ragged has room for more. */
    private double level() {
        double area = 0;
        for (int s = 0; s < stretches; s++) {
            area += (double) reach[s] * (double) (from[s + 1] - from[s]);
        }
        return area / (double) height;
    }

    /** Lays all rectangles by a sequence and returns the length they take. */
    private long lay(int[] sequence) {
        Arrays.fill(laid, false);
        stretches = 1;
        from[0] = 0;
        reach[0] = 0;
        from[1] = height;
        long length = 0;
        for (int n = 0; n < count; ) {
            int lowest = 0;
            for (int s = 1; s < stretches; s++) {
                if (reach[s] < reach[lowest]) {
                    lowest = s;
                }
            }
            if (placeIn(lowest, sequence)) {
                n++;
            } else {
                fill(lowest);
            }
        }
        for (int i = 0; i < count; i++) {
            length = Math.max(length, x[i] + width[i][way[i]] - task.gap());
        }
        return length;
    }

    private boolean placeIn(int notch, int[] sequence) {
        long room = from[notch + 1] - from[notch];
        long below = notch > 0 ? reach[notch - 1] : NO_WALL;
        long above = notch + 1 < stretches ? reach[notch + 1] : NO_WALL;
        int best = -1;
        int bestWay = 0;
        int bestFit = -1;
        for (int item : sequence) {
            if (laid[item]) {
                continue;
            }
            for (int w = 0; w < width[item].length; w++) {
                steps++;
                if (tall[item][w] > room) {
                    continue;
                }
                long end = reach[notch] + width[item][w];
                int fit = (tall[item][w] == room ? 2 : 0) + (end == below || end == above ? 1 : 0);
                if (fit > bestFit) {
                    bestFit = fit;
                    best = item;
                    bestWay = w;
                }
            }
            if (bestFit == 3) {
                break;
            }
        }
        if (best < 0) {
            return false;
        }
        long end = reach[notch] + width[best][bestWay];
        // beside a wall that it ends level with, else beside the higher one
        boolean atFarWall = end == above || (end != below && above > below);
        laid[best] = true;
        way[best] = bestWay;
        x[best] = reach[notch];
        y[best] = atFarWall ? from[notch + 1] - tall[best][bestWay] : from[notch];
        raise(notch, y[best], y[best] + tall[best][bestWay], end);
        return true;
    }

    /** Fills a notch that nothing fits in up to its lower wall. */
    private void fill(int notch) {
        long below = notch > 0 ? reach[notch - 1] : NO_WALL;
        long above = notch + 1 < stretches ? reach[notch + 1] : NO_WALL;
        raise(notch, from[notch], from[notch + 1], Math.min(below, above));
    }

    /** Raises a part of a stretch that begins or ends with it. */
    private void raise(int stretch, long low, long high, long to) {
        long start = from[stretch];
        long end = from[stretch + 1];
        long old = reach[stretch];
        if (low == start && high == end) {
            reach[stretch] = to;
        } else {
            for (int s = stretches; s > stretch; s--) {
                from[s + 1] = from[s];
                reach[s] = reach[s - 1];
            }
            stretches++;
            boolean first = low == start;
            from[stretch + 1] = first ? high : low;
            reach[stretch] = first ? to : old;
            reach[stretch + 1] = first ? old : to;
        }
        joinLevel();
    }

    private void joinLevel() {
        int kept = 0;
        for (int s = 1; s < stretches; s++) {
            if (reach[s] != reach[kept]) {
                kept++;
                from[kept] = from[s];
                reach[kept] = reach[s];
            }
        }
        stretches = kept + 1;
        from[stretches] = height;
    }

    private Packing packing(long length) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            spots.add(new Spot(way[i], x[i], y[i]));
        }
        return new Packing(spots, length);
    }
}
