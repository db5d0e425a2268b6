package lengthwise.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;

/**
 * A large order as a maker of clothing has it: 25 curved outlines, each in twelve sizes, so 300 shapes; on 1.5 m, either way
 * round. An order of any number of pieces takes shapes evenly from the 300, so that orders of different size are alike.
 *
 * <p>An outline is an oval with three waves round it, from slim to round and from a hand to half a metre long. A size is 3 %
 * larger than the one before, as grading is about that for women's clothing (5 cm on a girth of 90 cm is 5 %, on lengths it is
 * less; from memory).
 */
final class Graded {
    static final int OUTLINES = 25;
    static final int SIZES = 12;

    private static final long HEIGHT = 1_500_000;
    private static final int VERTICES = 60;
    private static final double STEP = 1.03;

    private Graded() {}

    /** Returns the instance {@code graded:pieces:seed}. */
    static Instance of(int pieces, long seed) {
        if (pieces < 1) {
            throw new IllegalArgumentException("An order has at least one piece, not " + pieces + ".");
        }
        List<Outline> shapes = shapes(seed);
        PlacementDomain domain = new PlacementDomain(
                List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.HALF)),
                new PlacementDomain.Positions.Free());
        List<Demand> demands = new ArrayList<>();
        double area = 0;
        for (int i = 0; i < pieces; i++) {
            Outline outline = shapes.get((int) ((2L * i + 1) * shapes.size() / (2L * pieces)));
            demands.add(new Demand(outline, domain, 0));
            area += outline.doubleArea() / 2.0;
        }
        LayoutTask task = new LayoutTask(HEIGHT, demands, List.of(), List.of());
        return new Instance("graded:" + pieces + ":" + seed, task, 1, area);
    }

    /** Returns the distinct shapes, the sizes of an outline one after the other. */
    static List<Outline> shapes(long seed) {
        Random random = new Random(seed);
        List<Outline> shapes = new ArrayList<>();
        for (int outline = 0; outline < OUTLINES; outline++) {
            double length = 60_000 + 190_000 * random.nextDouble();
            double breadth = length * (0.25 + 0.6 * random.nextDouble());
            double[] wave = new double[6];
            for (int k = 0; k < 3; k++) {
                wave[2 * k] = 0.22 / (k + 1) * random.nextDouble();
                wave[2 * k + 1] = 2 * Math.PI * random.nextDouble();
            }
            for (int size = 0; size < SIZES; size++) {
                shapes.add(Outline.of(ring(length, breadth, wave, StrictMath.pow(STEP, size - SIZES / 2))));
            }
        }
        return shapes;
    }

    private static Ring ring(double length, double breadth, double[] wave, double scale) {
        List<Point> vertices = new ArrayList<>();
        for (int i = 0; i < VERTICES; i++) {
            double angle = 2 * Math.PI * i / VERTICES;
            double out = scale;
            for (int k = 0; k < 3; k++) {
                out += scale * wave[2 * k] * StrictMath.sin((k + 2) * angle + wave[2 * k + 1]);
            }
            vertices.add(new Point(
                    StrictMath.round(length * out * StrictMath.cos(angle)),
                    StrictMath.round(breadth * out * StrictMath.sin(angle))));
        }
        return Ring.of(vertices);
    }
}
