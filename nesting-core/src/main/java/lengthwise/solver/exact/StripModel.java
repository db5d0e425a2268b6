package lengthwise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearArgument;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.NoOverlap2dConstraint;
import com.google.ortools.util.Domain;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import lengthwise.solver.exact.Packing.Spot;
import lengthwise.solver.exact.RectangleTask.Item;
import lengthwise.solver.exact.RectangleTask.Size;

/**
 * Strip packing as a constraint model: no two grown rectangles overlap, and across every line of either direction they
 * fit the strip (cumulative constraints, implied). Lengths are counted in the greatest unit that all sizes share.
 *
 * <p>Positions are sums of grown sizes, for every packing can be pushed left and down (normal patterns: N. Christofides,
 * C. Whitlock, <i>An algorithm for two-dimensional cutting problems</i>, Operations Research 25, 1977). Equal rectangles
 * are numbered from left to right, and one rectangle that has no equal lies in the left half.
 */
final class StripModel {
    private static final int MOST_POSITIONS = 4_000;
    private static final long LONGEST_TABLE = 4_000_000;

    private final RectangleTask task;
    /** Whether there is one growth, which then is part of all sizes. */
    private final boolean single;

    private final boolean legal;
    private final CpModel model = new CpModel();
    private final List<IntVar> xs = new ArrayList<>();
    private final List<IntVar> ys = new ArrayList<>();
    private final Map<Integer, BoolVar> turned = new HashMap<>();
    private final Scale scaleX;
    private final Scale scaleY;
    private final long growX;
    private final boolean empty;

    /** Returns the model of rectangles grown by the gap: every packing of it is legal. */
    static StripModel grown(RectangleTask task, long least, long below) {
        return new StripModel(task, List.of(new Size(task.gap(), task.gap())), true, least, below);
    }

    /** Returns a model that includes every legal packing: grown by no more than corners are apart along some axis. */
    static StripModel cornered(RectangleTask task, long least, long below) {
        long apart = Gaps.cornered(task.gap());
        return new StripModel(task, List.of(new Size(apart, apart)), false, least, below);
    }

    /** Returns a model that includes every legal packing: rectangles lap over along an axis only a gap apart along the other. */
    static StripModel relaxed(RectangleTask task, long least, long below) {
        return new StripModel(task, List.of(new Size(task.gap(), 1), new Size(1, task.gap())), false, least, below);
    }

    private StripModel(RectangleTask task, List<Size> growths, boolean legal, long least, long below) {
        this.task = task;
        this.single = growths.size() == 1;
        this.legal = legal;
        this.growX = single ? growths.get(0).width() : 0;
        long growY = single ? growths.get(0).height() : 0;
        this.scaleX = scale(Size::width, growX);
        this.scaleY = scale(Size::height, growY);
        long shortest = scaleX.ceil(least + growX);
        long longest = scaleX.floor(below - 1 + growX);
        this.empty = shortest > longest;
        if (!empty) {
            build(growths, shortest, longest, scaleY.floor(task.height() + growY), growY);
        }
    }

    private void build(List<Size> growths, long shortest, long longest, long height, long growY) {
        IntVar length = model.newIntVar(shortest, longest, "length");
        model.minimize(length);
        Domain columns = positions(Size::width, growX, scaleX, longest);
        Domain rows = positions(Size::height, growY, scaleY, height);
        for (int i = 0; i < task.items().size(); i++) {
            Item item = task.items().get(i);
            xs.add(model.newIntVarFromDomain(columns, "x" + i));
            ys.add(item.atEdge() ? model.newIntVar(0, 0, "y" + i) : model.newIntVarFromDomain(rows, "y" + i));
            if (item.ways().size() > 1) {
                turned.put(i, model.newBoolVar("turned" + i));
            }
        }
        for (Size growth : growths) {
            keepApart(growth, length, height);
        }
        numberEqualItems();
        halve(length);
    }

    /** Adds one growth: in the plain model it is part of the sizes already counted, in units. */
    private void keepApart(Size growth, IntVar length, long height) {
        long moreX = single ? 0 : scaleX.floor(growth.width());
        long moreY = single ? 0 : scaleY.floor(growth.height());
        NoOverlap2dConstraint apart = model.addNoOverlap2D();
        CumulativeConstraint across = model.addCumulative(height + moreY);
        CumulativeConstraint along = model.addCumulative(plus(length, moreX));
        for (int i = 0; i < task.items().size(); i++) {
            LinearExpr width = extent(i, Size::width, growth.width(), scaleX);
            LinearExpr tall = extent(i, Size::height, growth.height(), scaleY);
            LinearExpr right = LinearExpr.newBuilder().add(xs.get(i)).add(width).build();
            LinearExpr top = LinearExpr.newBuilder().add(ys.get(i)).add(tall).build();
            IntervalVar x = model.newIntervalVar(xs.get(i), width, endVar(right, "r" + i), "xs" + i);
            IntervalVar y = model.newIntervalVar(ys.get(i), tall, endVar(top, "t" + i), "ys" + i);
            apart.addRectangle(x, y);
            across.addDemand(x, tall);
            along.addDemand(y, width);
            model.addLessOrEqual(right, plus(length, moreX));
            model.addLessOrEqual(top, height + moreY);
        }
    }

