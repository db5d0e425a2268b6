package lengthwise.solver;

import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;

/**
 * Builds a first legal layout, at once and for any order: bottom-left-fill on a raster. Pieces are taken from the
 * largest to the smallest; each goes where its right end is least. A mask covers every square that its shape may touch,
 * so the layout is legal whatever the raster.
 *
 * <p>Reference: after S. Chehrazad, D. Roose, T. Wauters, <i>A fast and scalable bottom-left-fill algorithm to solve
 * nesting problems using a semi-discrete representation</i>, EJOR 300, 2022.
 */
final class FirstLayout {
    private final PreparedTask task;
    private final long square;
    private Raster pieces;
    private final Raster obstacles;
    private final Map<MaskKey, Mask> masks = new HashMap<>();
    private final Map<Shape, Long> firstFreeX = new HashMap<>();
    /** How far the lattices of each phase are moved, as far as that is settled. */
    private final Map<Integer, Point> ways;

    /** Whether pieces are being placed that have to lie near to each other, and where these may begin. */
    private boolean inGroup;

    private long startOfGroup;

    private final Variant[] chosen;
    private final long[] x;
    private final long[] y;

    private record MaskKey(Shape shape, long x, long y, long margin) {}

    private FirstLayout(PreparedTask task, int rows, Map<Integer, Point> ways) {
        this.task = task;
        this.ways = new HashMap<>(ways);
        this.square = Math.max(1, Math.max(task.height(), task.longestSide() / 4) / rows + 1);
        this.pieces = new Raster((int) (task.height() / square) + 1);
        this.obstacles = new Raster((int) (task.height() / square) + 1);
        this.chosen = new Variant[task.size()];
        this.x = new long[task.size()];
        this.y = new long[task.size()];
        for (Shape obstacle : task.obstacles()) {
            obstacles.take(Mask.of(task.exact(obstacle), 0, 0, square, 0), 0, 0);
        }
    }

    /** The orders in which pieces are tried, the usual best one first. */
    static List<Comparator<Integer>> orders(PreparedTask task) {
        return List.of(
                Comparator.comparingLong(i -> -area(task, i)),
                Comparator.comparingLong(
                        i -> -task.variants(i).get(0).shape().box().width()),
                Comparator.comparingLong(
                        i -> -task.variants(i).get(0).shape().box().height()));
    }

    static long area(PreparedTask task, int demand) {
        return task.variants(demand).get(0).shape().ring().doubleArea();
    }

    /** Returns the layout that some order of the pieces gives, or nothing if a piece with a window found no room. */
    static Optional<Layout> build(PreparedTask task, int rows, Comparator<Integer> order) {
        return build(task, rows, order, Map.of());
    }

    /**
     * Returns likewise the layout of a task with lattices that may be moved. The first piece of each phase goes anywhere, and
     * the others follow it.
     *
     * @param ways how far the lattices are moved, for phases where that is not to be left to the first piece
     */
    static Optional<Layout> build(PreparedTask task, int rows, Comparator<Integer> order, Map<Integer, Point> ways) {
        FirstLayout layout = new FirstLayout(task, rows, ways);
        List<Integer> sequence = IntStream.range(0, task.size())
                .boxed()
                .sorted(Comparator.<Integer>comparingInt(
                                i -> task.variants(i).get(0).region().isWindow() ? 0 : 1)
                        .thenComparing(order)
                        .thenComparing(Comparator.naturalOrder()))
                .toList();
        return layout.placeAll(sequence)
                ? task.legal(layout.chosen, layout.x, layout.y, task::simple)
                : Optional.empty();
    }

    private boolean placeAll(List<Integer> sequence) {
        if (!task.nearness().isEmpty()) {
            sequence.stream()
                    .filter(i -> task.variants(i).get(0).region().isLaid())
                    .forEach(this::place);
        }
        for (int demand : sequence) {
            boolean alone = task.nearness().fellowsOf(demand).length == 0;
            if (chosen[demand] == null && !(alone ? place(demand) : placeGroup(demand, sequence))) {
                return false;
            }
        }
        return true;
    }

    /** Places a piece and all that have to lie near to it where there is room, else behind everything. */
    private boolean placeGroup(int first, List<Integer> sequence) {
        Set<Integer> near = Set.copyOf(task.nearness().groupOf(first));
        List<Integer> group = sequence.stream()
                .filter(i -> chosen[i] == null && near.contains(i))
                .toList();
        inGroup = true;
        Raster before = pieces.copy();
        Map<Integer, Point> waysBefore = Map.copyOf(ways);
        for (long from : new long[] {0, end()}) {
            startOfGroup = from;
            if (group.stream().allMatch(this::place)) {
                inGroup = false;
                return true;
            }
            for (int member : group) {
                chosen[member] = null;
            }
            pieces = before.copy();
            ways.clear();
            ways.putAll(waysBefore);
        }
        return false;
    }

