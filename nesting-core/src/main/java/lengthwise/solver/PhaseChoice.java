package lengthwise.solver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import lengthwise.geometry.Point;
import lengthwise.rules.Bond;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain.Positions.Lattice;

/**
 * Settles where the lattices may lie that can be moved, before the search: as they come in the shortest of some first layouts.
 * In most of these the first piece of each phase goes anywhere and the others follow, and by turns another of them is the
 * first; in the rest all lattices are moved at random.
 */
final class PhaseChoice {
    private static final int RASTER_ROWS = 128;
    /** Choices of each kind. */
    private static final int CHOICES = 2;

    private static final int MOST_TRIES = 24;
    private static final int LEAST_TRIES = 4;
    /** Pieces to be laid in all tries together. */
    private static final int PIECES = 1_500;

    private PhaseChoice() {}

    /**
     * Returns the task with its lattices where they let the first layouts be shortest; none where no try laid all pieces.
     *
     * @param cancelled looked at between tries, once there is a layout
     */
    static List<LayoutTask> of(PreparedTask task, long seed, BooleanSupplier cancelled) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Comparator<Integer>> orders = FirstLayout.orders(task);
        List<Layout> led = new ArrayList<>();
        List<Layout> moved = new ArrayList<>();
        int tries = Math.max(LEAST_TRIES, Math.min(MOST_TRIES, PIECES / Math.max(1, task.size())));
        for (int i = 0; i < tries && (led.isEmpty() || !cancelled.getAsBoolean()); i++) {
            Comparator<Integer> order = i < orders.size() ? orders.get(i) : withOthersFirst(task, random);
            Map<Integer, Point> ways = i < orders.size() || i % 2 == 0 ? Map.of() : anywhere(task, random);
            FirstLayout.build(task, RASTER_ROWS, order, ways).ifPresent((ways.isEmpty() ? led : moved)::add);
        }
        if (led.isEmpty() && moved.isEmpty() && !task.nearness().isEmpty()) {
            return apart(task, seed, cancelled);
        }
        return Stream.of(led, moved)
                .flatMap(layouts -> shortest(task, layouts))
                .distinct()
                .toList();
    }

    /** Returns what is chosen where pieces need not lie near to each other, for the task where they do. */
    private static List<LayoutTask> apart(PreparedTask task, long seed, BooleanSupplier cancelled) {
        LayoutTask given = task.layoutTask();
        List<Bond> near = List.copyOf(task.nearness().bonds());
        List<Bond> others =
                given.bonds().stream().filter(bond -> !near.contains(bond)).toList();
        return of(new PreparedTask(given.with(given.demands(), given.obstacles(), others)), seed, cancelled).stream()
                .map(settled -> settled.with(
                        settled.demands(),
                        settled.obstacles(),
                        Stream.concat(settled.bonds().stream(), near.stream()).toList()))
                .toList();
    }

    /** Returns the task as the shortest of some layouts have it, without doubles. */
    private static Stream<LayoutTask> shortest(PreparedTask task, List<Layout> layouts) {
        return layouts.stream()
                .sorted(Comparator.comparingLong(Layout::length))
                .map(layout -> task.layoutTask().inPhaseOf(layout.poses()))
                .distinct()
                .limit(CHOICES);
    }

    /** Returns the members of the phases, none of which may be at fault alone. */
    static List<Integer> members(PreparedTask task) {
        return task.phases().stream()
                .flatMap(phase -> phase.members().stream())
                .sorted()
                .toList();
    }

    /** The largest pieces first, but of each phase one at random takes the turn of its largest. */
    private static Comparator<Integer> withOthersFirst(PreparedTask task, SplittableRandom random) {
        long[] rank = new long[task.size()];
        for (int i = 0; i < rank.length; i++) {
            rank[i] = 2 * FirstLayout.area(task, i);
        }
        for (Bond.SamePhase phase : task.phases()) {
            long largest = phase.members().stream()
                    .mapToLong(member -> rank[member])
                    .max()
                    .orElse(0);
            rank[phase.members().get(random.nextInt(phase.members().size()))] = largest + 1;
        }
        return Comparator.comparingLong(i -> -rank[i]);
    }

    private static Map<Integer, Point> anywhere(PreparedTask task, SplittableRandom random) {
        Map<Integer, Point> ways = new HashMap<>();
        for (int phase = 0; phase < task.phases().size(); phase++) {
            Bond.SamePhase bond = task.phases().get(phase);
            long stepX = 1;
            long stepY = 1;
            for (int member : bond.members()) {
                Lattice lattice = (Lattice)
                        task.layoutTask().demands().get(member).domain().positions();
                stepX = Math.max(stepX, lattice.stepX());
                stepY = Math.max(stepY, lattice.stepY());
            }
            ways.put(phase, new Point(random.nextLong(stepX), random.nextLong(stepY)));
        }
        return ways;
    }
}
