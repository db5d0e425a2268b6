package lengthwise.geometry;

import java.util.Arrays;
import java.util.Comparator;

/**
 * The boundary of the no-fit polygon of two shapes, as loose segments: the displacements of the moving shape at which it
 * touches the fixed one without overlapping it.
 *
 * <p>The no-fit polygon is the union of the sums {@code A ⊕ (−B)} of all pairs of convex parts. Its boundary is what is
 * left of the segments of the reduced {@link Convolution} (or, where a shape has holes, of the edges of all sums) when
 * the stretches strictly inside another sum are taken away, so no planar graph is needed: each edge is clipped at the convex sums whose boxes it meets (M. Cyrus, J. Beck, <i>Generalized two- and
 * three-dimensional clipping</i>, 1978), and most edges vanish at the first few. Slots of no width stay, as two segments
 * back to back; isolated points are lost. The inside of the union is on the left of each segment.
 *
 * <p>The segments guide a search (depth, direction); what decides is {@link PairTest}. Vertices of sums are exact, ends
 * at crossings are rounded doubles.
 */
public final class NoFitPolygon {
    private static final double LEAST_LENGTH = 1e-2;
    private static final int NO_SUM = -1;

    private double[] coordinates = new double[256];
    private int size;

    private NoFitPolygon() {}

    /** Returns the boundary for two shapes. */
    public static NoFitPolygon of(ConvexParts fixed, ConvexParts moving) {
        Sum[] sums = new Sum[fixed.parts().size() * moving.parts().size()];
        int n = 0;
        for (Ring a : fixed.parts()) {
            for (Ring b : moving.parts()) {
                sums[n++] = new Sum(ConvexSum.of(a, b));
            }
        }
        // most edges lie inside the union, and a large sum is the likeliest to cover one whole
        Arrays.sort(sums, Comparator.comparingDouble(sum -> -sum.doubleArea));
        NoFitPolygon boundary = new NoFitPolygon();
        Clipping clipping =
                new Clipping(Arrays.stream(sums).map(sum -> sum.ring).toArray(double[][]::new));
        if (fixed.isFilled() && moving.isFilled()) {
            clipping.keepOutside(boundary, Convolution.segments(fixed.ring(), moving.ring()));
        } else {
            clipping.keepOutside(boundary);
        }
        return boundary;
    }

    /** A convex sum. */
    private static final class Sum {
        /** x and y by turns. */
        final double[] ring;

        final double doubleArea;

        Sum(long[] sum) {
            ring = new double[sum.length];
            for (int k = 0; k < ring.length; k++) {
                ring[k] = (double) sum[k];
            }
            double area = 0;
            for (int k = 2; k + 3 < ring.length; k += 2) {
                area += (ring[k] - ring[0]) * (ring[k + 3] - ring[1])
                        - (ring[k + 2] - ring[0]) * (ring[k + 1] - ring[1]);
            }
            doubleArea = area;
        }
    }

    /** Returns the number of segments. */
    public int size() {
        return size;
    }

    /** Returns the x of a segment's start. */
    public double fromX(int segment) {
        return coordinates[4 * segment];
    }

    public double fromY(int segment) {
        return coordinates[4 * segment + 1];
    }

    public double toX(int segment) {
        return coordinates[4 * segment + 2];
    }

    public double toY(int segment) {
        return coordinates[4 * segment + 3];
    }

    private void add(double x0, double y0, double x1, double y1) {
        if (4 * size == coordinates.length) {
            coordinates = Arrays.copyOf(coordinates, 2 * coordinates.length);
        }
        coordinates[4 * size] = x0;
        coordinates[4 * size + 1] = y0;
        coordinates[4 * size + 2] = x1;
        coordinates[4 * size + 3] = y1;
        size++;
    }

    /** Clips every edge of every sum at all other sums. */
    private static final class Clipping {
        private final double[][] sums;
        private final double[] minX;
        private final double[] minY;
        private final double[] maxX;
        private final double[] maxY;
        /** Covered stretches of the edge at hand: from, to, from, to …, as fractions of it. */
        private double[] covered = new double[64];

        private int stretches;

        Clipping(double[][] sums) {
            this.sums = sums;
            int n = sums.length;
            minX = new double[n];
            minY = new double[n];
            maxX = new double[n];
            maxY = new double[n];
            for (int s = 0; s < n; s++) {
                minX[s] = minY[s] = Double.MAX_VALUE;
                maxX[s] = maxY[s] = -Double.MAX_VALUE;
                for (int k = 0; k < sums[s].length; k += 2) {
                    minX[s] = Math.min(minX[s], sums[s][k]);
                    maxX[s] = Math.max(maxX[s], sums[s][k]);
                    minY[s] = Math.min(minY[s], sums[s][k + 1]);
                    maxY[s] = Math.max(maxY[s], sums[s][k + 1]);
                }
            }
        }

