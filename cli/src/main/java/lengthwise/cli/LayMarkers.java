package lengthwise.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import lengthwise.FabricRun;
import lengthwise.MarkerAnswer;
import lengthwise.MarkerMaking;
import lengthwise.job.FabricOrder;
import lengthwise.job.JobException;
import lengthwise.job.PlanOrders;
import lengthwise.job.PlanOrders.LayJob;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.plan.Purchase;
import lengthwise.plan.lays.Aim;
import lengthwise.plan.lays.CutOrderPlanning;
import lengthwise.plan.lays.CutOrderPlanning.Effort;
import lengthwise.plan.lays.Lay;
import lengthwise.plan.lays.OrderChanges;
import lengthwise.plan.lays.SettledPlan;
import lengthwise.report.PlanRun;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.jspecify.annotations.Nullable;

/**
 * Plans one fabric and lays the markers: short searches while the plan is looked for, a long one for each marker that the plan
 * is cut by.
 */
final class LayMarkers {
    /** Of the time that a marker deserves, a search gets this part while the plan is looked for. */
    private static final double SHORT = 0.1;

    private static final double SHORTEST_SECONDS = 0.5;
    private static final double LONGEST_SHORT_SECONDS = 10;

    /** Of a time that is said, looking for the plan may take this part. */
    private static final double LOOKING = 0.5;

    /** Deterministic seconds of planning for each size in each colour, and at least and at most for all. */
    private static final double EFFORT = 0.35;

    private static final double LEAST_EFFORT = 6;
    private static final double MOST_EFFORT = 36;
    private static final double EFFORT_FOR_CHANGES = 5;

    /** Orders of more sizes and colours than this are large: changing them by a garment changes little, and takes long. */
    private static final int MOST_CHANGED = 12;

    private static final int CHANGES = 3;

    private final PlanOrders.Cloth cloth;
    private final Wish wish;
    private final PrintWriter err;
    private final double secondsLooking;
    private final Instant start;
    private final Map<List<Integer>, Marker> known = new LinkedHashMap<>();
    private String why = "";

    /** What the maker wishes of the searches; the results go to {@code out}. */
    record Wish(
            @Nullable Double seconds,
            @Nullable Long iterations,
            long seed,
            int workers,
            InstantSource clock,
            BooleanSupplier interrupted,
            Path out) {}

    /** A plan, or why there is none. */
    sealed interface Answer {
        record Planned(PlanRun.Cloth cloth) implements Answer {}

        record None(String reason) implements Answer {}
    }

    private LayMarkers(PlanOrders.Cloth cloth, int cloths, Wish wish, PrintWriter err) {
        this.cloth = cloth;
        this.wish = wish;
        this.err = err;
        this.secondsLooking = wish.seconds() == null ? Double.MAX_VALUE : LOOKING * wish.seconds() / cloths;
        this.start = wish.clock().instant();
    }

    /**
     * Plans one fabric.
     *
     * @param cloths how many there are to share the time
     */
    static Answer plan(PlanOrders.Cloth cloth, Aim aim, int cloths, Wish wish, PrintWriter err) throws JobException {
        return new LayMarkers(cloth, cloths, wish, err).plan(aim);
    }

    private Answer plan(Aim aim) throws JobException {
        Effort effort = new Effort(
                Math.min(MOST_EFFORT, Math.max(LEAST_EFFORT, EFFORT * cells())),
                wish.seed(),
                () -> wish.interrupted().getAsBoolean() || elapsed() > secondsLooking);
        SettledPlan.Outcome outcome = SettledPlan.of(
                cloth.order(), cloth.limits(), cloth.net(), cloth.ends(), aim, effort, this::roughLength);
        if (!(outcome instanceof SettledPlan.Outcome.Settled settled)) {
            return new Answer.None(reason(outcome));
        }
        SettledPlan found = settled.plan();
        List<FabricRun> lays = new ArrayList<>();
        List<String> jobs = new ArrayList<>();
        Map<List<Integer>, MarkerAnswer.Made> made = new LinkedHashMap<>();
        List<List<Integer>> ratios =
                found.plan().lays().stream().map(Lay::ratio).distinct().toList();
        double left = ratios.stream()
                .mapToDouble(ratio -> Budget.deserved(cloth.marker(ratio)))
                .sum();
        for (List<Integer> ratio : ratios) {
            double deserved = Budget.deserved(cloth.marker(ratio));
            MarkerAnswer answer = laid(ratio, longSearch(deserved, left));
            left -= deserved;
            if (!(answer instanceof MarkerAnswer.Made marker)) {
                return new Answer.None(why);
            }
            made.put(ratio, marker);
        }
        for (int i = 0; i < found.plan().lays().size(); i++) {
            Lay lay = found.plan().lays().get(i);
            MarkerAnswer.Made one = Optional.ofNullable(made.get(lay.ratio())).orElseThrow();
            LayJob job = cloth.lay(i + 1, lay);
            MarkerAnswer answer = inPlies(job.order(), one.marker());
            if (!(answer instanceof MarkerAnswer.Made plies)) {
                return new Answer.None(why);
            }
            lays.add(run(job.order(), plies, one));
            jobs.add(job.text(wish.out()));
        }
        return new Answer.Planned(
                new PlannedCloth(cloth, lays).of(found, jobs, changes(aim, found), wish.interrupted()));
    }

