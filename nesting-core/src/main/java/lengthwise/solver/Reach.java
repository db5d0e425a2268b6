package lengthwise.solver;

import java.util.Arrays;
import lengthwise.geometry.Box;

/** Where a piece may lie for the sake of all that it has to be {@link Nearness near} to, and what it costs elsewhere. */
final class Reach {
    /** For each fellow: from where to where along x, along y, and the weight. */
    private double[] low = new double[0];

    private double[] high = new double[0];
    private double[] lowY = new double[0];
    private double[] highY = new double[0];
    private double[] weight = new double[0];
    private int size;

    /** What is dearest along an axis at the last place that was looked at: how far to go, in which direction. */
    double depth;

    double way;
    double dearest;
    /** By how much the cost falls with a way in the direction of the axis. */
    double slope;

    /** Finds it out for a piece that has some box at position (0, 0). */
    void find(Arrangement state, int piece, Box box) {
        int[] fellows = state.nearness.fellowsOf(piece);
        size = fellows.length;
        if (low.length < size) {
            low = Arrays.copyOf(low, size);
            high = Arrays.copyOf(high, size);
            lowY = Arrays.copyOf(lowY, size);
            highY = Arrays.copyOf(highY, size);
            weight = Arrays.copyOf(weight, size);
        }
        for (int k = 0; k < size; k++) {
            int j = fellows[k];
            Box other = state.shape[j].box();
            double alongX = state.nearness.alongX(piece, j);
            double alongY = state.nearness.alongY(piece, j);
            low[k] = state.x[j] + other.maxX() - alongX - box.minX();
            high[k] = state.x[j] + other.minX() + alongX - box.maxX();
            lowY[k] = state.y[j] + other.maxY() - alongY - box.minY();
            highY[k] = state.y[j] + other.minY() + alongY - box.maxY();
            weight[k] = state.weight[piece][j];
        }
    }

    double costAtX(double x) {
        return cost(low, high, x);
    }

    double costAtY(double y) {
        return cost(lowY, highY, y);
    }

    private double cost(double[] from, double[] to, double at) {
        double cost = 0;
        for (int k = 0; k < size; k++) {
            cost += weight[k] * Math.max(0, Math.max(from[k] - at, at - to[k]));
        }
        return cost;
    }

    /** Returns the cost along x and notes what is dearest there. */
    double lookAtX(double x) {
        return look(low, high, x);
    }

    /** Returns the cost along y and notes what is dearest there. */
    double lookAtY(double y) {
        return look(lowY, highY, y);
    }

    private double look(double[] from, double[] to, double at) {
        double cost = 0;
        dearest = 0;
        slope = 0;
        for (int k = 0; k < size; k++) {
            double excess = Math.max(from[k] - at, at - to[k]);
            if (excess > 0) {
                double direction = at < from[k] ? 1 : -1;
                double weighted = weight[k] * excess;
                cost += weighted;
                slope += weight[k] * direction;
                if (weighted > dearest) {
                    dearest = weighted;
                    depth = excess;
                    way = direction;
                }
            }
        }
        return cost;
    }
}
