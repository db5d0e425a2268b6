package lengthwise.solver;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import lengthwise.geometry.Ring;

/**
 * How much of the strip the slices of an outline take, slice by slice: a line across the strip cuts the pieces it meets
 * in chords, and chords with half of each piece's gap on either side add up to no more than the height and one largest
 * gap. If f is dual feasible, that is, if Σh ≤ 1 implies Σf(h) ≤ 1, then so do their images, and the strip is at least
 * as long as the sum of ∫ f over all pieces. A function that raises what is a little above a half, a third, … says that
 * such pieces cannot stand above one another so often as their area would let them.
 *
 * <p>Chords are taken at their least over short intervals, so the integral of a rising function is never too large.
 *
 * <p>Reference: S. Fekete, J. Schepers, <i>New classes of fast lower bounds for bin packing problems</i>, Mathematical
 * Programming 91, 2001: functions u(k) and U(ε).
 */
final class Slices {
    /** Against rounding: chords are called this much smaller, as a share of the height. */
    private static final double SMALLER = 1e-9;

    private static final int MOST_ROWS = 8;
    private static final int CUTS = 8;
    private static final List<DoubleUnaryOperator> FUNCTIONS = functions();

    private final double height;
    private final double[] totals = new double[FUNCTIONS.size()];
    private final Map<Key, double[]> known = new HashMap<>();

    private record Key(Ring ring, long gap) {}

    /** @param height of the strip and its largest gap together */
    Slices(long height) {
        this.height = (double) height;
    }

    /** Adds a piece that may lie in some ways. */
    void add(List<Ring> ways, long gap) {
        List<double[]> each = ways.stream()
                .map(ring -> known.computeIfAbsent(new Key(ring, gap), key -> integrals(ring, gap, height)))
                .toList();
        for (int f = 0; f < totals.length; f++) {
            int number = f;
            totals[f] += each.stream()
                    .mapToDouble(integrals -> integrals[number])
                    .min()
                    .orElse(0);
        }
    }

    /** Returns a length no strip that holds the pieces can be below. */
    double leastLength() {
        double most = 0;
        for (double total : totals) {
            most = Math.max(most, total);
        }
        return most;
    }

    private static List<DoubleUnaryOperator> functions() {
        List<DoubleUnaryOperator> functions = new ArrayList<>();
        for (int rows = 1; rows <= MOST_ROWS; rows++) {
            int k = rows;
            functions.add(h -> h > 0 ? (Math.ceil((k + 1) * h) - 1) / k : 0);
        }
        for (int share = 1; share < 10; share++) {
            double e = share / 20.0;
            functions.add(h -> h < e ? 0 : h > 1 - e ? 1 : h);
        }
        return functions;
    }

    /** Returns the integral of each function over a ring as it lies. */
    private static double[] integrals(Ring ring, long gap, double height) {
        long[] xs = IntStream.range(0, ring.size())
                .mapToLong(ring::x)
                .sorted()
                .distinct()
                .toArray();
        double[] integrals = new double[FUNCTIONS.size()];
        for (int slab = 0; slab + 1 < xs.length; slab++) {
            double left = (chord(ring, xs[slab], xs[slab + 1], xs[slab]) + gap) / height - SMALLER;
            double right = (chord(ring, xs[slab], xs[slab + 1], xs[slab + 1]) + gap) / height - SMALLER;
            int cuts = left == right ? 1 : CUTS;
            double width = (xs[slab + 1] - xs[slab]) / (double) cuts;
            for (int cut = 0; cut < cuts; cut++) {
                double least = left + (right - left) * (left < right ? cut : cut + 1) / cuts;
                for (int f = 0; f < integrals.length; f++) {
                    integrals[f] += width * FUNCTIONS.get(f).applyAsDouble(Math.max(0, least));
                }
            }
        }
        return integrals;
    }

    /** Returns the total chord at an abscissa by the edges that run through a slab between neighbouring vertices. */
    private static double chord(Ring ring, long from, long to, long at) {
        double sum = 0;
        for (int i = 0; i < ring.size(); i++) {
            int next = i + 1 == ring.size() ? 0 : i + 1;
            long a = ring.x(i);
            long b = ring.x(next);
            if (Math.min(a, b) <= from && Math.max(a, b) >= to) {
                double y = ring.y(i) + (double) (ring.y(next) - ring.y(i)) * (at - a) / (b - a);
                sum += a < b ? -y : y;
            }
        }
        return Math.abs(sum);
    }
}
