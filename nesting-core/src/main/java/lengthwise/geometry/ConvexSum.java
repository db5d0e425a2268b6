package lengthwise.geometry;

import java.util.Arrays;

/**
 * Computes {@code A ⊕ (−B)} of two convex rings: the displacements of {@code B} at which the two meet. Strictly inside
 * they overlap, on the boundary they touch.
 *
 * <p>The edges of the sum are the edges of both operands in order of direction, so one merge finds them in {@code O(n +
 * m)}. Every vertex is the sum of two grid points: the result is exact.
 *
 * <p>Reference: M. de Berg, O. Cheong, M. van Kreveld, M. Overmars, <i>Computational Geometry</i>, 3rd ed., Springer
 * 2008, section 13.3.
 */
public final class ConvexSum {
    private ConvexSum() {}

    /**
     * Returns the sum as x, y, x, y … from its lowest vertex on, counter-clockwise with y up, strictly convex.
     *
     * @param fixed strictly convex and positive
     * @param moving likewise
     */
    public static long[] of(Ring fixed, Ring moving) {
        int n = fixed.size();
        int m = moving.size();
        int i = lowest(fixed, 1);
        int j = lowest(moving, -1);
        long[] sum = new long[2 * (n + m)];
        int size = 0;
        int takenA = 0;
        int takenB = 0;
        while (takenA < n || takenB < m) {
            sum[size++] = fixed.x(i) - moving.x(j);
            sum[size++] = fixed.y(i) - moving.y(j);
            int nextI = i + 1 == n ? 0 : i + 1;
            int nextJ = j + 1 == m ? 0 : j + 1;
            long turn = (fixed.x(nextI) - fixed.x(i)) * (moving.y(j) - moving.y(nextJ))
                    - (fixed.y(nextI) - fixed.y(i)) * (moving.x(j) - moving.x(nextJ));
            // Parallel edges (turn == 0) advance together and so join into one edge of the sum.
            if (takenB == m || (takenA < n && turn >= 0)) {
                i = nextI;
                takenA++;
                if (turn == 0 && takenB < m) {
                    j = nextJ;
                    takenB++;
                }
            } else {
                j = nextJ;
                takenB++;
            }
        }
        return Arrays.copyOf(sum, size);
    }

    /** Returns the vertex with least y, then least x, of the ring times {@code sign}. */
    private static int lowest(Ring ring, int sign) {
        int lowest = 0;
        for (int i = 1; i < ring.size(); i++) {
            long dy = sign * (ring.y(i) - ring.y(lowest));
            if (dy < 0 || (dy == 0 && sign * (ring.x(i) - ring.x(lowest)) < 0)) {
                lowest = i;
            }
        }
        return lowest;
    }
}
