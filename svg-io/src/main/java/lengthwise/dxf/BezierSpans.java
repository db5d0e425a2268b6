package lengthwise.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A rational B-spline as its rational Bézier spans, in homogeneous coordinates: control points (w·x, w·y, w).
 *
 * <p>Span [a, b] of degree p has the control points f(a, …, a, b, …, b), with k times b for k = 0 … p, where f is the
 * blossom of the span; the de Boor scheme evaluates it with another argument at each level. Knots count as stored: a
 * closed flag wraps nothing.
 *
 * <p>Reference: L. Ramshaw, "Blossoms are polar forms", Computer Aided Geometric Design 6 (1989); G. Farin, <i>Curves
 * and Surfaces for CAGD</i>, 5th ed., Morgan Kaufmann 2002, chapters 8 and 13.
 */
final class BezierSpans {
    private static final int HIGHEST_DEGREE = 11;

    private BezierSpans() {}

    /**
     * Returns the spans in order; empty if the numbers make no curve: counts that do not match, knots that fall, weights
     * that are not positive.
     *
     * @param points x, y and weight of each control point
     */
    static Optional<List<double[][]>> of(int degree, double[] knots, List<double[]> points) {
        int count = points.size();
        if (degree < 1 || degree > HIGHEST_DEGREE || count <= degree || knots.length != count + degree + 1) {
            return Optional.empty();
        }
        for (int i = 1; i < knots.length; i++) {
            if (!(knots[i] >= knots[i - 1])) {
                return Optional.empty();
            }
        }
        List<double[]> homogeneous = new ArrayList<>(count);
        for (double[] point : points) {
            if (!(point[2] > 1e-9 && point[2] < 1e9)) {
                return Optional.empty();
            }
            homogeneous.add(new double[] {point[0] * point[2], point[1] * point[2], point[2]});
        }
        List<double[][]> spans = new ArrayList<>();
        for (int i = degree; i < count; i++) {
            if (knots[i] < knots[i + 1]) {
                double[][] span = new double[degree + 1][];
                for (int k = 0; k <= degree; k++) {
                    span[k] = blossom(degree, knots, homogeneous, i, k);
                }
                spans.add(span);
            }
        }
        return spans.isEmpty() ? Optional.empty() : Optional.of(spans);
    }

    /** Evaluates the blossom of span {@code i} at p − k times its start and k times its end. */
    private static double[] blossom(int degree, double[] knots, List<double[]> points, int i, int k) {
        double[][] level = new double[degree + 1][];
        for (int j = 0; j <= degree; j++) {
            level[j] = points.get(i - degree + j).clone();
        }
        for (int r = 1; r <= degree; r++) {
            double at = r <= degree - k ? knots[i] : knots[i + 1];
            for (int j = degree; j >= r; j--) {
                double low = knots[i - degree + j];
                double high = knots[i + 1 + j - r];
                double share = (at - low) / (high - low);
                for (int d = 0; d < 3; d++) {
                    level[j][d] = (1 - share) * level[j - 1][d] + share * level[j][d];
                }
            }
        }
        return level[degree];
    }
}
