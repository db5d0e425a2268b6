package lengthwise.solver;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lengthwise.geometry.GrownArea;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * A length that no layout of a task can fall below, in micrometres: the largest of
 *
 * <ul>
 *   <li>the area of all pieces over the height of the strip,
 *   <li>the least extent of the longest piece,
 *   <li>for pieces tied to one line, such as the fold: what they occupy of that line, one beside the other, and the
 *       gaps between them; or, where that can be found, the shortest {@link Chain} of them,
 *   <li>where there are gaps, the area of the grown pieces: grow each by half of its gap. The larger of two gaps is at
 *       least half of their sum, so grown pieces do not overlap; with G the largest gap, they lie in a strip G longer and
 *       G higher than the true one,
 *   <li>{@link Slices}.
 * </ul>
 */
public final class LowerBound {
    private LowerBound() {}

    /** Returns the best bound, rounded up to the grid. Takes a while where pieces have long outlines. */
    public static long of(LayoutTask task) {
        long chain = tied(task).mapToLong(Chain::leastLength).max().orElse(0);
        return Math.max(Math.max(atOnce(task), chain), Math.max(grownArea(task), slices(task)));
    }

    /** Returns the best of the bounds that cost next to nothing: of the first three, without chains. */
    static long atOnce(LayoutTask task) {
        long alongLine = tied(task).mapToLong(LowerBound::alongLine).max().orElse(0);
        return Math.max(alongLine, Math.max(area(task), longestPiece(task)));
    }

    /** Returns the demands tied to a line, line by line. */
    private static Stream<List<Demand>> tied(LayoutTask task) {
        Map<Long, List<Demand>> byLine = new LinkedHashMap<>();
        for (Demand demand : task.demands()) {
            if (demand.domain().positions() instanceof Positions.Line line) {
                byLine.computeIfAbsent(line.y(), y -> new ArrayList<>()).add(demand);
            }
        }
        return byLine.values().stream();
    }

    /** Returns the demands but those that are laid already, which may reach out of the strip. */
    private static Stream<Demand> toLay(LayoutTask task) {
        return task.demands().stream().filter(demand -> !(demand.domain().positions() instanceof Positions.Laid));
    }

    private static long largestGap(LayoutTask task) {
        return task.demands().stream().mapToLong(Demand::gap).max().orElse(0);
    }

    private static long grownArea(LayoutTask task) {
        long gap = largestGap(task);
        if (gap == 0) {
            return 0;
        }
        Map<Key, Double> known = new HashMap<>();
        double sum = 0;
        for (Demand demand : toLay(task).toList()) {
            sum += known.computeIfAbsent(
                    new Key(demand.outline().shell(), demand.gap()),
                    key -> GrownArea.atMost(key.shell(), key.gap() / 2.0));
        }
        return onGrid(sum / (double) (task.height() + gap) - gap);
    }

    private record Key(Ring shell, long gap) {}

    private static long slices(LayoutTask task) {
        Slices slices = new Slices(task.height() + largestGap(task));
        for (Demand demand : toLay(task).toList()) {
            slices.add(ways(demand), demand.gap());
        }
        return onGrid(slices.leastLength());
    }

    /** Returns the outline lengthwise and crosswise, at each tilt, as far as allowed; half turns and flips change no bound. */
    private static List<Ring> ways(Demand demand) {
        return demand.domain().orientations().stream()
                .map(way -> new Orientation(false, QuarterTurn.of(way.turn().quarters() % 2), way.tilt()))
                .distinct()
                .map(way -> way.apply(demand.outline()).shell())
                .toList();
    }

    /** Returns the bounds by area alone, which hold however the pieces are turned. */
    public static long byArea(LayoutTask task) {
        return Math.max(area(task), grownArea(task));
    }

    /** Rounds up, but for what the sums of many floating numbers may be off. */
    private static long onGrid(double length) {
        return (long) Math.ceil(length * (1 - 1e-9) - 0.01);
    }

    private static long area(LayoutTask task) {
        long doubled = toLay(task)
                .mapToLong(demand -> demand.outline().shell().doubleArea())
                .sum();
        long doubleHeight = 2 * task.height();
        return (doubled + doubleHeight - 1) / doubleHeight;
    }

    private static long longestPiece(LayoutTask task) {
        return toLay(task)
                .mapToLong(demand -> demand.domain().orientations().stream()
                        .mapToLong(orientation ->
                                orientation.apply(demand.outline()).box().width())
                        .min()
                        .orElseThrow())
                .max()
                .orElse(0);
    }

    private static long alongLine(List<Demand> tied) {
        long contact = tied.stream().mapToLong(LowerBound::contact).sum();
        long leastGap = tied.stream().mapToLong(Demand::gap).min().orElse(0);
        return contact + (tied.size() - 1) * leastGap;
    }

    /** Returns the least length of outline that lies on the line in any allowed orientation. */
    private static long contact(Demand demand) {
        Positions.Line line = (Positions.Line) demand.domain().positions();
        return demand.domain().orientations().stream()
                .mapToLong(orientation -> onLine(demand, orientation, line))
                .min()
                .orElseThrow();
    }

    private static long onLine(Demand demand, Orientation orientation, Positions.Line line) {
        Ring ring = orientation.apply(demand.outline()).shell();
        long y = orientation.apply(line.anchor()).y();
        long sum = 0;
        for (int i = 0; i < ring.size(); i++) {
            if (ring.y(i) == y && ring.edge(i).y() == 0) {
                sum += Math.abs(ring.edge(i).x());
            }
        }
        return sum;
    }
}
