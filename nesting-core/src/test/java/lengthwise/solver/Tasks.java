package lengthwise.solver;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.RandomRings;
import lengthwise.geometry.Ring;
import lengthwise.rules.Bond;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.Obstacle;
import lengthwise.rules.PlacementDomain;
import lengthwise.rules.PlacementDomain.Positions;

/** Tasks for tests, in micrometres. */
final class Tasks {
    static final List<Orientation> ONE_WAY = List.of(Orientation.AS_DRAWN);
    static final List<Orientation> EITHER_WAY = List.of(Orientation.AS_DRAWN, new Orientation(false, QuarterTurn.HALF));

    private Tasks() {}

    static LayoutTask of(long height, List<Demand> demands) {
        return new LayoutTask(height, demands, List.of(), List.of());
    }

    static Demand free(Ring ring, List<Orientation> orientations, long gap) {
        return new Demand(Outline.of(ring), new PlacementDomain(orientations, new Positions.Free()), gap);
    }

    static Ring rectangle(long width, long height) {
        return Ring.of(0, 0, width, 0, width, height, 0, height);
    }

    /** Returns star-shaped pieces of 40 to 400 mm, each shape several times, on a cloth of 900 mm. */
    static LayoutTask stars(long seed, int pieces, long gap) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Demand> demands = new ArrayList<>();
        while (demands.size() < pieces) {
            Ring ring = RandomRings.star(random, random.nextInt(4, 16), 20_000, 200_000);
            for (int copies = random.nextInt(1, 4); copies > 0 && demands.size() < pieces; copies--) {
                demands.add(free(ring, random.nextBoolean() ? EITHER_WAY : ONE_WAY, gap));
            }
        }
        return of(900_000, demands);
    }

    /** Returns a task with groups of two to four pieces whose lattices move together, the larger half of all pieces. */
    static LayoutTask phased(long seed, int pieces, long gap) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Demand> demands = new ArrayList<>(stars(seed, pieces, gap).demands());
        List<Bond> bonds = new ArrayList<>();
        for (int first = 0; first < pieces - 4 && bonds.size() < 3; first += 4) {
            List<Integer> members = new ArrayList<>();
            List<Integer> mirrored = new ArrayList<>();
            boolean halfDrop = random.nextBoolean();
            long across = random.nextInt(4) == 0 ? 0 : 60_000;
            int count = random.nextInt(2, 5);
            for (int i = first; i < first + count; i++) {
                members.add(i);
                if (random.nextInt(3) == 0) {
                    mirrored.add(i);
                }
                Positions lattice = new Positions.Lattice(
                        new Point(random.nextLong(9_000), random.nextLong(9_000)),
                        new Point(random.nextLong(9_000), random.nextLong(9_000)),
                        halfDrop ? 120_000 : 90_000,
                        across,
                        halfDrop,
                        random.nextBoolean() ? 0 : 1_500);
                demands.set(i, new Demand(demands.get(i).outline(), new PlacementDomain(ONE_WAY, lattice), gap));
            }
            bonds.add(new Bond.SamePhase(members, mirrored));
        }
        return new LayoutTask(900_000, demands, List.of(), bonds);
    }

    /** Returns a task in which half of the pieces lie in boxes of many sizes about lattice points, others for each turn. */
    static LayoutTask inCells(long seed, int pieces, long gap) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Demand> demands = new ArrayList<>();
        for (Demand demand : stars(seed, pieces, gap).demands()) {
            Map<Orientation, List<Box>> boxes = new LinkedHashMap<>();
            for (Orientation way : demand.domain().orientations()) {
                List<Box> some = new ArrayList<>();
                for (int k = random.nextInt(1, 5); k > 0; k--) {
                    long x = random.nextLong(-90_000, 90_000);
                    long y = random.nextLong(-90_000, 90_000);
                    some.add(new Box(x, y, x + random.nextLong(60_000), y + random.nextLong(60_000)));
                }
                boxes.put(way, some);
            }
            Positions cells =
                    new Positions.Cells(new Point(5_000, 9_000), 120_000, 80_000, random.nextBoolean(), boxes);
            PlacementDomain domain =
                    random.nextBoolean() ? new PlacementDomain(demand.domain().orientations(), cells) : demand.domain();
            demands.add(new Demand(demand.outline(), domain, gap));
        }
        return of(900_000, demands);
    }

    /** Returns a task in which every kind of domain, an obstacle and a bond occur. */
    static LayoutTask mixed(long seed, int pieces, long gap) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Demand> demands = new ArrayList<>();
        for (Demand demand : stars(seed, pieces, gap).demands()) {
            Positions positions = switch (random.nextInt(6)) {
                case 0 ->
                    new Positions.Lattice(
                            new Point(1_234, -777),
                            new Point(5_000, 9_000),
                            64_000,
                            32_000,
                            random.nextBoolean(),
                            random.nextBoolean() ? 0 : 1_500);
                case 1 -> new Positions.Lattice(Point.ORIGIN, new Point(0, 0), 80_000, 0, false, 0);
                case 2 -> new Positions.Line(new Point(0, demand.outline().box().minY()), 0);
                default -> new Positions.Free();
            };
            List<Orientation> orientations = positions instanceof Positions.Line
                    ? ONE_WAY
                    : demand.domain().orientations();
            demands.add(new Demand(demand.outline(), new PlacementDomain(orientations, positions), gap));
        }
        List<Integer> garment = new ArrayList<>();
        for (int i = 0; i < demands.size() && garment.size() < 4; i++) {
            if (demands.get(i).domain().orientations().size() == 2) {
                garment.add(i);
            }
        }
        Outline flaw = Outline.of(Ring.of(300_000, 400_000, 360_000, 400_000, 360_000, 430_000, 300_000, 430_000));
        return new LayoutTask(900_000, demands, List.of(new Obstacle(flaw)), List.of(new Bond.SameTurn(garment)));
    }
}
