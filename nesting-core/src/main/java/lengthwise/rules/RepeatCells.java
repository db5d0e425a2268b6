package lengthwise.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.model.Repeat;
import lengthwise.rules.PlacementDomain.Positions.Cells;

/**
 * The part of one repeat that is left when rectangles are taken out of it or it is kept to some, all of which come again with the
 * repeat: a region on a torus, given back as upright rectangles that may overlap.
 *
 * <p>The repeat is cut into rows where rectangles begin and end. In each row what is left is a few stretches; the largest
 * rectangles over several rows are found by running down from every row, and of these the few are kept that cover most.
 * Stripes have one row, or are turned round.
 */
final class RepeatCells {
    /** More rows than this are replaced by as many of one height. */
    private static final int MOST_ROWS = 160;

    private static final int MOST_CELLS = 40;

    /** A cell is looked at in so many points each way, of which so many lie in no larger cell. */
    private static final int LOOKS = 8;

    private static final int NEW_LOOKS = 3;

    /** Along x and y: of stripes, which repeat one way, that way is x. */
    private final long stepX;

    private final long stepY;
    private final long drop;
    private final boolean turned;
    private final List<Box> out = new ArrayList<>();
    private final List<List<Box>> within = new ArrayList<>();

    RepeatCells(Repeat repeat) {
        long along = repeat.lengthwise().micrometres();
        long across = repeat.crosswise().micrometres();
        this.turned = along == 0;
        this.stepX = turned ? across : along;
        this.stepY = turned ? 0 : across;
        this.drop = repeat.halfDrop() && stepY > 0 ? stepX / 2 : 0;
    }

    /** Takes the insides of rectangles out. */
    void takeOut(List<Box> boxes) {
        boxes.forEach(box -> out.add(turn(box)));
    }

    /** Keeps to what lies in one of some rectangles. */
    void keepTo(List<Box> boxes) {
        within.add(boxes.stream().map(this::turn).toList());
    }

    private Box turn(Box box) {
        return turned ? new Box(box.minY(), box.minX(), box.maxY(), box.maxX()) : box;
    }

    /** A stretch of a row, from some x to a larger or the same one. */
    private record Stretch(long from, long to) {}

    /** A rectangle over the rows from one to before another, counted on through the next repeat. */
    private record Cell(Stretch x, int fromRow, int toRow) {}

    /** Returns what is left as rectangles from the lattice point, endless along an axis that does not repeat. */
    List<Box> left() {
        List<Long> edges = edges();
        List<List<Stretch>> rows = new ArrayList<>();
        for (int r = 0; r + 1 < edges.size(); r++) {
            rows.add(row(edges.get(r), edges.get(r + 1)));
        }
        List<Box> boxes = cells(rows).stream().map(cell -> box(cell, edges)).toList();
        return few(boxes).stream().map(this::turn).toList();
    }

    private Box box(Cell cell, List<Long> edges) {
        int rows = edges.size() - 1;
        long end = edges.get((cell.toRow - 1) % rows + 1) + (cell.toRow - 1) / rows * stepY;
        return stepY == 0
                ? new Box(cell.x.from, -Cells.ENDLESS, cell.x.to, Cells.ENDLESS)
                : new Box(cell.x.from, edges.get(cell.fromRow), cell.x.to, end);
    }

    private List<Long> edges() {
        if (stepY == 0) {
            return List.of(0L, 1L);
        }
        List<List<Box>> all = new ArrayList<>(within);
        all.add(out);
        TreeSet<Long> edges = new TreeSet<>(List.of(0L, stepY));
        all.forEach(boxes -> boxes.stream()
                .flatMapToLong(box -> LongStream.of(box.minY(), box.maxY()))
                .forEach(y -> edges.add(Math.floorMod(y, stepY))));
        if (edges.size() > MOST_ROWS) {
            edges.clear();
            edges.add(stepY);
            for (int i = 0; i < MOST_ROWS; i++) {
                edges.add(stepY * i / MOST_ROWS);
            }
            // where all that is taken out or kept to begins and ends is kept exactly
            for (List<Box> boxes : all) {
                boxes.stream().reduce(Box::union).ifPresent(whole -> {
                    edges.add(Math.floorMod(whole.minY(), stepY));
                    edges.add(Math.floorMod(whole.maxY(), stepY));
                });
            }
        }
        return List.copyOf(edges);
    }

