package lengthwise.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;

/** The closed lines round an outline in floating point, so that they can be turned by any angle. Micrometres. */
final class Boundary {
    private final List<double[]> xs;
    private final List<double[]> ys;

    private Boundary(List<double[]> xs, List<double[]> ys) {
        this.xs = xs;
        this.ys = ys;
    }

    static Boundary of(Outline outline) {
        List<double[]> xs = new ArrayList<>();
        List<double[]> ys = new ArrayList<>();
        List<Ring> rings = new ArrayList<>(outline.holes());
        rings.add(0, outline.shell());
        for (Ring ring : rings) {
            double[] x = new double[ring.size()];
            double[] y = new double[ring.size()];
            for (int i = 0; i < ring.size(); i++) {
                x[i] = ring.x(i);
                y[i] = ring.y(i);
            }
            xs.add(x);
            ys.add(y);
        }
        return new Boundary(xs, ys);
    }

    /** Returns the image under the turn by (cosine, sine) followed by a move. */
    Boundary mapped(double cosine, double sine, double moveX, double moveY) {
        List<double[]> mappedXs = new ArrayList<>();
        List<double[]> mappedYs = new ArrayList<>();
        for (int ring = 0; ring < xs.size(); ring++) {
            double[] x = xs.get(ring);
            double[] y = ys.get(ring);
            double[] mappedX = new double[x.length];
            double[] mappedY = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                mappedX[i] = cosine * x[i] - sine * y[i] + moveX;
                mappedY[i] = sine * x[i] + cosine * y[i] + moveY;
            }
            mappedXs.add(mappedX);
            mappedYs.add(mappedY);
        }
        return new Boundary(mappedXs, mappedYs);
    }

    /** Returns how far a vertex of either boundary is from the other boundary, at most. */
    double deviation(Boundary other) {
        return Math.max(farthestVertex(other), other.farthestVertex(this));
    }

    private double farthestVertex(Boundary to) {
        return ways(to).mapToDouble(way -> Math.hypot(way[0], way[1])).max().orElseThrow();
    }

    /** Returns the mean distance of the vertices of this boundary from the other one. */
    double meanDistance(Boundary to) {
        return ways(to).mapToDouble(way -> Math.hypot(way[0], way[1])).average().orElseThrow();
    }

    /** Returns the mean way from the vertices of this boundary to the other one, as x and y. */
    double[] meanWay(Boundary to) {
        return new double[] {
            ways(to).mapToDouble(way -> way[0]).average().orElseThrow(),
            ways(to).mapToDouble(way -> way[1]).average().orElseThrow()
        };
    }

    private Stream<double[]> ways(Boundary to) {
        return IntStream.range(0, xs.size())
                .boxed()
                .flatMap(ring -> IntStream.range(0, xs.get(ring).length)
                        .mapToObj(i -> to.way(xs.get(ring)[i], ys.get(ring)[i])));
    }

    /** Returns the shortest way from a point to this boundary, as x and y. */
    private double[] way(double px, double py) {
        double[] shortest = {0, 0};
        double least = Double.POSITIVE_INFINITY;
        for (int ring = 0; ring < xs.size(); ring++) {
            double[] x = xs.get(ring);
            double[] y = ys.get(ring);
            for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
                double edgeX = x[i] - x[j];
                double edgeY = y[i] - y[j];
                double square = edgeX * edgeX + edgeY * edgeY;
                double along = square == 0 ? 0 : ((px - x[j]) * edgeX + (py - y[j]) * edgeY) / square;
                double clamped = Math.max(0, Math.min(1, along));
                double wayX = x[j] + clamped * edgeX - px;
                double wayY = y[j] + clamped * edgeY - py;
                double distance = wayX * wayX + wayY * wayY;
                if (distance < least) {
                    least = distance;
                    shortest[0] = wayX;
                    shortest[1] = wayY;
                }
            }
        }
        return shortest;
    }

    /**
     * Returns points at equal distances along the shell: all x, then all y.
     *
     * @param start where the first lies, from the first vertex, in steps
     */
    double[][] evenly(int count, double start) {
        double[] x = xs.get(0);
        double[] y = ys.get(0);
        int n = x.length;
        double[] until = new double[n + 1];
        for (int i = 0; i < n; i++) {
            until[i + 1] = until[i] + Math.hypot(x[(i + 1) % n] - x[i], y[(i + 1) % n] - y[i]);
        }
        double[][] points = new double[2][count];
        for (int k = 0; k < count; k++) {
            double turns = (k + start) / count;
            double at = (turns - Math.floor(turns)) * until[n];
            int found = Arrays.binarySearch(until, at);
            int edge = Math.min(n - 1, found >= 0 ? found : -found - 2);
            double length = until[edge + 1] - until[edge];
            double along = length == 0 ? 0 : (at - until[edge]) / length;
            points[0][k] = x[edge] + along * (x[(edge + 1) % n] - x[edge]);
            points[1][k] = y[edge] + along * (y[(edge + 1) % n] - y[edge]);
        }
        return points;
    }
}
