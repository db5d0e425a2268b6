package lengthwise.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.OutwardSimplification;
import lengthwise.geometry.PairTest;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import org.jspecify.annotations.Nullable;

/**
 * A task made ready for search: distinct shapes, the variants of every demand, obstacles as shapes that stay where they
 * are. Equal outlines are found whichever way they are drawn, also as mirror images.
 */
final class PreparedTask {
    private static final List<Orientation> ORIENTATIONS = Arrays.stream(new boolean[][] {{false}, {true}})
            .flatMap(flip -> Arrays.stream(QuarterTurn.values()).map(turn -> new Orientation(flip[0], turn)))
            .toList();

    private static final int SIMPLE_ENOUGH = 16;
    private static final double LEAST_SIMPLIFICATION = 50;
    /** How far an outline may be grown, as a share of the height of the strip. */
    private static final double SIMPLIFICATION = 3e-4;

    private final LayoutTask task;
    private final List<Shape> shapes;
    private final List<Outline> bases;
    private final List<List<Variant>> variants = new ArrayList<>();
    private final List<Shape> obstacles;
    private final List<Integer> unplaceable = new ArrayList<>();
    private final long largestGap;
    private final int[] bondOf;
    private final List<Bond.SameTurn> sameTurn;
    private final List<Bond.SamePhase> samePhase;
    private final Nearness nearness;
    private final List<Bond.SameTilt> sameTilt;
    private final Map<Ring, Integer> baseOf;
    private final Map<ShapeKey, Shape> shapeOf;
    private final Map<Integer, ConvexParts> exactBases;
    private final Map<Integer, ConvexParts> exactShapes;
    private final Map<Integer, ConvexParts> simpleBases;
    private final Map<Integer, ConvexParts> simpleShapes;