    private LinearArgument endVar(LinearExpr end, String name) {
        if (end.numElements() == 1) {
            return end;
        }
        IntVar var = model.newIntVar(0, Integer.MAX_VALUE, name);
        model.addEquality(var, end);
        return var;
    }

    private static LinearArgument plus(IntVar variable, long more) {
        return LinearExpr.newBuilder().add(variable).add(more).build();
    }

    private LinearExpr extent(int i, ToLongFunction<Size> side, long grow, Scale scale) {
        List<Size> ways = task.items().get(i).ways();
        long first = scale.floor(side.applyAsLong(ways.get(0)) + grow);
        BoolVar turn = turned.get(i);
        if (turn == null) {
            return LinearExpr.constant(first);
        }
        long second = scale.floor(side.applyAsLong(ways.get(1)) + grow);
        return LinearExpr.newBuilder().addTerm(turn, second - first).add(first).build();
    }

    private void numberEqualItems() {
        Map<Item, Integer> last = new HashMap<>();
        for (int i = 0; i < task.items().size(); i++) {
            Integer before = last.put(task.items().get(i), i);
            if (before != null) {
                model.addLessOrEqual(xs.get(before), xs.get(i));
            }
        }
    }

    /** Mirroring a packing left to right and pushing it left again leaves the first of its kind no farther right. */
    private void halve(IntVar length) {
        int largest = 0;
        for (int i = 0; i < task.items().size(); i++) {
            if (area(i) > area(largest)) {
                largest = i;
            }
        }
        if (single && task.items().get(largest).ways().size() == 1) {
            LinearExpr twice = LinearExpr.newBuilder()
                    .addTerm(xs.get(largest), 2)
                    .add(extent(largest, Size::width, growX, scaleX))
                    .build();
            model.addLessOrEqual(twice, length);
        }
    }

    private double area(int i) {
        Size size = task.items().get(i).onlyWay();
        return (double) size.width() * size.height();
    }

    /**
     * Returns the scale of one axis. Where there is one growth, it is part of the sizes. With more, lengths are sums of
     * sizes, gaps and single micrometres, no more of each than there are items.
     */
    private Scale scale(ToLongFunction<Size> side, long grow) {
        long unit = single ? 0 : task.gap();
        for (Item item : task.items()) {
            for (Size way : item.ways()) {
                unit = gcd(unit, side.applyAsLong(way) + grow);
            }
        }
        int parts = single ? 1 : task.items().size() + 1;
        return single || parts < unit ? new Scale(unit, parts) : new Scale(1, 1);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }

    private Domain positions(ToLongFunction<Size> side, long grow, Scale scale, long end) {
        if (!single || end > LONGEST_TABLE) {
            return new Domain(0, end);
        }
        BitSet reached = new BitSet((int) end + 1);
        reached.set(0);
        for (Item item : task.items()) {
            BitSet before = (BitSet) reached.clone();
            for (Size way : item.ways()) {
                int size = (int) scale.floor(side.applyAsLong(way) + grow);
                for (int at = before.nextSetBit(0); at >= 0 && at + size <= end; at = before.nextSetBit(at + 1)) {
                    reached.set(at + size);
                }
            }
        }
        return reached.cardinality() > MOST_POSITIONS
                ? new Domain(0, end)
                : Domain.fromValues(reached.stream().mapToLong(at -> at).toArray());
    }

    CpModel model() {
        return model;
    }

    /** Says whether there is nothing between the least length and the one to be beaten. */
    boolean isEmpty() {
        return empty;
    }

    /** Says whether every packing of the model keeps the gap. */
    boolean isLegal() {
        return legal;
    }

    /** Returns a length of the model in micrometres. */
    long length(long units) {
        return scaleX.micrometres(units) - growX;
    }

    Packing packing(ToLongFunction<LinearArgument> value) {
        List<Spot> spots = new ArrayList<>();
        long end = 0;
        for (int i = 0; i < task.items().size(); i++) {
            BoolVar turn = turned.get(i);
            int way = turn == null ? 0 : (int) value.applyAsLong(turn);
            long x = scaleX.micrometres(value.applyAsLong(xs.get(i)));
            spots.add(new Spot(way, x, scaleY.micrometres(value.applyAsLong(ys.get(i)))));
            end = Math.max(end, x + task.items().get(i).ways().get(way).width());
        }
        return new Packing(spots, end);
    }
}