    /** Returns what is left of a row, all that begins within one repeat. */
    private List<Stretch> row(long from, long to) {
        List<Stretch> gone = joined(comingAgain(out.stream(), from, to, /* whole= */ false));
        List<Stretch> left = gone.isEmpty() ? List.of(endless()) : between(gone);
        for (List<Box> boxes : within) {
            left = joined(common(left, joined(comingAgain(boxes.stream(), from, to, /* whole= */ true))));
        }
        return left.stream().anyMatch(this::isEndless) ? List.of(endless()) : beginningInRepeat(left);
    }

    private Stretch endless() {
        return new Stretch(-2 * stepX, 3 * stepX);
    }

    private boolean isEndless(Stretch stretch) {
        return stretch.to - stretch.from >= stepX;
    }

    private List<Stretch> beginningInRepeat(List<Stretch> left) {
        return left.stream()
                .filter(stretch -> stretch.from >= 0 && stretch.from < stepX)
                .toList();
    }

    /** Returns the stretches, over several repeats, of those rectangles that reach into a row, or over the whole of it. */
    private List<Stretch> comingAgain(Stream<Box> boxes, long from, long to, boolean whole) {
        List<Stretch> stretches = new ArrayList<>();
        boxes.forEach(box -> {
            long first = stepY == 0 ? 0 : Math.floorDiv(box.minY() - to, stepY);
            long last = stepY == 0 ? 0 : Math.floorDiv(box.maxY() - from, stepY) + 1;
            for (long k = first; k <= last; k++) {
                long minY = box.minY() - k * stepY;
                long maxY = box.maxY() - k * stepY;
                boolean meets = stepY == 0 || (whole ? minY <= from && maxY >= to : minY < to && maxY > from);
                if (meets) {
                    long minX = box.minX() - (Math.floorMod(k, 2) == 1 ? drop : 0);
                    long start = Math.floorMod(minX, stepX) - 2 * stepX;
                    for (int i = 0; i < 5; i++) {
                        stretches.add(new Stretch(start + i * stepX, start + i * stepX + box.width()));
                    }
                }
            }
        });
        return stretches;
    }

    private static List<Stretch> joined(List<Stretch> stretches) {
        List<Stretch> joined = new ArrayList<>();
        for (Stretch next : stretches.stream()
                .sorted(Comparator.comparingLong(Stretch::from))
                .toList()) {
            Stretch last = joined.isEmpty() ? next : joined.get(joined.size() - 1);
            if (joined.isEmpty() || next.from > last.to) {
                joined.add(next);
            } else {
                joined.set(joined.size() - 1, new Stretch(last.from, Math.max(last.to, next.to)));
            }
        }
        return joined;
    }

    /** Returns what lies between some stretches. */
    private static List<Stretch> between(List<Stretch> gone) {
        List<Stretch> between = new ArrayList<>();
        for (int i = 1; i < gone.size(); i++) {
            between.add(new Stretch(gone.get(i - 1).to, gone.get(i).from));
        }
        return between;
    }

    private static List<Stretch> common(List<Stretch> some, List<Stretch> others) {
        List<Stretch> common = new ArrayList<>();
        for (Stretch one : some) {
            for (Stretch other : others) {
                long from = Math.max(one.from, other.from);
                long to = Math.min(one.to, other.to);
                if (from <= to) {
                    common.add(new Stretch(from, to));
                }
            }
        }
        return common;
    }

    /** Returns the rows, and once more in the next repeat, each over several repeats along it. */
    private List<List<Stretch>> overTwoRepeats(List<List<Stretch>> rows) {
        return IntStream.range(0, 2 * rows.size())
                .mapToObj(number -> {
                    long by = number < rows.size() ? 0 : drop;
                    return rows.get(number % rows.size()).stream()
                            .flatMap(stretch -> LongStream.rangeClosed(-3, 3)
                                    .mapToObj(i ->
                                            new Stretch(stretch.from + by + i * stepX, stretch.to + by + i * stepX)))
                            .toList();
                })
                .toList();
    }

