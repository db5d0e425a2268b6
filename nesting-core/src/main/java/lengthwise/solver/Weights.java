package lengthwise.solver;

/**
 * Guided local search: what an overlap costs rises while it stays and decays when it is gone, so that a piece stuck
 * among its neighbours becomes so dear there that it leaves.
 *
 * <p>References: C. Voudouris, E. Tsang, <i>Guided local search</i>, EJOR 113, 1999; the factors of J. Gardeyn, G.
 * Vanden Berghe, T. Wauters, arXiv 2509.13329, 2025.
 */
final class Weights {
    private static final double LEAST_RISE = 1.2;
    private static final double MORE_RISE = 0.8;
    private static final double DECAY = 0.95;
    private static final double MOST = 1e12;

    private Weights() {}

    /** Changes all weights after a sweep; what overlaps by less than a tolerance counts as apart. */
    static void update(Arrangement state, double tolerance) {
        double largest = state.largest();
        if (largest <= 0) {
            return;
        }
        double most = 0;
        for (int i = 0; i < state.pieces; i++) {
            double[] weight = state.weight[i];
            double[] overlap = state.overlap[i];
            for (int j = i + 1; j < state.all; j++) {
                double changed = overlap[j] > tolerance
                        ? weight[j] * (LEAST_RISE + MORE_RISE * overlap[j] / largest)
                        : Math.max(state.leastWeight(i, j), DECAY * weight[j]);
                weight[j] = changed;
                state.weight[j][i] = changed;
                most = Math.max(most, changed);
            }
        }
        if (most > MOST) {
            for (int i = 0; i < state.all; i++) {
                double[] weight = state.weight[i];
                for (int j = 0; j < state.all; j++) {
                    weight[j] = Math.max(state.leastWeight(i, j), weight[j] / most);
                }
            }
        }
    }
}
