package lengthwise.solver.exact;

/**
 * What a Euclidean gap g between upright rectangles means for each axis.
 *
 * <p>Growing all of them by g along both axes is enough to keep the gap, but more than is needed: two corners may come
 * nearer than g along x and along y at once. What <i>must</i> hold is this: for any b, two rectangles less than b apart
 * along y are at least a(b) = √(g² − (b − 1)²) apart along x, because whole micrometres below b are at most b − 1. So
 * packings of rectangles grown by a(b) along x and by b along y include every legal layout, and bound its length.
 */
final class Gaps {
    private Gaps() {}

    /** Returns the largest b that is not above a(b): what some axis keeps between any two rectangles. */
    static long cornered(long gap) {
        long apart = (long) Math.sqrt(gap * gap / 2.0) + 2;
        while (apart > along(gap, apart)) {
            apart--;
        }
        return apart;
    }

    /** Returns a(b), rounded up to the grid where it must lie; the gap itself for b = 1. */
    static long along(long gap, long across) {
        long square = Math.max(0, gap * gap - (across - 1) * (across - 1));
        long root = (long) Math.sqrt((double) square);
        while (root * root < square) {
            root++;
        }
        while (root > 0 && (root - 1) * (root - 1) >= square) {
            root--;
        }
        return root;
    }
}
