package lengthwise.check;

/**
 * The turn, by any angle, and the move that lay one boundary best on another.
 *
 * <p>Both shells are sampled evenly along their length. For every shift of one sequence along its shell the best turn is
 * known in closed form: with the samples as complex numbers about their means it is the argument of
 * {@code Σ zⱼ · conj(wⱼ)}, and {@code Σ |zⱼ|² + Σ |wⱼ|² − 2 |Σ zⱼ · conj(wⱼ)|} is left as the sum of squared
 * distances. Whole shifts are tried first, then the best one is refined. Cost: the square of the number of samples.
 *
 * <p>Reference: F. L. Bookstein, <i>Morphometric Tools for Landmark Data</i>, Cambridge University Press 1991 (fit of two
 * point sets in the plane by complex regression); from memory.
 *
 * @param degrees the turn from +x towards +y, from −180 to 180
 * @param deviation how far the two boundaries are then apart at most, in micrometres
 */
record RigidFit(double degrees, double deviation) {
    private static final int SAMPLES = 360;
    private static final int REFINEMENTS = 40;

    /** Returns the fit of {@code wanted}, turned and moved, on {@code placed}; neither is mirrored. */
    static RigidFit of(Boundary placed, Boundary wanted) {
        double[][] w = wanted.evenly(SAMPLES, 0);
        double shift = bestShift(placed, w);
        double[][] z = placed.evenly(SAMPLES, shift);
        double[] turn = correlation(z, w);
        double cosine = turn[0] / modulus(turn);
        double sine = turn[1] / modulus(turn);
        double moveX = mean(z[0]) - cosine * mean(w[0]) + sine * mean(w[1]);
        double moveY = mean(z[1]) - sine * mean(w[0]) - cosine * mean(w[1]);
        Boundary laid = wanted.mapped(cosine, sine, moveX, moveY);
        return new RigidFit(StrictMath.toDegrees(StrictMath.atan2(sine, cosine)), laid.deviation(placed));
    }

    private static double bestShift(Boundary placed, double[][] w) {
        int best = 0;
        for (int shift = 1; shift < SAMPLES; shift++) {
            best = misfit(placed, w, shift) < misfit(placed, w, best) ? shift : best;
        }
        double low = best - 1.0;
        double high = best + 1.0;
        for (int i = 0; i < REFINEMENTS; i++) {
            double third = (high - low) / 3;
            if (misfit(placed, w, low + third) > misfit(placed, w, high - third)) {
                low += third;
            } else {
                high -= third;
            }
        }
        return (low + high) / 2;
    }

    /** Returns the sum of squared distances at the best turn, less that of the samples in {@code w}, which is fixed. */
    private static double misfit(Boundary placed, double[][] w, double shift) {
        double[][] z = placed.evenly(SAMPLES, shift);
        return variance(z[0]) + variance(z[1]) - 2 * modulus(correlation(z, w));
    }

    private static double variance(double[] values) {
        double mean = mean(values);
        double sum = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
        }
        return sum;
    }

    /** Returns the covariance of the two sequences as complex numbers. */
    private static double[] correlation(double[][] z, double[][] w) {
        double zx = mean(z[0]);
        double zy = mean(z[1]);
        double[] sum = new double[2];
        for (int j = 0; j < SAMPLES; j++) {
            double x = z[0][j] - zx;
            double y = z[1][j] - zy;
            sum[0] += x * w[0][j] + y * w[1][j];
            sum[1] += y * w[0][j] - x * w[1][j];
        }
        return sum;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double modulus(double[] complex) {
        return Math.hypot(complex[0], complex[1]);
    }
}
