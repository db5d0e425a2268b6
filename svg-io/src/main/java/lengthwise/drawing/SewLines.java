package lengthwise.drawing;

/** Recognises a line of stitching inside a cut line. */
final class SewLines {
    private static final int SAMPLES = 60;
    private static final double WIDEST_ALLOWANCE = 40_000;

    private SewLines() {}

    /** Says whether a closed line runs inside another at nearly the same distance all the way. */
    static boolean runsAlong(Contour cutLine, Contour inner) {
        if (inner.area() < 0.3 * cutLine.area()) {
            return false;
        }
        int step = Math.max(1, inner.ring().size() / SAMPLES);
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int i = 0; i < inner.ring().size(); i += step) {
            double distance = cutLine.nearest(inner.ring().vertex(i)).distance();
            least = Math.min(least, distance);
            most = Math.max(most, distance);
        }
        return most <= WIDEST_ALLOWANCE && most - least <= 1000 + 0.5 * least;
    }
}