    private List<OrderChanges.Change> changes(Aim aim, SettledPlan found) {
        Effort changing = new Effort(EFFORT_FOR_CHANGES, wish.seed(), wish.interrupted());
        return cells() > MOST_CHANGED
                ? List.of()
                : OrderChanges.of(cloth.order(), cloth.limits(), found.guess(), aim, found.plan(), changing, CHANGES);
    }

    private int cells() {
        return cloth.order().colours().size() * cloth.order().sizes().size();
    }

    private String reason(SettledPlan.Outcome outcome) {
        if (outcome instanceof SettledPlan.Outcome.NoMarker) {
            return why;
        }
        return ((SettledPlan.Outcome.Not) outcome).why() instanceof CutOrderPlanning.Answer.Impossible impossible
                ? impossible.reason()
                : "no plan was found within the limits; allow more plies or garments, a longer table, or some over and under.";
    }

    /** Returns the length of a marker by a short search. */
    private Optional<Length> roughLength(List<Integer> ratio) {
        if (wish.interrupted().getAsBoolean() && !known.isEmpty()) {
            why = "it was ended before the first markers were laid that a plan is made by; let it run a little longer.";
            return Optional.empty();
        }
        return laid(ratio, shortSearch(ratio)) instanceof MarkerAnswer.Made made
                ? Optional.of(made.marker().length())
                : Optional.empty();
    }

    private MarkerAnswer laid(List<Integer> ratio, Search search) {
        MarkerOrder order = cloth.marker(ratio);
        ProgressLine line =
                new ProgressLine(err, ProgressLine.onTerminal(), order.fabric().name(), wish.clock());
        line.start();
        Search watched = search.watchedBy(event -> line.event(event, search));
        Marker before = known.get(ratio);
        MarkerAnswer answer = before == null
                ? MarkerMaking.make(
                        order, watched, (marker, progress) -> line.better(marker.length(), marker.efficiency()))
                : MarkerMaking.make(
                        order,
                        before,
                        watched,
                        (marker, progress) -> line.better(marker.length(), marker.efficiency()));
        line.done(true);
        if (answer instanceof MarkerAnswer.Made made) {
            known.put(ratio, made.marker());
        } else {
            why = reason(answer);
        }
        return answer;
    }

    /** Returns the marker with all plies on each other, which is the marker of one: nothing is searched for. */
    private MarkerAnswer inPlies(FabricOrder lay, Marker one) {
        Search none = Search.of(StopRule.iterations(1), wish.seed(), 1).cancelledBy(() -> true);
        MarkerAnswer answer = MarkerMaking.make(lay.order(), one, none, (marker, progress) -> {});
        if (!(answer instanceof MarkerAnswer.Made made)) {
            why = reason(answer);
        } else if (!made.marker().piecesEnd().equals(one.piecesEnd())) {
            throw new IllegalStateException("The plies of %s have another marker than one of them."
                    .formatted(lay.order().fabric().name()));
        }
        return answer;
    }

    private static String reason(MarkerAnswer answer) {
        return answer instanceof MarkerAnswer.Impossible impossible
                ? impossible.reason()
                : "its marker did not pass the check, a fault of ours; nothing is written.";
    }

    private Search shortSearch(List<Integer> ratio) {
        if (wish.iterations() != null) {
            return search(StopRule.iterations(Math.max(1, (long) (SHORT * wish.iterations()))));
        }
        double wanted = Math.min(LONGEST_SHORT_SECONDS, SHORT * Budget.deserved(cloth.marker(ratio)));
        double most = wish.seconds() == null ? wanted : Math.min(wanted, secondsLooking / 8);
        return search(StopRule.elapsed(millis(Math.max(SHORTEST_SECONDS, most))));
    }

    private Search longSearch(double deserved, double left) {
        if (wish.iterations() != null) {
            return search(StopRule.iterations(wish.iterations()));
        }
        double remaining = wish.seconds() == null ? left : secondsLooking / LOOKING - elapsed();
        return search(StopRule.elapsed(millis(Math.max(SHORTEST_SECONDS, remaining * deserved / left))));
    }

    private Search search(StopRule stop) {
        return Search.of(stop, wish.seed(), wish.workers()).cancelledBy(wish.interrupted());
    }

    private static Duration millis(double seconds) {
        return Duration.ofMillis((long) (1000 * seconds));
    }

    private double elapsed() {
        return Duration.between(start, wish.clock().instant()).toMillis() / 1000.0;
    }

    private FabricRun run(FabricOrder lay, MarkerAnswer.Made plies, MarkerAnswer.Made one) {
        return new FabricRun(
                plies.marker(),
                Length.max(one.lowerBound(), plies.lowerBound()),
                Purchase.of(plies.marker().length(), lay.order().fabric()),
                lay.assumptions(),
                plies.surplus(),
                List.of(),
                List.of(),
                one.progress(),
                one.reason());
    }
}
