package lengthwise.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.NoFitPolygon;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What the search spends its time on, kernel by kernel, on 24 curved pieces of eight shapes with dents, 48 vertices each,
 * on 1.5 m. Lies in the package of the search because its parts are not public.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class KernelBenchmark {
    private static final int SHAPES = 8;
    private static final int COPIES = 3;
    private static final int VERTICES = 48;
    private static final long HEIGHT = 1_500_000;
    private static final int ROWS = 48;
    private static final int DISPLACEMENTS = 1_024;

    /** Two outlines and displacements of one against the other that may make them overlap. */
    @State(Scope.Thread)
    public static class TwoShapes {
        final ConvexParts fixed;
        final ConvexParts moving;
        final NoFitPolygon polygon;
        final DepthMap map;
        final double[] x = new double[DISPLACEMENTS];
        final double[] y = new double[DISPLACEMENTS];

        public TwoShapes() {
            SplittableRandom random = new SplittableRandom(1);
            fixed = ConvexParts.of(blob(random));
            moving = ConvexParts.of(blob(random));
            polygon = NoFitPolygon.of(fixed, moving);
            map = new DepthMap(polygon, HEIGHT / 500.0);
            for (int i = 0; i < DISPLACEMENTS; i++) {
                x[i] = map.minX + random.nextDouble() * (map.maxX - map.minX);
                y[i] = map.minY + random.nextDouble() * (map.maxY - map.minY);
            }
        }
    }

    /** A legal layout of the pieces. */
    @State(Scope.Thread)
    public static class Legal {
        final Arrangement arrangement;
        final Relocation relocation;
        final Layout layout;
        int piece;

        public Legal() {
            LayoutTask layoutTask = pieces();
            layout = ((SearchResult.Solved) StripSearch.solve(layoutTask, Search.of(StopRule.iterations(100), 1, 1)))
                    .layout();
            PreparedTask task = new PreparedTask(layoutTask);
            arrangement = new Arrangement(task, new Pairs(task, HEIGHT / (double) ROWS, 0));
            relocation = new Relocation(arrangement);
            arrangement.load(layout);
        }

        int next() {
            piece = (piece + 1) % arrangement.pieces;
            return piece;
        }
    }

    /** The same in a strip shorter by a fifth, so that pieces overlap however they lie. */
    @State(Scope.Thread)
    public static class TooShort extends Legal {
        @Setup(Level.Iteration)
        public void shorten() {
            arrangement.load(layout);
            arrangement.setLength(layout.length() * 4 / 5);
            arrangement.measureAll();
            arrangement.resetWeights();
        }
    }

    /** The no-fit polygon of two shapes. */
    @Benchmark
    public NoFitPolygon noFitPolygon(TwoShapes shapes) {
        return NoFitPolygon.of(shapes.fixed, shapes.moving);
    }

    /** The map that answers depths, from a no-fit polygon. */
    @Benchmark
    public Object depthMap(TwoShapes shapes) {
        return new DepthMap(shapes.polygon, HEIGHT / 500.0);
    }

    /** One exact depth. */
    @Benchmark
    @OperationsPerInvocation(DISPLACEMENTS)
    public double exactDepth(TwoShapes shapes) {
        double sum = 0;
        for (int i = 0; i < DISPLACEMENTS; i++) {
            sum += shapes.map.depth(shapes.x[i], shapes.y[i]);
        }
        return sum;
    }

    /** The fields of all others added up over the strip, for a piece that lies well: no place has to be refined. */
    @Benchmark
    public void fieldSum(Legal state) {
        state.relocation.move(state.next());
    }

    /** The move of a piece that overlaps: the field sum and the refinement of the best places. */
    @Benchmark
    public void move(TooShort state) {
        state.relocation.move(state.next());
    }

    /** A sweep: every piece is moved, then the weights change. */
    @Benchmark
    public void sweep(TooShort state) {
        for (int piece = 0; piece < state.arrangement.pieces; piece++) {
            state.relocation.move(piece);
        }
        Weights.update(state.arrangement, state.arrangement.task.tolerance());
    }

    private static LayoutTask pieces() {
        SplittableRandom random = new SplittableRandom(2);
        PlacementDomain eitherWay = new PlacementDomain(
                List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.HALF)),
                new PlacementDomain.Positions.Free());
        List<Demand> demands = new ArrayList<>();
        for (int shape = 0; shape < SHAPES; shape++) {
            Outline outline = Outline.of(blob(random));
            for (int copy = 0; copy < COPIES; copy++) {
                demands.add(new Demand(outline, eitherWay, 0));
            }
        }
        return new LayoutTask(HEIGHT, demands, List.of(), List.of());
    }

    /** Returns a smooth ring of 300 to 700 mm with two to four dents. */
    private static Ring blob(SplittableRandom random) {
        double phase = 2 * Math.PI * random.nextDouble();
        int lobes = random.nextInt(2, 5);
        double size = random.nextDouble(150_000, 300_000);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < VERTICES; i++) {
            double angle = 2 * Math.PI * i / VERTICES;
            double radius = size * (0.8 + 0.25 * Math.sin(lobes * angle + phase));
            points.add(new Point(Math.round(radius * Math.cos(angle)), Math.round(0.6 * radius * Math.sin(angle))));
        }
        return Ring.of(points);
    }
}
