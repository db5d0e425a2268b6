package lengthwise.plan.lays;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverSolutionCallback;
import com.google.ortools.sat.CpSolverStatus;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import lengthwise.model.Length;
import lengthwise.model.LengthWords;
import lengthwise.ortools.Natives;
import lengthwise.ortools.StoppableSearch;

/**
 * Plans an order: from as few lays as there can be on, a {@link LayModel} for each number, until nothing less is possible or
 * the effort is used up.
 */
public final class CutOrderPlanning {
    /** What of the effort that is left one number of lays may take. */
    private static final double SHARE = 0.5;

    /** How many kinds of search take turns. */
    private static final int PORTFOLIO = 8;

    private final CutOrder order;
    private final LayLimits limits;
    private final PlyLength lengths;
    private final Effort effort;
    private final PlanBounds bounds;
    private double used;

    private CutOrderPlanning(CutOrder order, LayLimits limits, PlyLength lengths, Effort effort) {
        this.order = order;
        this.limits = limits;
        this.lengths = lengths;
        this.effort = effort;
        this.bounds = new PlanBounds(order, limits, lengths);
    }

    /**
     * How long to look.
     *
     * @param deterministicSeconds about a second each, counted in steps of the solver and not by a clock, so that the same
     *     arguments give the same plan
     * @param enough ends the search
     */
    public record Effort(double deterministicSeconds, long seed, BooleanSupplier enough) {}

    /** What came of one number of lays: the best plan, and what fabric none of so many lays is below. */
    private record Tried(List<Lay> lays, Length bound, boolean sure) {}

    /** Returns a plan, or why there is none. */
    public static Answer plan(CutOrder order, LayLimits limits, PlyLength lengths, Aim aim, Effort effort) {
        CutOrderPlanning planning = new CutOrderPlanning(order, limits, lengths, effort);
        return planning.impossible()
                .map(reason -> (Answer) new Answer.Impossible(reason))
                .orElseGet(() -> planning.plan(aim));
    }

    /** A plan, or a reason. */
    public sealed interface Answer {
        record Planned(CutPlan plan) implements Answer {}

        /** No plan is possible within the limits; says the limit that would do. */
        record Impossible(String reason) implements Answer {}

        /** The effort was used up before any plan was found. */
        record NotFound() implements Answer {}
    }

    private Optional<String> impossible() {
        if (order.allGarments() == 0) {
            return Optional.of("Nothing is ordered.");
        }
        for (int size = 0; size < order.sizes().size(); size++) {
            int wanted = 0;
            for (int colour = 0; colour < order.colours().size(); colour++) {
                wanted += order.garments(colour, size);
            }
            if (wanted > 0 && bounds.mostGarments(size) < 1) {
                Length least = lengths.once().plus(lengths.garments().get(size));
                return Optional.of(
                        "One garment of size %s takes a ply of %s, ends included, and the table is %s long: it must be at least as long as that ply."
                                .formatted(
                                        order.sizes().get(size),
                                        LengthWords.both(least),
                                        LengthWords.both(limits.table().orElseThrow())));
            }
        }
        return Optional.empty();
    }

    private Answer plan(Aim aim) {
        List<Lay> greedy = GreedyLays.of(order, limits, lengths);
        List<Lay> best =
                limits.lays().isPresent() && greedy.size() > limits.lays().getAsInt() ? List.of() : greedy;
        int fewest = bounds.lays();
        if (!Natives.areLoaded()) {
            return answer(best, bounds.fabric(), best.size() == fewest);
        }
        return aim == Aim.LAYS ? fewestLays(best, fewest) : leastFabric(best, fewest);
    }

    private Answer fewestLays(List<Lay> greedy, int fewest) {
        boolean sure = true;
        int last = limits.lays().orElse(greedy.isEmpty() ? bounds.plies() : greedy.size());
        for (int lays = fewest; lays <= last; lays++) {
            Tried tried = tried(lays, greedy);
            if (!tried.lays.isEmpty()) {
                return answer(tried.lays, tried.bound, sure);
            }
            sure &= tried.sure;
            if (isOver()) {
                break;
            }
        }
        return answer(greedy, bounds.fabric(), sure && greedy.size() == fewest);
    }

    private Answer leastFabric(List<Lay> greedy, int fewest) {
        List<Lay> best = greedy;
        Length bound = bounds.fabric();
        boolean sure = true;
        int last = limits.lays().orElse(bounds.plies());
        for (int lays = fewest; !isOver() && lays <= last; lays++) {
            Tried tried = tried(lays, best);
            boolean shorter = !tried.lays.isEmpty()
                    && (best.isEmpty()
                            || fabric(tried.lays).compareTo(fabric(best)) < 0
                            || (fabric(tried.lays).equals(fabric(best)) && tried.lays.size() < best.size()));
            if (shorter) {
                best = tried.lays;
            }
            if (lays == last) {
                bound = Length.max(bound, tried.bound);
            }
            if (!best.isEmpty() && fabric(best).compareTo(bound) <= 0) {
                return answer(best, bound, sure);
            }
            sure &= tried.sure;
        }
        return answer(best, bound, false);
    }

    private Tried tried(int lays, List<Lay> known) {
        if (lays == 2 && TwoLays.suit(order, limits, lengths)) {
            List<Lay> two = TwoLays.of(order, limits, bounds.plies()).orElse(List.of());
            return new Tried(two, two.isEmpty() ? bounds.fabric() : fabric(two), true);
        }
        LayModel model = new LayModel(order, limits, lengths, lays);
        if (!known.isEmpty() && known.size() <= lays) {
            model.hint(known);
        }
        CpSolver solver = new CpSolver();
        solver.getParameters()
                // a portfolio of searches in turns on one thread, which gives the same answer every time
                .setNumWorkers(PORTFOLIO)
                .setInterleaveSearch(true)
                .setRandomSeed((int) (effort.seed & 0x3fff_ffff))
                .setMaxDeterministicTime(Math.max(0.1, SHARE * (effort.deterministicSeconds - used)));
        CpSolverStatus status =
                StoppableSearch.solve(solver, model.model(), effort.enough, new CpSolverSolutionCallback());
        used += solver.response().getDeterministicTime();
        boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        boolean sure = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE;
        List<Lay> plan = found ? model.lays(solver::value) : List.of();
        Length bound = found
                ? Length.max(bounds.fabric(), model.fabric(Math.ceil(solver.bestObjectiveBound() - 1e-6)))
                : bounds.fabric();
        return new Tried(plan, bound, sure);
    }

    private boolean isOver() {
        return used >= effort.deterministicSeconds || effort.enough.getAsBoolean();
    }

    private Answer answer(List<Lay> lays, Length bound, boolean fewestLays) {
        return lays.isEmpty()
                ? new Answer.NotFound()
                : new Answer.Planned(new CutPlan(lays, fabric(lays), bound, fewestLays));
    }

    private Length fabric(List<Lay> lays) {
        Length fabric = Length.ZERO;
        for (Lay lay : lays) {
            fabric = fabric.plus(lengths.of(lay.ratio()).times(lay.allPlies()));
        }
        return fabric;
    }
}
