package lengthwise.solver;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * A task with its strips gathered: equal ones that may lie anywhere are joined, long side to long side and their
 * gap apart, to blocks, each of which is laid as one piece. A maker cuts such a block straight, folding one strip on the
 * next.
 */
final class Blocks {
    /**
     * A rectangle so many times as long as wide is a strip: ties, straps, bindings. Shorter ones, tabs and patches, fill
     * holes, and a block of them would not.
     */
    private static final int SLENDER = 5;
    /** Shorter ones that take up this share of all that is laid are no filling, and are gathered too. */
    private static final double BULK = 0.5;

    private final LayoutTask single;
    private final LayoutTask task;
    private final List<List<Integer>> members;

    private Blocks(LayoutTask single, LayoutTask task, List<List<Integer>> members) {
        this.single = single;
        this.task = task;
        this.members = members;
    }

    /** What equal strips have in common. */
    private record Kind(long width, long height, PlacementDomain domain, long gap) {
        static Kind of(Demand demand) {
            Box box = demand.outline().box();
            return new Kind(box.width(), box.height(), demand.domain(), demand.gap());
        }

        boolean isSlender() {
            return Math.max(width, height) >= SLENDER * Math.min(width, height);
        }

        /** Returns the way from one strip to the next, in the frame of the piece. */
        Point step() {
            return width >= height ? new Point(0, height + gap) : new Point(width + gap, 0);
        }

        /** Returns how many such strips there is room for on a stretch. */
        long most(long room) {
            return (room + gap) / (Math.min(width, height) + gap);
        }
    }

    /**
     * Gathers the strips of a task as far as they are equal, and a block is nowhere longer than the cloth is wide.
     *
     * @param most strips in a block; with 1 the task stays as it is
     */
    static Blocks of(LayoutTask single, int most) {
        Map<Kind, List<Integer>> kinds = kinds(single);
        Map<Integer, List<Integer>> byFirst = new TreeMap<>();
        IntStream.range(0, single.demands().size()).forEach(i -> byFirst.put(i, List.of(i)));
        kinds.forEach((kind, all) -> {
            int room = (int) Math.max(1, Math.min(most, kind.most(single.height())));
            int blocks = (all.size() + room - 1) / room;
            byFirst.keySet().removeAll(all);
            for (int block = 0; block < blocks; block++) {
                List<Integer> some = all.subList(all.size() * block / blocks, all.size() * (block + 1) / blocks);
                byFirst.put(some.get(0), List.copyOf(some));
            }
        });
        List<List<Integer>> members = List.copyOf(byFirst.values());
        int[] number = new int[single.demands().size()];
        List<Demand> demands = new ArrayList<>();
        for (List<Integer> inside : members) {
            inside.forEach(member -> number[member] = demands.size());
            demands.add(block(single.demands().get(inside.get(0)), inside.size()));
        }
        List<Bond> bonds = single.bonds().stream()
                .flatMap(bond -> bond.renumbered(member -> Optional.of(number[member])).stream())
                .toList();
        return new Blocks(single, single.with(demands, single.obstacles(), bonds), members);
    }

    /** Returns how many strips the largest block of a task holds; 1 where no two are equal. */
    static int largest(LayoutTask single) {
        return kinds(single).entrySet().stream()
                .mapToInt(kind ->
                        (int) Math.min(kind.getValue().size(), kind.getKey().most(single.height())))
                .max()
                .orElse(1);
    }

    private static Map<Kind, List<Integer>> kinds(LayoutTask single) {
        Set<Integer> bound =
                single.bonds().stream().flatMap(bond -> bond.members().stream()).collect(Collectors.toSet());
        Map<Kind, List<Integer>> kinds = new LinkedHashMap<>();
        for (int i = 0; i < single.demands().size(); i++) {
            Demand demand = single.demands().get(i);
            if (isFreeRectangle(demand) && !bound.contains(i)) {
                kinds.computeIfAbsent(Kind.of(demand), kind -> new ArrayList<>())
                        .add(i);
            }
        }
        double bulk = BULK * area(single.demands().stream());
        kinds.entrySet()
                .removeIf(kind -> !kind.getKey().isSlender()
                        && area(kind.getValue().stream().map(single.demands()::get)) < bulk);
        return kinds;
    }

    private static double area(Stream<Demand> demands) {
        return demands.mapToDouble(demand -> (double) demand.outline().doubleArea())
                .sum();
    }

    private static boolean isFreeRectangle(Demand demand) {
        Box box = demand.outline().box();
        return demand.domain().positions() instanceof Positions.Free
                && demand.domain().orientations().stream().noneMatch(Orientation::isTilted)
                && demand.outline().doubleArea() == 2 * box.width() * box.height();
    }

    private static Demand block(Demand first, int strips) {
        if (strips == 1) {
            return first;
        }
        Box box = first.outline().box();
        Point step = Kind.of(first).step();
        Box whole = box.union(box.moved(new Point(step.x() * (strips - 1), step.y() * (strips - 1))));
        return new Demand(Outline.of(whole.ring()), first.domain(), first.gap());
    }

    LayoutTask task() {
        return task;
    }

    /** Returns where each single piece lies in a layout of blocks. */
    Layout apart(Layout layout) {
        Pose[] poses = new Pose[single.demands().size()];
        for (int block = 0; block < members.size(); block++) {
            Pose pose = layout.poses().get(block);
            List<Integer> inside = members.get(block);
            Demand first = single.demands().get(inside.get(0));
            for (int n = 0; n < inside.size(); n++) {
                Point shift = corner(first).minus(corner(single.demands().get(inside.get(n))));
                if (n > 0) {
                    Point step = Kind.of(first).step();
                    shift = shift.plus(new Point(n * step.x(), n * step.y()));
                }
                poses[inside.get(n)] = new Pose(
                        pose.orientation(),
                        pose.offset().plus(pose.orientation().apply(shift)));
            }
        }
        return new Layout(List.of(poses), layout.length());
    }

    private static Point corner(Demand demand) {
        Box box = demand.outline().box();
        return new Point(box.minX(), box.minY());
    }
}