    /** Returns the rectangles that can be made no larger. */
    private List<Cell> cells(List<List<Stretch>> rows) {
        List<Cell> cells = new ArrayList<>();
        List<List<Stretch>> all = overTwoRepeats(rows);
        int count = rows.size();
        for (int first = 0; first < count; first++) {
            List<Stretch> before = all.get((first + 2 * count - 1) % (2 * count));
            List<Stretch> running = rows.get(first);
            for (int row = first; !running.isEmpty(); row++) {
                boolean last = row == first + count - 1;
                List<Stretch> below = last ? List.of() : all.get(row + 1);
                for (Stretch stretch : running) {
                    boolean goesOn = below.stream().anyMatch(other -> holds(other, stretch));
                    boolean cameFrom = before.stream().anyMatch(other -> holds(other, stretch));
                    if (!goesOn && (!cameFrom || last)) {
                        cells.add(new Cell(isEndless(stretch) ? new Stretch(0, stepX) : stretch, first, row + 1));
                    }
                }
                running = narrowed(running, below);
            }
        }
        return cells;
    }

    private List<Stretch> narrowed(List<Stretch> running, List<Stretch> below) {
        return running.stream().anyMatch(this::isEndless)
                ? below.stream().anyMatch(this::isEndless) ? List.of(endless()) : beginningInRepeat(below)
                : common(running, below).stream().distinct().toList();
    }

    private static boolean holds(Stretch outer, Stretch inner) {
        return outer.from <= inner.from && outer.to >= inner.to;
    }

    /** Returns the largest of some rectangles and such as add to what those cover. */
    private List<Box> few(List<Box> boxes) {
        List<Box> kept = new ArrayList<>();
        for (Box box : boxes.stream()
                .distinct()
                .sorted(Comparator.comparingDouble(RepeatCells::area)
                        .reversed()
                        .thenComparingLong(Box::minX)
                        .thenComparingLong(Box::minY))
                .toList()) {
            if (kept.size() < MOST_CELLS && isNew(box, kept)) {
                kept.add(box);
            }
        }
        return kept;
    }

    /** One that is as thin as a point or a line has an area too. */
    private static double area(Box box) {
        return (box.width() + 1.0) * (box.height() + 1.0);
    }

    private boolean isNew(Box box, List<Box> kept) {
        int found = 0;
        for (int i = 0; i < LOOKS; i++) {
            for (int j = 0; j < (stepY == 0 ? 1 : LOOKS); j++) {
                long x = box.minX() + box.width() * (2 * i + 1) / (2 * LOOKS);
                long y = stepY == 0 ? 0 : box.minY() + box.height() * (2 * j + 1) / (2 * LOOKS);
                found += kept.stream().noneMatch(other -> covers(other, x, y)) ? 1 : 0;
            }
        }
        return found >= (stepY == 0 ? 1 : NEW_LOOKS);
    }

    private boolean covers(Box box, long x, long y) {
        long first = stepY == 0 ? 0 : -Math.floorDiv(box.maxY() - y, stepY);
        long last = stepY == 0 ? 0 : Math.floorDiv(y - box.minY(), stepY);
        for (long k = first; k <= last; k++) {
            long from = box.minX() + (Math.floorMod(k, 2) == 1 ? drop : 0);
            if (Math.floorMod(x - from, stepX) <= box.width()) {
                return true;
            }
        }
        return false;
    }

    /**
     * Returns what of some rectangles lies in a window, all of which come again with the repeat.
     *
     * @param window longer than a repeat along an axis where it is not bound
     */
    List<Box> inWindow(List<Box> boxes, Box window) {
        Box view = turn(window);
        List<Box> parts = new ArrayList<>();
        for (Box box : boxes.stream().map(this::turn).toList()) {
            boolean tall = stepY == 0 || view.height() > stepY;
            long first = tall ? 0 : -Math.floorDiv(box.maxY() - view.minY(), stepY);
            long last = tall ? 0 : Math.floorDiv(view.maxY() - box.minY(), stepY);
            for (long k = first; k <= last; k++) {
                Box copy = box.moved(new Point(Math.floorMod(k, 2) == 1 ? drop : 0, k * stepY));
                boolean wide = view.width() > stepX;
                long firstX = wide ? 0 : -Math.floorDiv(copy.maxX() - view.minX(), stepX);
                long lastX = wide ? 0 : Math.floorDiv(view.maxX() - copy.minX(), stepX);
                for (long i = firstX; i <= lastX; i++) {
                    Box there = copy.moved(new Point(i * stepX, 0));
                    parts.add(new Box(
                            wide ? there.minX() : Math.max(there.minX(), view.minX()),
                            tall ? there.minY() : Math.max(there.minY(), view.minY()),
                            wide ? there.maxX() : Math.min(there.maxX(), view.maxX()),
                            tall ? there.maxY() : Math.min(there.maxY(), view.maxY())));
                }
            }
        }
        return parts.stream().distinct().map(this::turn).toList();
    }
}
