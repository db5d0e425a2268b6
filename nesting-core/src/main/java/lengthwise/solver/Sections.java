package lengthwise.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;
import org.jspecify.annotations.Nullable;

/**
 * Lays a long marker section by section, from left to right, so that the time of a move and the memory depend on a section
 * and not on the order. Pieces are dealt out so that all sections have the like mix of large and small. A
 * section is searched like an order of its own, against the pieces laid before; its ragged end is then taken up again with
 * the next section, so that no straight cut is left between them.
 */
final class Sections {
    /** Pieces of a section. */
    private static final int PIECES = 100;
    /** Most pieces of one shape that are dealt out together. */
    private static final int TOGETHER = 4;
    /** How much of a section is taken up again, as a share of its length. */
    private static final double RAGGED = 0.2;

    private final Run run;
    private final PreparedTask prepared;
    private final LayoutTask task;
    private final @Nullable Pose[] laid;
    private final Box[] boxes;

    Sections(Run run, PreparedTask prepared) {
        this.run = run;
        this.prepared = prepared;
        this.task = prepared.layoutTask();
        this.laid = new Pose[task.demands().size()];
        this.boxes = new Box[laid.length];
    }

    /** Says whether a task is long enough, and free of pieces that have to lie at a certain part of the strip. */
    static boolean suit(PreparedTask task) {
        return task.size() >= 2 * PIECES
                && task.layoutTask().demands().stream()
                        .map(demand -> demand.domain().positions())
                        .noneMatch(at -> at instanceof Positions.Window || at instanceof Positions.Laid);
    }

    /** Lays all sections; the run is offered every layout that comes of it. */
    void lay() {
        List<List<Integer>> sections = dealt();
        List<Integer> ragged = List.of();
        int left = task.demands().size();
        for (int k = 0; k < sections.size() && !isOver(); k++) {
            List<Integer> own = sections.get(k);
            double from = run.fraction(0);
            double to = from + Math.max(1e-9, (1 - from) * own.size() / left);
            left -= own.size();
            List<Integer> pieces =
                    Stream.concat(ragged.stream(), own.stream()).sorted().toList();
            long before = end();
            if (!section(pieces, from, to)) {
                break;
            }
            ragged = k + 1 < sections.size() ? takeUpFrom(end() - (long) (RAGGED * (end() - before))) : List.of();
        }
        layRest();
        layout().ifPresent(layout -> run.offer(layout, 0));
    }

    private boolean isOver() {
        return run.cancelled() || run.fraction(0) >= 1;
    }

    /**
     * Deals the pieces out, the largest first, always to the section with the least area. Bonded ones stay together, and a
     * few of a shape too, so that a section has fewer pairs of shapes than pieces.
     */
    private List<List<Integer>> dealt() {
        int count = task.demands().size() / PIECES;
        List<List<Integer>> sections = IntStream.range(0, count)
                .<List<Integer>>mapToObj(k -> new ArrayList<>())
                .toList();
        long[] areas = new long[count];
        for (List<Integer> unit : units()) {
            int least = 0;
            for (int k = 1; k < count; k++) {
                least = areas[k] < areas[least] ? k : least;
            }
            sections.get(least).addAll(unit);
            areas[least] += area(unit);
        }
        return sections;
    }

    private List<List<Integer>> units() {
        List<List<Integer>> units = new ArrayList<>();
        Map<Shape, List<Integer>> open = new HashMap<>();
        for (int i = 0; i < laid.length; i++) {
            List<Integer> bonded = bonded(i);
            if (bonded.size() > 1) {
                if (bonded.get(0).equals(i)) {
                    units.add(bonded);
                }
                continue;
            }
            Shape shape = prepared.variants(i).get(0).shape();
            List<Integer> unit = open.get(shape);
            if (unit == null || unit.size() == TOGETHER) {
                unit = new ArrayList<>();
                open.put(shape, unit);
                units.add(unit);
            }
            unit.add(i);
        }
        units.sort(Comparator.comparingLong(unit -> -area(unit)));
        return units;
    }

    /** Returns a demand and all that one bond or another holds together with it, in their order. */
    private List<Integer> bonded(int demand) {
        TreeSet<Integer> bonded = new TreeSet<>(List.of(demand));
        int before = 0;
        while (bonded.size() > before) {
            before = bonded.size();
            for (int i : List.copyOf(bonded)) {
                bonded.addAll(together(i));
                bonded.addAll(prepared.nearness().groupOf(i));
            }
        }
        return List.copyOf(bonded);
    }

    private List<Integer> together(int demand) {
        int bond = prepared.bondOf(demand);
        return bond < 0 ? List.of(demand) : prepared.members(bond);
    }

    private long area(List<Integer> demands) {
        return demands.stream()
                .mapToLong(i -> task.demands().get(i).outline().doubleArea())
                .sum();
    }

    private long end() {
        return Arrays.stream(boxes)
                .filter(box -> box != null)
                .mapToLong(Box::maxX)
                .max()
                .orElse(0);
    }

    /** Takes up the pieces that end beyond a length, with all that have to lie near to them, and returns them. */
    private List<Integer> takeUpFrom(long length) {
        return IntStream.range(0, laid.length)
                .filter(i -> laid[i] != null && boxes[i].maxX() > length)
                .boxed()
                .flatMap(i -> prepared.nearness().groupOf(i).stream())
                .filter(i -> laid[i] != null)
                .distinct()
                .sorted()
                .toList();
    }

