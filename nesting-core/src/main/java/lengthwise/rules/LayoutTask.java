package lengthwise.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Axis;
import lengthwise.rules.PlacementDomain.Positions.Lattice;

/**
 * What the search gets: place every demand inside a strip of the given height (y from {@code fromY} to {@code fromY +
 * height}, x from 0), as short as possible. Micrometres.
 */
public record LayoutTask(long fromY, long height, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
    public LayoutTask {
        demands = List.copyOf(demands);
        obstacles = List.copyOf(obstacles);
        bonds = List.copyOf(bonds);
    }

    /** A strip from y = 0. */
    public LayoutTask(long height, List<Demand> demands, List<Obstacle> obstacles, List<Bond> bonds) {
        this(0, height, demands, obstacles, bonds);
    }

    /** Returns another task on the same strip. */
    public LayoutTask with(List<Demand> otherDemands, List<Obstacle> otherObstacles, List<Bond> otherBonds) {
        return new LayoutTask(fromY, height, otherDemands, otherObstacles, otherBonds);
    }

    /** Says whether every {@link Bond.Within} is kept where all demands lie. */
    public boolean isNear(List<Pose> poses) {
        return bonds.stream()
                .filter(Bond.Within.class::isInstance)
                .map(Bond.Within.class::cast)
                .allMatch(bond -> {
                    Box all = bond.members().stream()
                            .map(member -> poses.get(member)
                                    .apply(demands.get(member).outline())
                                    .box())
                            .reduce(Box::union)
                            .orElseThrow();
                    return (bond.axis() == Axis.LENGTHWISE ? all.width() : all.height()) <= bond.extent();
                });
    }

    /**
     * Returns the task with the lattices of every {@link Bond.SamePhase} where a layout has them: none is left to move.
     *
     * @param poses of all demands, in a layout that keeps the bonds
     */
    public LayoutTask inPhaseOf(List<Pose> poses) {
        Map<Integer, Pose> all = new HashMap<>();
        for (int i = 0; i < poses.size(); i++) {
            all.put(i, poses.get(i));
        }
        return inPhaseOf(all);
    }

    /** Returns likewise the task with those lattices settled that some demands have where they lie. */
    public LayoutTask inPhaseOf(Map<Integer, Pose> laid) {
        List<Demand> settled = new ArrayList<>(demands);
        List<Bond> others = new ArrayList<>();
        for (Bond bond : bonds) {
            if (bond instanceof Bond.SamePhase phase && phase.members().stream().anyMatch(laid::containsKey)) {
                Point way = way(phase, laid);
                for (int member : phase.members()) {
                    settled.set(member, moved(demands.get(member), turned(way, phase, member)));
                }
            } else {
                others.add(bond);
            }
        }
        return with(settled, obstacles, others);
    }

    /** Returns how far the lattices are moved: to the middle between the members that are farthest off to either side. */
    private Point way(Bond.SamePhase phase, Map<Integer, Pose> laid) {
        List<Integer> members =
                phase.members().stream().filter(laid::containsKey).toList();
        int first = members.get(0);
        Lattice lattice = lattice(first);
        Point way = turned(anchor(first, laid).minus(lattice.origin()), phase, first);
        long minX = 0;
        long maxX = 0;
        long minY = 0;
        long maxY = 0;
        for (int member : members) {
            Lattice moved = lattice(member).moved(turned(way, phase, member));
            Point off = turned(moved.off(anchor(member, laid)), phase, member);
            minX = Math.min(minX, off.x());
            maxX = Math.max(maxX, off.x());
            minY = Math.min(minY, off.y());
            maxY = Math.max(maxY, off.y());
        }
        return way.plus(new Point(Math.floorDiv(minX + maxX, 2), Math.floorDiv(minY + maxY, 2)));
    }

    private Point anchor(int member, Map<Integer, Pose> laid) {
        return Objects.requireNonNull(laid.get(member)).apply(lattice(member).anchor());
    }

    private Lattice lattice(int demand) {
        return (Lattice) demands.get(demand).domain().positions();
    }

    private static Point turned(Point way, Bond.SamePhase phase, int member) {
        return phase.mirrored().contains(member) ? new Point(way.x(), -way.y()) : way;
    }

    private static Demand moved(Demand demand, Point by) {
        Lattice lattice = (Lattice) demand.domain().positions();
        return new Demand(
                demand.outline(), new PlacementDomain(demand.domain().orientations(), lattice.moved(by)), demand.gap());
    }
}
