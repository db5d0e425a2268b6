package lengthwise.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.geometry.ConvexParts;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Pitch;
import lengthwise.geometry.Point;
import lengthwise.rules.Demand;
import lengthwise.rules.PlacementDomain.Positions;

/**
 * Pieces tied to one line, such as halves on the fold, one after the other in the shortest order: a length no layout of
 * them can be below, whatever lies beside them. Order them by where each first touches the line; each is at least the
 * least {@link Pitch} of the two pieces away from the one before, none reaches out of the strip at its start, nor the
 * last at its end.
 *
 * <p>The shortest order is a shortest Hamiltonian path, found by dynamic programming (M. Held, R. Karp, <i>A dynamic
 * programming approach to sequencing problems</i>, Journal of SIAM 10, 1962) over how many of each kind are laid, as equal
 * pieces may change places.
 */
final class Chain {
    /** Beyond so many pairs of convex parts or so many steps it is not worth its time: a fraction of a second each. */
    private static final long MOST_PAIRS = 20_000_000;

    private static final long MOST_STEPS = 20_000_000;

    private final int[] counts;
    private final List<Link> links;

    /** A kind of piece as it may lie, and its first point on the line. */
    private record Link(int kind, ConvexParts parts, Point first, long gap) {
        static Link of(int kind, ConvexParts parts, Point anchor, long gap) {
            Point first = parts.ring().vertices().stream()
                    .filter(vertex -> vertex.y() == anchor.y())
                    .min(Comparator.comparingLong(Point::x))
                    .orElse(anchor);
            return new Link(kind, parts, first, gap);
        }

        long before() {
            return first.x() - parts.ring().box().minX();
        }

        long after() {
            return parts.ring().box().maxX() - first.x();
        }

        long pitch(Link next) {
            long from = first.x() - next.first.x();
            long dy = first.y() - next.first.y();
            return Pitch.least(parts, next.parts, from, dy, Math.max(gap, next.gap)) - from;
        }
    }

    private Chain(int[] counts, List<Link> links) {
        this.counts = counts;
        this.links = links;
    }

    /** Returns the length of the shortest order, or 0 where finding it would take too long or a piece may be tilted. */
    static long leastLength(List<Demand> tied) {
        if (tied.stream()
                .flatMap(demand -> demand.domain().orientations().stream())
                .anyMatch(Orientation::isTilted)) {
            return 0;
        }
        Map<Demand, Integer> kinds = new LinkedHashMap<>();
        tied.forEach(demand -> kinds.merge(demand, 1, Integer::sum));
        int[] counts = kinds.values().stream().mapToInt(Integer::intValue).toArray();
        List<Link> links = new ArrayList<>();
        int kind = 0;
        for (Demand demand : kinds.keySet()) {
            ConvexParts parts = ConvexParts.of(demand.outline().shell());
            Positions.Line line = (Positions.Line) demand.domain().positions();
            for (Orientation way : demand.domain().orientations()) {
                links.add(Link.of(kind, parts.oriented(way), way.apply(line.anchor()), demand.gap()));
            }
            kind++;
        }
        Chain chain = new Chain(counts, links);
        return chain.isQuick() ? chain.leastLength() : 0;
    }

    private boolean isQuick() {
        long parts =
                links.stream().mapToLong(link -> link.parts().parts().size()).sum();
        double steps = Math.pow(links.size(), 2);
        for (int count : counts) {
            steps *= count + 1;
        }
        return parts * parts <= MOST_PAIRS && steps <= MOST_STEPS;
    }

    private long leastLength() {
        long[][] pitches = new long[links.size()][links.size()];
        for (int i = 0; i < pitches.length; i++) {
            for (int j = 0; j < pitches.length; j++) {
                pitches[i][j] = links.get(i).pitch(links.get(j));
            }
        }
        // a state is how many of each kind are laid, as digits, and what lies last
        int[] weight = new int[counts.length];
        int states = 1;
        for (int kind = 0; kind < counts.length; kind++) {
            weight[kind] = states;
            states *= counts[kind] + 1;
        }
        long[][] least = new long[states][links.size()];
        for (long[] row : least) {
            Arrays.fill(row, Long.MAX_VALUE);
        }
        for (int last = 0; last < links.size(); last++) {
            least[weight[links.get(last).kind()]][last] = links.get(last).before();
        }
        for (int state = 0; state < states; state++) {
            for (int last = 0; last < links.size(); last++) {
                for (int next = 0; next < links.size() && least[state][last] < Long.MAX_VALUE; next++) {
                    int kind = links.get(next).kind();
                    if (state / weight[kind] % (counts[kind] + 1) < counts[kind]) {
                        int then = state + weight[kind];
                        long reached = Math.max(links.get(next).before(), least[state][last] + pitches[last][next]);
                        least[then][next] = Math.min(least[then][next], reached);
                    }
                }
            }
        }
        long shortest = Long.MAX_VALUE;
        for (int last = 0; last < links.size(); last++) {
            shortest =
                    Math.min(shortest, least[states - 1][last] + links.get(last).after());
        }
        return shortest;
    }
}
