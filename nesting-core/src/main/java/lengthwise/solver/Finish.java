package lengthwise.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import lengthwise.geometry.Box;
import lengthwise.geometry.ConvexParts;
import lengthwise.solver.compaction.Body;
import lengthwise.solver.compaction.Compaction;
import lengthwise.solver.compaction.Span;

/**
 * Makes a legal layout of an arrangement whose pieces hardly overlap: compaction, rounded to the grid, tested exactly.
 * What fails the test is solved again with stricter rows; nothing illegal leaves.
 *
 * <p>A curve flattened to 5 µm has hundreds of convex parts, and the rows of a pair cost their product. So while a
 * search runs its finish works on outlines simplified outward, and only the last one on the true ones,
 * with short steps: that is where the last hundredths are won.
 */
final class Finish {
    private static final int ROUNDS = 6;
    private static final double STRICTER = 1.5;

    private final PreparedTask task;
    private final Function<Shape, ConvexParts> outline;
    private final double step;
    private final BooleanSupplier enough;
    private final double worthwhile;

    private Finish(PreparedTask task, Function<Shape, ConvexParts> outline, double step, BooleanSupplier enough) {
        this.task = task;
        this.outline = outline;
        this.step = step;
        this.enough = enough;
        this.worthwhile = 2e-5 * task.height();
    }

    /** Returns a finish for layouts on the way. */
    static Finish onTheWay(PreparedTask task, BooleanSupplier enough) {
        return new Finish(task, task::simple, task.height() / 100.0, enough);
    }

    /** Returns a finish for the last layout, on true outlines. */
    static Finish last(PreparedTask task, BooleanSupplier enough) {
        return new Finish(task, task::exact, task.height() / 1000.0, enough);
    }

    /** Returns a layout no longer than the arrangement's strip. */
    Optional<Layout> of(Arrangement state) {
        Optional<Layout> best = rounded(state.variant, state.x, state.y, (double) state.length());
        if (!Compaction.isAvailable()) {
            return best;
        }
        List<Body> bodies = bodies(state);
        double tightening = 0;
        for (int round = 0; round < ROUNDS && !enough.getAsBoolean(); round++) {
            double limit = (double) best.map(Layout::length).orElse(state.length());
            Optional<Placed> next = solved(state.variant, bodies, limit, tightening);
            if (next.isEmpty() && tightening == 0) {
                tightening = STRICTER;
                next = solved(state.variant, bodies, limit, tightening);
            }
            if (next.isEmpty()) {
                break;
            }
            Layout layout = next.get().layout();
            boolean better = best.isEmpty() || layout.length() < best.get().length();
            double gain = limit - layout.length();
            if (better) {
                best = Optional.of(layout);
            }
            bodies = next.get().bodies();
            if (gain < worthwhile && round > 0) {
                break;
            }
        }
        return best;
    }

    private record Placed(Layout layout, List<Body> bodies) {}

    private Optional<Placed> solved(Variant[] variant, List<Body> bodies, double limit, double tightening) {
        return Compaction.solve(bodies, limit, step, tightening, spans(variant, tightening))
                .flatMap(moved -> {
                    List<Body> onGrid = new ArrayList<>();
                    double[] x = new double[variant.length];
                    double[] y = new double[variant.length];
                    for (int i = 0; i < moved.size(); i++) {
                        Body body = moved.get(i);
                        onGrid.add(body.movable() ? body.at(Math.rint(body.x()), Math.rint(body.y())) : body);
                        if (i < variant.length) {
                            x[i] = body.x();
                            y[i] = body.y();
                        }
                    }
                    return rounded(variant, x, y, limit).map(layout -> new Placed(layout, onGrid));
                });
    }

    private Optional<Layout> rounded(Variant[] variant, double[] atX, double[] atY, double limit) {
        long[] x = new long[variant.length];
        long[] y = new long[variant.length];
        for (int i = 0; i < variant.length; i++) {
            x[i] = Math.round(atX[i]);
            y[i] = Math.round(atY[i]);
        }
        return task.legal(variant, x, y, task::exact).filter(layout -> layout.length() <= limit);
    }

    /** Returns how far what has to lie near to each other may be apart, a little less where rounding needs it. */
    private List<Span> spans(Variant[] variant, double tightening) {
        Nearness nearness = task.nearness();
        List<Span> spans = new ArrayList<>();
        for (int first = 0; first < variant.length; first++) {
            Box from = variant[first].shape().box();
            for (int last : nearness.fellowsOf(first)) {
                Box to = variant[last].shape().box();
                if (nearness.asksAlongX(first, last)) {
                    long most = nearness.alongX(first, last) + from.minX() - to.maxX();
                    spans.add(new Span(first, last, true, most - tightening));
                }
                if (nearness.asksAlongY(first, last)) {
                    long most = nearness.alongY(first, last) + from.minY() - to.maxY();
                    spans.add(new Span(first, last, false, most - tightening));
                }
            }
        }
        return spans;
    }

    private List<Body> bodies(Arrangement state) {
        List<Body> bodies = new ArrayList<>();
        for (int i = 0; i < state.pieces; i++) {
            double[] cells = state.cells(state.variant[i]);
            int cell = state.cellOf(i);
            Shape shape = state.shape[i];
            bodies.add(new Body(
                    outline.apply(shape),
                    state.x[i],
                    state.y[i],
                    cells[cell],
                    cells[cell + 1],
                    cells[cell + 2],
                    cells[cell + 3],
                    shape.box().maxX(),
                    shape.gap(),
                    !state.variant[i].region().isLaid()));
        }
        for (Shape obstacle : task.obstacles()) {
            bodies.add(new Body(
                    task.exact(obstacle), 0, 0, 0, 0, 0, 0, obstacle.box().maxX(), obstacle.gap(), false));
        }
        return bodies;
    }
}
