package lengthwise.solver;

import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.BooleanSupplier;
import lengthwise.geometry.Box;
import lengthwise.geometry.NoFitPolygon;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import org.jspecify.annotations.Nullable;

/**
 * The pairs of shapes of a task, made when first asked for and shared by all workers. No-fit polygons are kept once for
 * all turned and mirrored copies of a pair: with {@code g} a turn or flip, {@code NFP(gA, gB) = g NFP(A, B)} and
 * {@code NFP(B, A) = −NFP(A, B)}; a half turn negates, so that the pair of two shapes serves for both given a half
 * turn and changed about as well. When the store is full, what was added on demand is let go, or everything; what a pair answers never
 * depends on that.
 */
final class Pairs {
    /** The store may take this share of the heap. */
    private static final double SHARE_OF_HEAP = 0.3;

    private static final Orientation HALF_TURN = new Orientation(false, QuarterTurn.HALF);

    private final PreparedTask task;
    private final double step;
    private final double margin;
    private final int shapes;
    /** By moving shape, then by fixed one: a move asks for all pairs of the piece that moves. */
    private final AtomicReferenceArray<@Nullable Pair> pairs;

    private final ConcurrentHashMap<Long, DepthMap> maps = new ConcurrentHashMap<>();
    private final ConcurrentHashMap<ImageKey, Pair> images = new ConcurrentHashMap<>();
    private final LongAdder moves = new LongAdder();
    private final AtomicLong bytes = new AtomicLong();
    private final long mostBytes = (long) (SHARE_OF_HEAP * Runtime.getRuntime().maxMemory());
    /** The boxes of the outlines that the search uses, by shape: minX, maxX, minY, maxY. */
    private final double[] boxes;

    private record ImageKey(long map, int toMap, double reach) {}

    /**
     * Makes an empty store.
     *
     * @param step between the nodes of a field, in micrometres
     * @param margin distance to keep beyond the gap
     */
    Pairs(PreparedTask task, double step, double margin) {
        this.task = task;
        this.step = step;
        this.margin = margin;
        this.shapes = task.shapes().size();
        this.pairs = new AtomicReferenceArray<>(shapes * shapes);
        this.boxes = new double[4 * shapes];
        for (Shape shape : task.shapes()) {
            Box box = task.simple(shape).ring().box();
            int at = 4 * shape.index();
            boxes[at] = (double) box.minX();
            boxes[at + 1] = (double) box.maxX();
            boxes[at + 2] = (double) box.minY();
            boxes[at + 3] = (double) box.maxY();
        }
    }

    double step() {
        return step;
    }

    Pair of(Shape fixed, Shape moving) {
        int index = moving.index() * shapes + fixed.index();
        Pair known = pairs.get(index);
        return known != null ? known : make(fixed, moving, index);
    }

    /** Returns how far the moving shape is from hindering the fixed one no more; boxes that do not meet need no pair. */
    double hindrance(Shape fixed, Shape moving, double dx, double dy) {
        int f = 4 * fixed.index();
        int m = 4 * moving.index();
        double reach = fixed.gapTo(moving) + margin;
        boolean apart = boxes[m] + dx >= boxes[f + 1] + reach
                || boxes[m + 1] + dx <= boxes[f] - reach
                || boxes[m + 2] + dy >= boxes[f + 3] + reach
                || boxes[m + 3] + dy <= boxes[f + 2] - reach;
        return apart ? 0 : of(fixed, moving).hindrance(dx, dy);
    }

    /** Notes that a piece was moved. */
    void moved() {
        moves.increment();
    }

    /** Returns how many pieces all workers have moved. */
    long moves() {
        return moves.sum();
    }

    /**
     * Makes the maps of a part of the pairs before they are asked for, so that workers who begin alike do not all make the
     * same ones at the same time.
     *
     * @param worker whose part it is, below {@code workers}
     */
    void prepare(int worker, int workers, BooleanSupplier enough) {
        long made = 0;
        Set<Long> seen = new HashSet<>();
        for (Shape fixed : task.shapes()) {
            for (Shape moving : task.shapes()) {
                if (fixed.base() <= moving.base()) {
                    Orientation relative = fixed.orientation().inverse().after(moving.orientation());
                    long key = key(fixed.base(), moving.base(), relative);
                    if (seen.add(key) && made++ % workers == worker && !enough.getAsBoolean()) {
                        map(fixed.base(), moving.base(), relative, key);
                    }
                }
            }
        }
    }

    private Pair make(Shape fixed, Shape moving, int index) {
        Orientation relative = fixed.orientation().inverse().after(moving.orientation());
        Orientation toFixed = fixed.orientation().inverse();
        double reach = fixed.gapTo(moving) + margin;
        Pair pair = fixed.base() <= moving.base()
                ? image(fixed.base(), moving.base(), relative, toFixed, reach)
                : image(
                        moving.base(),
                        fixed.base(),
                        relative.inverse(),
                        HALF_TURN.after(relative.inverse()).after(toFixed),
                        reach);
        pairs.set(index, pair);
        return pair;
    }

    private Pair image(int fixed, int moving, Orientation relative, Orientation toMap, double reach) {
        long key = key(fixed, moving, relative);
        ImageKey imageKey = new ImageKey(key, code(toMap), reach);
        Pair known = images.get(imageKey);
        if (known != null) {
            return known;
        }
        Pair pair = new Pair(map(fixed, moving, relative, key), toMap, reach, step);
        Pair other = images.putIfAbsent(imageKey, pair);
        if (other != null) {
            return other;
        }
        grow(pair.bytes());
        return pair;
    }

    private DepthMap map(int fixed, int moving, Orientation relative, long key) {
        DepthMap known = maps.get(key);
        if (known != null) {
            return known;
        }
        NoFitPolygon polygon =
                NoFitPolygon.of(task.simple(fixed), task.simple(moving).oriented(relative));
        DepthMap map = new DepthMap(polygon, task.largestGap() + margin, this::grow);
        DepthMap other = maps.putIfAbsent(key, map);
        return other != null ? other : map;
    }

    private long key(int fixed, int moving, Orientation relative) {
        return ((long) fixed * task.bases() + moving) * 8 + code(relative);
    }

    private static int code(Orientation orientation) {
        return (orientation.flipped() ? 4 : 0) + orientation.turn().quarters();
    }

    private void grow(long by) {
        if (bytes.addAndGet(by) > mostBytes) {
            shrink();
        }
    }

    /** Lets go of what costs least to make again, and if that is not enough, of everything. */
    private synchronized void shrink() {
        if (bytes.get() <= mostBytes) {
            return;
        }
        for (DepthMap map : maps.values()) {
            bytes.addAndGet(-map.shrink());
        }
        if (bytes.get() > mostBytes / 2) {
            maps.clear();
            images.clear();
            for (int i = 0; i < pairs.length(); i++) {
                pairs.set(i, null);
            }
            bytes.set(0);
        }
    }
}