    private static <B extends Bond> List<B> bonds(LayoutTask task, Class<B> kind) {
        return task.bonds().stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    private record ShapeKey(Ring ring, long gap) {}

    PreparedTask(LayoutTask task) {
        this.task = task;
        this.shapes = new ArrayList<>();
        this.bases = new ArrayList<>();
        this.obstacles = new ArrayList<>();
        this.baseOf = new HashMap<>();
        this.shapeOf = new HashMap<>();
        this.exactBases = new ConcurrentHashMap<>();
        this.exactShapes = new ConcurrentHashMap<>();
        this.simpleBases = new ConcurrentHashMap<>();
        this.simpleShapes = new ConcurrentHashMap<>();
        this.largestGap = task.demands().stream().mapToLong(Demand::gap).max().orElse(0);
        this.bondOf = new int[task.demands().size()];
        this.sameTurn = bonds(task, Bond.SameTurn.class);
        this.samePhase = bonds(task, Bond.SamePhase.class);
        this.sameTilt = bonds(task, Bond.SameTilt.class);
        this.nearness = new Nearness(task.demands().size(), bonds(task, Bond.Within.class));
        prepareDemands();
        // here the strip begins at y = 0
        for (Obstacle obstacle : task.obstacles()) {
            obstacles.add(obstacleShape(obstacle.region().moved(new Point(0, -task.fromY()))));
        }
    }

    /** Prepares another task on the same cloth; new shapes are added to those of the first, which both then have. */
    PreparedTask(LayoutTask task, PreparedTask first) {
        this.task = task;
        this.shapes = first.shapes;
        this.bases = first.bases;
        this.obstacles = first.obstacles;
        this.baseOf = first.baseOf;
        this.shapeOf = first.shapeOf;
        this.exactBases = first.exactBases;
        this.exactShapes = first.exactShapes;
        this.simpleBases = first.simpleBases;
        this.simpleShapes = first.simpleShapes;
        this.largestGap = task.demands().stream().mapToLong(Demand::gap).max().orElse(0);
        this.bondOf = new int[task.demands().size()];
        this.sameTurn = bonds(task, Bond.SameTurn.class);
        this.samePhase = bonds(task, Bond.SamePhase.class);
        this.sameTilt = bonds(task, Bond.SameTilt.class);
        this.nearness = new Nearness(task.demands().size(), bonds(task, Bond.Within.class));
        prepareDemands();
    }

    private void prepareDemands() {
        Arrays.fill(bondOf, -1);
        for (int demand = 0; demand < task.demands().size(); demand++) {
            variants.add(new ArrayList<>(variantsOf(task.demands().get(demand), phaseOf(demand) >= 0)));
        }
        for (int bond = 0; bond < sameTurn.size(); bond++) {
            bind(bond, sameTurn.get(bond).members());
        }
        for (int demand = 0; demand < variants.size(); demand++) {
            if (variants.get(demand).isEmpty()) {
                unplaceable.add(demand);
            }
        }
    }

    private List<Variant> variantsOf(Demand demand, boolean latticeMoves) {
        Ring ring = demand.outline().shell().withoutFlatVertices();
        List<Variant> found = new ArrayList<>();
        for (Orientation orientation : demand.domain().orientations()) {
            Ring laid = ring.mapped(orientation::apply).positive();
            Shape shape = shape(laid, demand.gap());
            Point shift = corner(shape.ring()).minus(corner(laid)).plus(new Point(0, task.fromY()));
            Region region = Region.of(demand.domain().positions(), orientation, shape.box(), shift, task);
            if (!(latticeMoves ? region.everywhere() : region).isEmpty()) {
                found.add(new Variant(orientation, shape, shift, region));
            }
        }
        return found;
    }

    /** Keeps the variants at turns that every member of the bond has. */
    private void bind(int bond, List<Integer> members) {
        for (int member : members) {
            bondOf[member] = bond;
            variants.get(member)
                    .removeIf(variant -> members.stream()
                            .anyMatch(other ->
                                    variants.get(other).stream().noneMatch(match -> turn(match) == turn(variant))));
        }
    }

    static QuarterTurn turn(Variant variant) {
        return variant.orientation().turn();
    }

    private Shape shape(Ring laid, long gap) {
        Ring key = canonical(laid);
        Shape known = shapeOf.get(new ShapeKey(key, gap));
        if (known != null) {
            return known;
        }
        Ring least = null;
        Orientation toLeast = Orientation.AS_DRAWN;
        for (Orientation orientation : ORIENTATIONS) {
            Ring image = canonical(key.mapped(orientation::apply).positive());
            if (least == null || BY_VERTICES.compare(image, least) < 0) {
                least = image;
                toLeast = orientation;
            }
        }
        Ring baseRing = Objects.requireNonNull(least);
        int base = baseOf.computeIfAbsent(baseRing, ring -> {
            bases.add(Outline.of(ring));
            return bases.size() - 1;
        });
        Orientation fromBase = toLeast.inverse();
        Ring image = baseRing.mapped(fromBase::apply).positive();
        Shape shape = new Shape(shapes.size(), base, fromBase, image, image.box(), gap);
        shapes.add(shape);
        shapeOf.put(new ShapeKey(key, gap), shape);
        return shape;
    }

    private Shape obstacleShape(Outline region) {
        bases.add(region);
        Ring shell = region.shell();
        Shape shape = new Shape(shapes.size(), bases.size() - 1, Orientation.AS_DRAWN, shell, shell.box(), -1);
        shapes.add(shape);
        return shape;
    }

    /** Returns the ring with the corner of its box at the origin, from its least vertex on. */
    private static Ring canonical(Ring ring) {
        Ring moved = ring.moved(corner(ring).negated());
        int least = 0;
        for (int i = 1; i < moved.size(); i++) {
            if (BY_COORDINATES.compare(moved.vertex(i), moved.vertex(least)) < 0) {
                least = i;
            }
        }
        List<Point> vertices = new ArrayList<>(moved.vertices().subList(least, moved.size()));
        vertices.addAll(moved.vertices().subList(0, least));
        return Ring.of(vertices);
    }

    private static final Comparator<Point> BY_COORDINATES =
            Comparator.comparingLong(Point::x).thenComparingLong(Point::y);

    private static final Comparator<Ring> BY_VERTICES = (a, b) -> {
        for (int i = 0; i < Math.min(a.size(), b.size()); i++) {
            int order = BY_COORDINATES.compare(a.vertex(i), b.vertex(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(a.size(), b.size());
    };

    private static Point corner(Ring ring) {
        return new Point(ring.box().minX(), ring.box().minY());
    }

    LayoutTask layoutTask() {
        return task;
    }

    long height() {
        return task.height();
    }

    /** Returns the number of demands. */
    int size() {
        return variants.size();
    }

    List<Variant> variants(int demand) {
        return variants.get(demand);
    }

    List<Shape> shapes() {
        return shapes;
    }

    /** Returns by how much two pieces may overlap in the search and count as apart, in µm: the finish takes it out. */
    double tolerance() {
        return 1e-4 * task.height();
    }

    /** Returns a shape as it is, cut into convex parts when first asked for: the first layout does without. */
    ConvexParts exact(Shape shape) {
        return exactShapes.computeIfAbsent(
                shape.index(), index -> exact(shape.base()).oriented(shape.orientation()));
    }

    /** Returns a base outline as it is. */
    ConvexParts exact(int base) {
        return exactBases.computeIfAbsent(base, number -> ConvexParts.of(bases.get(number)));
    }

    /** Returns a shape, grown outward where that saves vertices; on the way no curve is truer than the tolerance. */
    ConvexParts simple(Shape shape) {
        return simpleShapes.computeIfAbsent(
                shape.index(), index -> simple(shape.base()).oriented(shape.orientation()));
    }

    /** Returns a base outline, grown likewise. */
    ConvexParts simple(int base) {
        return simpleBases.computeIfAbsent(base, number -> {
            Ring ring = bases.get(number).shell();
            if (ring.size() <= SIMPLE_ENOUGH || isObstacleBase(number)) {
                return exact(number);
            }
            try {
                return ConvexParts.of(
                        OutwardSimplification.of(ring, Math.max(LEAST_SIMPLIFICATION, SIMPLIFICATION * task.height())));
            } catch (IllegalArgumentException crossesItself) {
                // two boundaries nearer than the simplification: keep the true ones
                return exact(number);
            }
        });
    }

    boolean isObstacleBase(int number) {
        return obstacles.stream().anyMatch(obstacle -> obstacle.base() == number);
    }

    int bases() {
        return bases.size();
    }

    /** Returns the obstacles, each to stay at position (0, 0). */
    List<Shape> obstacles() {
        return obstacles;
    }

    /** Returns the number of the bond that holds a demand at one turn with others, or −1. */
    int bondOf(int demand) {
        return bondOf[demand];
    }

    /** Returns how many bonds hold demands at one turn. */
    int bonds() {
        return sameTurn.size();
    }

    List<Integer> members(int bond) {
        return sameTurn.get(bond).members();
    }

    /** Returns the others that a demand has to be tilted alike with. */
    List<Integer> tiltedWith(int demand) {
        return sameTilt.stream()
                .map(Bond.SameTilt::members)
                .filter(members -> members.contains(demand))
                .flatMap(List::stream)
                .filter(member -> member != demand)
                .toList();
    }

    /** Says whether a demand may lie as a variant has it while others lie as they do, some of them maybe nowhere yet. */
    boolean isTiltAllowed(int demand, Variant variant, @Nullable Variant[] others) {
        for (Bond.SameTilt bond : sameTilt) {
            if (bond.members().contains(demand)) {
                for (int member : bond.members()) {
                    Variant other = others[member];
                    if (member != demand
                            && other != null
                            && other.orientation().tilt()
                                    != variant.orientation().tilt()) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** Returns what has to lie near to what. */
    Nearness nearness() {
        return nearness;
    }

    /** Returns the bonds whose lattices have no place yet. */
    List<Bond.SamePhase> phases() {
        return samePhase;
    }

    /** Returns the number of the bond that moves the lattice of a demand, or −1. */
    int phaseOf(int demand) {
        for (int phase = 0; phase < samePhase.size(); phase++) {
            if (samePhase.get(phase).members().contains(demand)) {
                return phase;
            }
        }
        return -1;
    }

    /** Returns the demands that have no allowed position in a strip of any length. */
    List<Integer> unplaceable() {
        return unplaceable;
    }

    long largestGap() {
        return largestGap;
    }

    /** Returns the longest side of the box of any shape but the obstacles. */
    long longestSide() {
        return shapes.stream()
                .filter(shape -> !shape.isObstacle())
                .mapToLong(shape -> Math.max(shape.box().width(), shape.box().height()))
                .max()
                .orElse(0);
    }

    /**
     * Returns a length no layout can be below, found at once: {@link LowerBound#atOnce}, and where each piece ends when
     * it lies alone.
     */
    long lowerBound() {
        long byPiece = 0;
        for (int demand = 0; demand < variants.size(); demand++) {
            boolean latticeMoves = phaseOf(demand) >= 0;
            long least = variants.get(demand).stream()
                    .map(Variant::region)
                    .mapToLong(region -> (latticeMoves ? region.everywhere() : region).leastLength())
                    .min()
                    .orElse(0);
            byPiece = Math.max(byPiece, least);
        }
        return Math.max(LowerBound.atOnce(task), byPiece);
    }

    /**
     * Returns the layout that some variants at some positions make, if it is legal. What is laid already is so.
     *
     * @param parts the true shapes, or such as cover them
     */
    Optional<Layout> legal(Variant[] chosen, long[] x, long[] y, Function<Shape, ConvexParts> parts) {
        long length = length(chosen, x);
        for (int i = 0; i < chosen.length; i++) {
            if (!chosen[i].region().contains(x[i], y[i], length) || conflictWithEarlier(i, chosen, x, y, parts)) {
                return Optional.empty();
            }
        }
        for (int bond = 0; bond < bonds(); bond++) {
            if (members(bond).stream()
                            .map(member -> turn(chosen[member]))
                            .distinct()
                            .count()
                    > 1) {
                return Optional.empty();
            }
        }
        for (int i = 0; i < chosen.length; i++) {
            if (!isTiltAllowed(i, chosen[i], chosen)) {
                return Optional.empty();
            }
        }
        if (!nearness.isKept(chosen, x, y)) {
            return Optional.empty();
        }
        List<Pose> poses = new ArrayList<>();
        for (int i = 0; i < chosen.length; i++) {
            poses.add(chosen[i].pose(x[i], y[i]));
        }
        return Optional.of(new Layout(poses, length));
    }

    private boolean conflictWithEarlier(
            int i, Variant[] chosen, long[] x, long[] y, Function<Shape, ConvexParts> parts) {
        Shape shape = chosen[i].shape();
        boolean laid = chosen[i].region().isLaid();
        ConvexParts of = parts.apply(shape);
        for (Shape obstacle : obstacles) {
            if (!laid && PairTest.conflict(parts.apply(obstacle), of, x[i], y[i], 0)) {
                return true;
            }
        }
        for (int j = 0; j < i; j++) {
            Shape other = chosen[j].shape();
            if (!(laid && chosen[j].region().isLaid())
                    && PairTest.conflict(parts.apply(other), of, x[i] - x[j], y[i] - y[j], shape.gapTo(other))) {
                return true;
            }
        }
        return false;
    }

    static long length(Variant[] chosen, long[] x) {
        long length = 0;
        for (int i = 0; i < chosen.length; i++) {
            length = Math.max(length, x[i] + chosen[i].shape().box().maxX());
        }
        return length;
    }
}