    private long end() {
        return IntStream.range(0, chosen.length)
                .filter(i -> chosen[i] != null)
                .mapToLong(i -> x[i] + chosen[i].shape().box().maxX())
                .max()
                .orElse(0);
    }

    /** Returns a variant where the pieces that lie near to it let it lie. */
    private Variant near(Variant variant, int demand) {
        Nearness nearness = task.nearness();
        if (nearness.fellowsOf(demand).length == 0 || variant.region().isLaid()) {
            return variant;
        }
        Box box = variant.shape().box();
        long fromX = startOfGroup - box.minX();
        long toX = Long.MAX_VALUE / 4;
        long fromY = Long.MIN_VALUE / 4;
        long toY = Long.MAX_VALUE / 4;
        for (int fellow : nearness.fellowsOf(demand)) {
            if (chosen[fellow] != null) {
                Box other = chosen[fellow].shape().box();
                fromX = Math.max(fromX, x[fellow] + other.maxX() - nearness.alongX(demand, fellow) - box.minX());
                toX = Math.min(toX, x[fellow] + other.minX() + nearness.alongX(demand, fellow) - box.maxX());
                fromY = Math.max(fromY, y[fellow] + other.maxY() - nearness.alongY(demand, fellow) - box.minY());
                toY = Math.min(toY, y[fellow] + other.minY() + nearness.alongY(demand, fellow) - box.maxY());
            }
        }
        Region region = variant.region().within(fromX, toX, fromY, toY);
        return new Variant(variant.orientation(), variant.shape(), variant.shift(), region);
    }

    private boolean place(int demand) {
        long bestEnd = Long.MAX_VALUE;
        long bestX = 0;
        long bestY = 0;
        Variant best = null;
        int phase = task.phaseOf(demand);
        for (Variant inGeneral : task.variants(demand)) {
            if (!bondAllows(demand, inGeneral)) {
                continue;
            }
            Variant variant = near(phase < 0 ? inGeneral : inPhase(inGeneral, phase, demand), demand);
            long[] spot = spot(variant, bestEnd);
            if (spot.length > 0) {
                bestX = spot[0];
                bestY = spot[1];
                best = variant;
                bestEnd = bestX + variant.shape().box().maxX();
            }
        }
        if (best == null) {
            return false;
        }
        if (phase >= 0 && !ways.containsKey(phase)) {
            settle(phase, demand, best, bestX, bestY);
        }
        chosen[demand] = best;
        x[demand] = bestX;
        y[demand] = bestY;
        pieces.take(Mask.of(task.simple(best.shape()), bestX, bestY, square, 0), 0, 0);
        return true;
    }

    private Variant inPhase(Variant variant, int phase, int demand) {
        Point way = ways.get(phase);
        Region region =
                way == null ? variant.region().everywhere() : variant.region().moved(turned(way, phase, demand));
        return new Variant(variant.orientation(), variant.shape(), variant.shift(), region);
    }

    /** Moves the lattices of a phase to where its first piece lies. */
    private void settle(int phase, int demand, Variant lies, long atX, long atY) {
        for (Variant variant : task.variants(demand)) {
            if (variant.orientation().equals(lies.orientation())) {
                ways.put(phase, turned(variant.region().wayTo(atX, atY), phase, demand));
            }
        }
    }

    private Point turned(Point way, int phase, int demand) {
        return task.phases().get(phase).mirrored().contains(demand) ? new Point(way.x(), -way.y()) : way;
    }

    private long[] spot(Variant variant, long endBefore) {
        if (variant.region().isLaid()) {
            // laid pieces may touch, which the raster does not see
            long[] cell = variant.region().cells(Long.MAX_VALUE / 4);
            return new long[] {cell[0], cell[2]};
        }
        return variant.region().isLattice() ? onLattice(variant, endBefore) : free(variant, endBefore);
    }

    private boolean bondAllows(int demand, Variant variant) {
        int bond = task.bondOf(demand);
        boolean turnAllowed = bond < 0
                || task.members(bond).stream()
                        .allMatch(member -> chosen[member] == null
                                || PreparedTask.turn(chosen[member]) == PreparedTask.turn(variant));
        return turnAllowed && task.isTiltAllowed(demand, variant, chosen);
    }

    /** Returns the leftmost, then lowest position by whole squares from the corner of the region, ending before a limit. */
    private long[] free(Variant variant, long endBefore) {
        long[] cells = variant.region().cells(Long.MAX_VALUE / 4);
        long[] best = new long[0];
        for (int c = 0; c < cells.length; c += 4) {
            long[] found = free(variant, endBefore, Arrays.copyOfRange(cells, c, c + 4), cells.length == 4);
            if (found.length > 0 && (best.length == 0 || found[0] < best[0])) {
                best = found;
            }
        }
        return best;
    }

