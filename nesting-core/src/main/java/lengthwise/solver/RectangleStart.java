package lengthwise.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import lengthwise.geometry.Box;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain.Positions;
import lengthwise.solver.exact.ExactPacking;
import lengthwise.solver.exact.Packing;
import lengthwise.solver.exact.Proof;
import lengthwise.solver.exact.RectangleTask;
import lengthwise.solver.exact.RectangleTask.Item;
import lengthwise.solver.exact.RectangleTask.Size;

/**
 * The exact part of a search: where all demands are rectangles, free or with one side on the edge y = 0, all with one
 * gap, they are packed with a proof ({@link ExactPacking}). Other tasks are left to the search.
 */
final class RectangleStart {
    /** Sweeps that take about as long as a second of deterministic effort, of a few dozen pieces. */
    private static final int SWEEPS_A_SECOND = 300;

    private static final int LONGEST_SECONDS = 1 << 12;

    private final PreparedTask task;
    private final List<List<Variant>> ways;
    private final RectangleTask rectangles;

    private RectangleStart(PreparedTask task, List<List<Variant>> ways, RectangleTask rectangles) {
        this.task = task;
        this.ways = ways;
        this.rectangles = rectangles;
    }

    /** Returns the exact part for a task, or nothing if that task is of another sort. */
    static Optional<RectangleStart> of(PreparedTask task) {
        LayoutTask layoutTask = task.layoutTask();
        long gap = task.largestGap();
        if (!layoutTask.obstacles().isEmpty() || !layoutTask.bonds().isEmpty()) {
            return Optional.empty();
        }
        List<List<Variant>> ways = new ArrayList<>();
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < task.size(); i++) {
            Demand demand = layoutTask.demands().get(i);
            List<Variant> different = different(task.variants(i));
            if (demand.gap() != gap || !different.stream().allMatch(RectangleStart::isRectangle)) {
                return Optional.empty();
            }
            boolean free = demand.domain().positions() instanceof Positions.Free;
            boolean atEdge = demand.domain().positions() instanceof Positions.Line
                    && different.size() == 1
                    && different
                            .get(0)
                            .region()
                            .isAtEdge(different.get(0).shape().box());
            if (!free && !atEdge) {
                return Optional.empty();
            }
            ways.add(different);
            items.add(new Item(
                    different.stream()
                            .map(variant -> size(variant.shape().box()))
                            .toList(),
                    atEdge));
        }
        return Optional.of(new RectangleStart(task, ways, new RectangleTask(layoutTask.height(), gap, items)));
    }

    /** Returns the first variant of each shape: half turns and flips of a rectangle change nothing. */
    private static List<Variant> different(List<Variant> variants) {
        List<Variant> different = new ArrayList<>();
        for (Variant variant : variants) {
            if (different.stream().noneMatch(other -> other.shape().equals(variant.shape()))) {
                different.add(variant);
            }
        }
        return different;
    }

    private static boolean isRectangle(Variant variant) {
        Ring ring = variant.shape().ring();
        Box box = variant.shape().box();
        return ring.size() == 4 && ring.doubleArea() == 2 * box.width() * box.height();
    }

    private static Size size(Box box) {
        return new Size(box.width(), box.height());
    }

    /** Looks for a shorter layout than the best of a run, in at most half of its budget, and tells it what was proven. */
    void pack(Run run, Layout best, long bound, long seed) {
        Optional<Proof> proof = ExactPacking.atOnce(rectangles);
        if (proof.isPresent()) {
            offer(run, proof.get().packing());
            run.proven(proof.get().lowerBound(), 0);
        } else if (ExactPacking.canSearch(rectangles)) {
            ExactPacking.Outcome outcome = ExactPacking.search(
                    rectangles,
                    best.length(),
                    bound,
                    effort(sweeps -> run.fraction((long) sweeps)),
                    seed,
                    () -> run.isOver(0, best) || run.fraction(0) >= 0.5,
                    packing -> offer(run, packing));
            run.proven(outcome.lowerBound(), Math.round(outcome.deterministicSeconds() * SWEEPS_A_SECOND));
        }
    }

    /** Returns the effort that half of a budget of sweeps stands for; very much if the budget is of another kind. */
    private static double effort(DoubleUnaryOperator fraction) {
        double low = 0;
        double high = LONGEST_SECONDS;
        if (fraction.applyAsDouble(high * SWEEPS_A_SECOND) < 0.5) {
            return high;
        }
        while (high - low > 1e-3) {
            double middle = (low + high) / 2;
            if (fraction.applyAsDouble(middle * SWEEPS_A_SECOND) < 0.5) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void offer(Run run, Packing packing) {
        Variant[] chosen = new Variant[ways.size()];
        long[] x = new long[ways.size()];
        long[] y = new long[ways.size()];
        for (int i = 0; i < chosen.length; i++) {
            Packing.Spot spot = packing.spots().get(i);
            chosen[i] = ways.get(i).get(spot.way());
            x[i] = spot.x() - chosen[i].shape().box().minX();
            y[i] = spot.y() - chosen[i].shape().box().minY();
        }
        task.legal(chosen, x, y, task::exact).ifPresent(layout -> run.offer(layout, 0));
    }
}
