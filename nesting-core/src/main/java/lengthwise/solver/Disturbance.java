package lengthwise.solver;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import lengthwise.geometry.QuarterTurn;

/**
 * Throws an arrangement out of what it is stuck in: two large pieces of different shape change places, or, where
 * garments may lie either way round, all pieces of one are turned where they lie.
 */
final class Disturbance {
    private static final int TRIES = 20;

    private final Arrangement state;
    private final SplittableRandom random;
    /** Numbers of the pieces that can move, the largest first. */
    private final int[] bySize;

    Disturbance(Arrangement state, SplittableRandom random) {
        this.state = state;
        this.random = random;
        this.bySize = IntStream.range(0, state.pieces)
                .filter(i -> !state.task.variants(i).get(0).region().isLaid())
                .boxed()
                .sorted((a, b) -> Long.compare(area(state.task, b), area(state.task, a)))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static long area(PreparedTask task, int piece) {
        return task.variants(piece).get(0).shape().ring().doubleArea();
    }

    void strike() {
        int bonds = state.task.bonds();
        if (bonds == 0 || random.nextBoolean() || !turn(random.nextInt(bonds))) {
            exchangeTwo();
        }
        state.measureAll();
        state.resetWeights();
    }

    private void exchangeTwo() {
        int large = Math.min(bySize.length, Math.max(2, bySize.length / 3));
        for (int attempt = 0; attempt < TRIES && large > 1; attempt++) {
            int a = bySize[random.nextInt(large)];
            int b = bySize[random.nextInt(large)];
            if (state.shape[a].base() != state.shape[b].base()) {
                double ax = centreX(a);
                double ay = centreY(a);
                lay(a, state.variant[a], centreX(b), centreY(b));
                lay(b, state.variant[b], ax, ay);
                return;
            }
        }
    }

    /**
     * Turns all that a bond holds together, about the middle of each; answers whether there is another turn, in which each
     * of them has a place on the strip as long as it is now.
     */
    private boolean turn(int bond) {
        List<Integer> members = state.task.members(bond);
        QuarterTurn now = PreparedTask.turn(state.variant[members.get(0)]);
        List<QuarterTurn> others = state.task.variants(members.get(0)).stream()
                .map(PreparedTask::turn)
                .distinct()
                .filter(turn -> turn != now
                        && members.stream()
                                .noneMatch(member -> turned(member, turn).isEmpty()))
                .toList();
        if (others.isEmpty()) {
            return false;
        }
        QuarterTurn to = others.get(random.nextInt(others.size()));
        for (int member : members) {
            List<Variant> turned = turned(member, to);
            lay(member, turned.get(random.nextInt(turned.size())), centreX(member), centreY(member));
        }
        return true;
    }

    private List<Variant> turned(int member, QuarterTurn to) {
        return state.task.variants(member).stream()
                .filter(variant -> PreparedTask.turn(variant) == to && state.cells(variant).length > 0)
                .toList();
    }

    private double centreX(int piece) {
        return state.x[piece]
                + 0.5
                        * (state.shape[piece].box().minX()
                                + state.shape[piece].box().maxX());
    }

    private double centreY(int piece) {
        return state.y[piece]
                + 0.5
                        * (state.shape[piece].box().minY()
                                + state.shape[piece].box().maxY());
    }

    /** Lays a piece with its middle as near to a point as it may lie. */
    private void lay(int piece, Variant variant, double middleX, double middleY) {
        state.place(
                piece,
                variant,
                middleX
                        - 0.5
                                * (variant.shape().box().minX()
                                        + variant.shape().box().maxX()),
                middleY
                        - 0.5
                                * (variant.shape().box().minY()
                                        + variant.shape().box().maxY()));
    }
}