    private long[] free(Variant variant, long endBefore, long[] cell, boolean onlyCell) {
        Shape shape = variant.shape();
        boolean everywhere = onlyCell && !inGroup && !variant.region().isWindow() && cell[2] < cell[3];
        long from = everywhere ? firstFreeX.getOrDefault(shape, cell[0]) : cell[0];
        long last = Math.min(cell[1], endBefore - 1 - shape.box().maxX());
        int steps = (int) ((cell[3] - cell[2]) / square);
        // whole squares apart, all positions but the highest look the same on the raster
        Look look = look(shape, from, cell[2]);
        Look highest = look(shape, from, cell[3]);
        boolean besides = cell[2] + steps * square < cell[3];
        Mask bare = look.bare();
        for (long tryX = from; tryX <= last; tryX += square) {
            // most columns have no room at any height, which one look tells; at the highest a row less may be covered
            int tallest = (int) Math.floorDiv(tryX, square) + bare.tallestColumn;
            if (pieces.longestFree(tallest) < bare.tallest - 1) {
                continue;
            }
            int step = 0;
            while (step <= steps) {
                int blocked = rowsToClear(look, tryX, cell[2] + step * square);
                if (blocked == 0) {
                    break;
                }
                step += blocked;
            }
            if (step <= steps || (besides && rowsToClear(highest, tryX, cell[3]) == 0)) {
                if (everywhere) {
                    firstFreeX.put(shape, tryX);
                }
                return new long[] {tryX, step <= steps ? cell[2] + step * square : cell[3]};
            }
        }
        return new long[0];
    }

    /**
     * Returns the leftmost position, and of several the first in the order of the cells. There are too many different rests of a raster square for a
     * mask each, so one mask that covers them all is used.
     */
    private long[] onLattice(Variant variant, long endBefore) {
        Shape shape = variant.shape();
        long done = -1;
        long length = 4 * (shape.box().width() + square);
        while (true) {
            long limit = Math.min(length, endBefore - 1);
            long[] cells = variant.region().cells(limit);
            long[] first = new long[0];
            for (int c = 0; c < cells.length; c += 4) {
                long last = first.length == 0 ? cells[c + 1] : Math.min(cells[c + 1], first[0] - 1);
                long[] found = inCell(shape, Math.max(cells[c], done + 1), last, cells[c + 2], cells[c + 3]);
                first = found.length == 0 ? first : found;
            }
            if (first.length > 0) {
                return first;
            }
            if (limit < length || length > Integer.MAX_VALUE) {
                return new long[0];
            }
            done = variant.region().maxX(limit);
            length *= 2;
        }
    }

    private long[] inCell(Shape shape, long fromX, long toX, long fromY, long toY) {
        for (long tryX = fromX; tryX <= toX; tryX += square) {
            for (long tryY = fromY; tryY <= toY; tryY += square) {
                if (isFreeAnywhereIn(shape, Math.floorDiv(tryX, square), Math.floorDiv(tryY, square))) {
                    return new long[] {tryX, tryY};
                }
            }
        }
        return new long[0];
    }

    /** What a shape covers of the raster at a position, but for whole squares: with its gap, and without. */
    private record Look(Mask withGap, Mask bare) {}

    private Look look(Shape shape, long atX, long atY) {
        long restX = Math.floorMod(atX, square);
        long restY = Math.floorMod(atY, square);
        return new Look(mask(shape, restX, restY, task.largestGap()), mask(shape, restX, restY, 0));
    }

    private int rowsToClear(Look look, long tryX, long tryY) {
        int column = (int) Math.floorDiv(tryX, square);
        int row = (int) Math.floorDiv(tryY, square);
        int blocked = pieces.rowsToClear(look.withGap(), column, row);
        return blocked > 0 || task.obstacles().isEmpty() ? blocked : obstacles.rowsToClear(look.bare(), column, row);
    }

    private boolean isFreeAnywhereIn(Shape shape, long column, long row) {
        long half = (square + 1) / 2;
        return pieces.isFree(mask(shape, half, half, task.largestGap() + half), (int) column, (int) row)
                && (task.obstacles().isEmpty()
                        || obstacles.isFree(mask(shape, half, half, half), (int) column, (int) row));
    }

    private Mask mask(Shape shape, long restX, long restY, long margin) {
        return masks.computeIfAbsent(
                new MaskKey(shape, restX, restY, margin),
                key -> Mask.of(task.simple(shape), key.x(), key.y(), square, key.margin()));
    }
}