    /** Searches for places of some pieces right of all others that are laid; says whether there are any. */
    private boolean section(List<Integer> pieces, double from, double to) {
        long edge = pieces.stream()
                .filter(i -> laid[i] != null)
                .mapToLong(i -> boxes[i].minX())
                .min()
                .orElse(end());
        pieces.forEach(i -> laid[i] = null);
        List<Integer> neighbours = neighbours(edge);
        Layout found = run.section(part(neighbours, pieces, edge), from, to);
        if (found.poses().isEmpty()) {
            return false;
        }
        place(found, neighbours, pieces, edge);
        return true;
    }

    /** Lays what is left when the budget has run out, as a first layout would. */
    private void layRest() {
        List<Integer> rest = IntStream.range(0, laid.length)
                .filter(i -> laid[i] == null)
                .boxed()
                .toList();
        if (!rest.isEmpty()) {
            long edge = Math.max(0, end() - prepared.longestSide());
            List<Integer> neighbours = neighbours(edge);
            run.first(part(neighbours, rest, edge)).ifPresent(layout -> place(layout, neighbours, rest, edge));
        }
    }

    /** Returns the laid pieces that can be in the way of others right of an edge. */
    private List<Integer> neighbours(long edge) {
        return IntStream.range(0, laid.length)
                .filter(i -> laid[i] != null && boxes[i].maxX() > edge - prepared.largestGap())
                .boxed()
                .toList();
    }

    private void place(Layout layout, List<Integer> neighbours, List<Integer> pieces, long edge) {
        for (int k = 0; k < pieces.size(); k++) {
            Pose pose = layout.poses().get(neighbours.size() + k);
            int i = pieces.get(k);
            laid[i] = new Pose(pose.orientation(), pose.offset().plus(new Point(edge, 0)));
            boxes[i] = laid[i].apply(task.demands().get(i).outline()).box();
        }
    }

    /** Returns the task of laying pieces beside their neighbours in a strip that begins at an edge. */
    private LayoutTask part(List<Integer> neighbours, List<Integer> pieces, long edge) {
        Point back = new Point(-edge, 0);
        List<Demand> demands = new ArrayList<>();
        List<Bond> bonds = new ArrayList<>();
        int[] number = new int[laid.length];
        Arrays.fill(number, -1);
        for (int i : neighbours) {
            number[i] = demands.size();
            Demand demand = task.demands().get(i);
            Pose pose = laid[i];
            demands.add(new Demand(
                    demand.outline(),
                    new PlacementDomain(
                            List.of(pose.orientation()),
                            new Positions.Laid(pose.offset().plus(back))),
                    demand.gap()));
        }
        for (int i : pieces) {
            number[i] = demands.size();
            Demand demand = task.demands().get(i);
            demands.add(new Demand(demand.outline(), moved(domain(i), back), demand.gap()));
        }
        for (Bond bond : task.bonds()) {
            bond.renumbered(i -> Optional.of(number[i]).filter(n -> n >= neighbours.size()))
                    .ifPresent(bonds::add);
        }
        List<Obstacle> obstacles = new ArrayList<>();
        for (Obstacle obstacle : task.obstacles()) {
            if (obstacle.region().box().maxX() > edge) {
                obstacles.add(new Obstacle(obstacle.region().moved(back)));
            }
        }
        return task.with(demands, obstacles, bonds);
    }

    /** Returns the domain of a demand; where a bonded one is laid, at the turn of that. */
    private PlacementDomain domain(int demand) {
        PlacementDomain domain = task.demands().get(demand).domain();
        Optional<Pose> fellow = together(demand).stream()
                .filter(i -> laid[i] != null)
                .map(i -> laid[i])
                .findFirst();
        return fellow.map(pose -> new PlacementDomain(
                        domain.orientations().stream()
                                .filter(way -> way.turn() == pose.orientation().turn())
                                .toList(),
                        domain.positions()))
                .orElse(domain);
    }

    private static PlacementDomain moved(PlacementDomain domain, Point by) {
        if (domain.positions() instanceof Positions.Lattice lattice) {
            return new PlacementDomain(domain.orientations(), lattice.moved(by));
        }
        if (domain.positions() instanceof Positions.Cells cells) {
            return new PlacementDomain(domain.orientations(), cells.moved(by));
        }
        return domain;
    }

    /** Returns the marker of what is laid, or nothing if something is not. */
    private Optional<Layout> layout() {
        Variant[] chosen = new Variant[laid.length];
        long[] x = new long[laid.length];
        long[] y = new long[laid.length];
        for (int i = 0; i < laid.length; i++) {
            Pose pose = laid[i];
            if (pose == null) {
                return Optional.empty();
            }
            for (Variant variant : prepared.variants(i)) {
                if (variant.orientation().equals(pose.orientation())) {
                    Point at = pose.offset().minus(variant.shift());
                    chosen[i] = variant;
                    x[i] = at.x();
                    y[i] = at.y();
                }
            }
        }
        return prepared.legal(chosen, x, y, prepared::exact);
    }
}
