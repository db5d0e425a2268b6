package lengthwise.solver;

import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReferenceArray;
import lengthwise.geometry.NoFitPolygon;
import lengthwise.geometry.Orientation;
import org.jspecify.annotations.Nullable;

/**
 * The pairs of shapes of a task, made when first asked for and shared by all workers. No-fit polygons are kept once for
 * all turned and mirrored copies of a pair: with {@code g} a turn or flip, {@code NFP(gA, gB) = g NFP(A, B)} and
 * {@code NFP(B, A) = −NFP(A, B)}. When the store is full, everything in it is let go; what a pair answers never depends
 * on that.
 */
final class Pairs {
    private static final long MOST_BYTES = 400L << 20;

    private final PreparedTask task;
    private final double step;
    private final double margin;
    private final int shapes;
    private final AtomicReferenceArray<@Nullable Pair> pairs;
    private final ConcurrentHashMap<Long, DepthMap> maps = new ConcurrentHashMap<>();
    private final AtomicLong bytes = new AtomicLong();

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
    }

    double step() {
        return step;
    }

    Pair of(Shape fixed, Shape moving) {
        int index = fixed.index() * shapes + moving.index();
        Pair known = pairs.get(index);
        return known != null ? known : make(fixed, moving, index);
    }

    private Pair make(Shape fixed, Shape moving, int index) {
        if (bytes.get() > MOST_BYTES) {
            forgetAll();
        }
        Orientation relative = fixed.orientation().inverse().after(moving.orientation());
        Orientation toFixed = fixed.orientation().inverse();
        double reach = fixed.gapTo(moving) + margin;
        Pair pair;
        if (fixed.base() <= moving.base()) {
            DepthMap map = map(fixed.base(), moving.base(), relative);
            pair = new Pair(map, toFixed, false, reach, step);
        } else {
            DepthMap map = map(moving.base(), fixed.base(), relative.inverse());
            pair = new Pair(map, relative.inverse().after(toFixed), true, reach, step);
        }
        bytes.addAndGet(pair.bytes());
        pairs.set(index, pair);
        return pair;
    }

    private DepthMap map(int fixed, int moving, Orientation relative) {
        int code = (relative.flipped() ? 4 : 0) + relative.turn().quarters();
        long key = ((long) fixed * task.bases() + moving) * 8 + code;
        DepthMap known = maps.get(key);
        if (known == null) {
            NoFitPolygon polygon =
                    NoFitPolygon.of(task.simple(fixed), task.simple(moving).oriented(relative));
            known = new DepthMap(polygon, task.largestGap() + margin);
            if (maps.putIfAbsent(key, known) == null) {
                bytes.addAndGet(known.bytes());
            }
        }
        return known;
    }

    private void forgetAll() {
        bytes.set(0);
        maps.clear();
        for (int i = 0; i < pairs.length(); i++) {
            pairs.set(i, null);
        }
    }
}