        /** Clips given segments, four coordinates each; a sum that has one on its own boundary does not cover it. */
        void keepOutside(NoFitPolygon boundary, double[] segments) {
            int lastCover = 0;
            for (int k = 0; k < segments.length; k += 4) {
                double x0 = segments[k];
                double y0 = segments[k + 1];
                double x1 = segments[k + 2];
                double y1 = segments[k + 3];
                if (!coversAll(lastCover, NO_SUM, x0, y0, x1, y1)) {
                    int cover = clip(NO_SUM, x0, y0, x1, y1);
                    if (cover >= 0) {
                        lastCover = cover;
                    } else {
                        keepGaps(boundary, x0, y0, x1, y1);
                    }
                }
            }
        }

        void keepOutside(NoFitPolygon boundary) {
            int lastCover = 0;
            for (int s = 0; s < sums.length; s++) {
                double[] sum = sums[s];
                for (int k = 0; k < sum.length; k += 2) {
                    int next = k + 2 == sum.length ? 0 : k + 2;
                    double x0 = sum[k];
                    double y0 = sum[k + 1];
                    double x1 = sum[next];
                    double y1 = sum[next + 1];
                    if (lastCover != s && coversAll(lastCover, s, x0, y0, x1, y1)) {
                        continue;
                    }
                    int cover = clip(s, x0, y0, x1, y1);
                    if (cover >= 0) {
                        lastCover = cover;
                    } else {
                        keepGaps(boundary, x0, y0, x1, y1);
                    }
                }
            }
        }

        private boolean coversAll(int other, int own, double x0, double y0, double x1, double y1) {
            stretches = 0;
            return cover(other, own, x0, y0, x1, y1);
        }

        /** Collects the covered stretches of an edge; returns the sum that covers it whole, or −1. */
        private int clip(int own, double x0, double y0, double x1, double y1) {
            stretches = 0;
            double left = Math.min(x0, x1);
            double right = Math.max(x0, x1);
            double bottom = Math.min(y0, y1);
            double top = Math.max(y0, y1);
            for (int s = 0; s < sums.length; s++) {
                if (s != own
                        && maxX[s] >= left
                        && minX[s] <= right
                        && maxY[s] >= bottom
                        && minY[s] <= top
                        && cover(s, own, x0, y0, x1, y1)) {
                    return s;
                }
            }
            return -1;
        }

        /** Adds the stretch of an edge strictly inside a sum; says whether that is all of it. */
        private boolean cover(int s, int own, double x0, double y0, double x1, double y1) {
            double[] sum = sums[s];
            double from = 0;
            double to = 1;
            double ax = sum[sum.length - 2];
            double ay = sum[sum.length - 1];
            for (int k = 0; k < sum.length; k += 2) {
                double bx = sum[k];
                double by = sum[k + 1];
                double start = (bx - ax) * (y0 - ay) - (by - ay) * (x0 - ax);
                double end = (bx - ax) * (y1 - ay) - (by - ay) * (x1 - ax);
                if (start <= 0 && end <= 0) {
                    // On the same line, the same way round: the earlier sum keeps the stretch they share.
                    boolean sameWay = (bx - ax) * (x1 - x0) + (by - ay) * (y1 - y0) > 0;
                    if (start < 0 || end < 0 || !sameWay || s > own) {
                        return false;
                    }
                } else if (start < 0) {
                    from = Math.max(from, start / (start - end));
                } else if (end < 0) {
                    to = Math.min(to, start / (start - end));
                }
                if (from >= to) {
                    return false;
                }
                ax = bx;
                ay = by;
            }
            if (2 * stretches == covered.length) {
                covered = Arrays.copyOf(covered, 2 * covered.length);
            }
            // kept in order of where they begin
            int at = stretches++;
            while (at > 0 && covered[2 * at - 2] > from) {
                covered[2 * at] = covered[2 * at - 2];
                covered[2 * at + 1] = covered[2 * at - 1];
                at--;
            }
            covered[2 * at] = from;
            covered[2 * at + 1] = to;
            return from <= 0 && to >= 1;
        }

        private void keepGaps(NoFitPolygon boundary, double x0, double y0, double x1, double y1) {
            double least = LEAST_LENGTH / Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
            double open = 0;
            for (int k = 0; k <= stretches; k++) {
                double from = k == stretches ? 1 : covered[2 * k];
                if (from - open > least) {
                    boundary.add(at(x0, x1, open), at(y0, y1, open), at(x0, x1, from), at(y0, y1, from));
                }
                open = Math.max(open, k == stretches ? 1 : covered[2 * k + 1]);
            }
        }

        private static double at(double a, double b, double fraction) {
            return fraction <= 0 ? a : fraction >= 1 ? b : a + fraction * (b - a);
        }
    }
}
