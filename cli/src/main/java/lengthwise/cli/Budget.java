package lengthwise.cli;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import lengthwise.job.FabricOrder;
import lengthwise.job.Orders;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import org.jspecify.annotations.Nullable;

/**
 * Shares the time of a job between its searches by what each deserves; what one leaves over goes to the next. A
 * search aside, for what a rule costs, gets a fifth of what the marker's own gets; where no time is said, that comes on
 * top of what the markers get.
 */
final class Budget {
    private static final double ASIDE = 0.2;

    /** Finding out what fits gets this part of the job's time; where no time is said, that comes on top. */
    private static final double CHOOSING = 0.5;

    private static final double OVERTIME = 0.1;

    /** Sharing orders out over several pieces of cloth gets this part of the time. */
    private static final double SHARING_OUT = 0.4;

    /** However little is left of that, one look takes no more than this part of it. */
    private static final double ONE_LOOK = 0.5;

    /** What a look may take on top of its time to press a layout together at its end; then it is broken off. */
    private static final double PRESSING = 0.25;

    private static final double SHORTEST_DEFAULT_SECONDS = 3;
    private static final double LONGEST_DEFAULT_SECONDS = 300;

    /** A marker that is to be cut gets as many seconds for each contour, */
    private static final double SECONDS_A_CONTOUR = 2.5;

    private static final double LONGEST_SECONDS_TO_CUT = 600;

    /** and its search gives up when nothing better came for this share of them. */
    private static final double PATIENCE = 1.0 / 3;

    private static final long LEAST_MILLIS = 200;

    private final ToDoubleFunction<MarkerOrder> deserved;
    private final double whole;
    private final @Nullable Long iterations;
    private final boolean clock;
    /** Whether all the time is used, as when the maker said how much. */
    private final boolean patient;

    private final InstantSource time;
    private final Instant end;
    private double left;

    Budget(Orders orders, @Nullable Double seconds, @Nullable Long iterations, InstantSource time) {
        this(
                Budget::toCut,
                orders.fabrics().stream().mapToDouble(Budget::weight).sum()
                        + ASIDE
                                * orders.shared().stream()
                                        .flatMap(shared -> shared.bought().stream())
                                        .mapToDouble(Budget::toCut)
                                        .sum(),
                orders.fabrics().stream()
                        .map(FabricOrder::order)
                        .mapToDouble(Budget::toCut)
                        .sum(),
                LONGEST_SECONDS_TO_CUT,
                seconds,
                iterations,
                time);
    }

    private Budget(
            ToDoubleFunction<MarkerOrder> deserved,
            double weight,
            double markers,
            double longest,
            @Nullable Double seconds,
            @Nullable Long iterations,
            InstantSource time) {
        this.deserved = deserved;
        this.iterations = iterations;
        this.clock = seconds != null || iterations == null;
        this.time = time;
        this.left = weight;
        this.patient = seconds != null || iterations != null;
        this.whole = seconds != null ? seconds : within(longest, markers) * left / markers;
        this.end = time.instant().plusMillis((long) (whole * 1000));
    }

    /** Returns the budget for a marker of each of some orders, and nothing beside them. */
    static Budget forEach(
            List<MarkerOrder> orders, @Nullable Double seconds, @Nullable Long iterations, InstantSource time) {
        double deserved = orders.stream().mapToDouble(Budget::deserved).sum();
        return new Budget(Budget::deserved, deserved, deserved, LONGEST_DEFAULT_SECONDS, seconds, iterations, time);
    }

    /** Returns the seconds that are thought enough for a marker of an order that is to be bought or planned by. */
    static double enough(MarkerOrder order) {
        return within(LONGEST_DEFAULT_SECONDS, deserved(order));
    }

    private static double within(double longest, double seconds) {
        return Math.min(longest, Math.max(SHORTEST_DEFAULT_SECONDS, seconds));
    }

    /**
     * Returns the search that shares an order out over several pieces of cloth. Where no time is said it comes on top of what
     * the markers get; where rounds alone count, it is without end, and ends when all has been tried.
     *
     * @param count how many orders are to be shared out
     */
    static Search sharingOut(
            SharedOrder shared, int count, @Nullable Double seconds, @Nullable Long iterations, long seed) {
        if (seconds == null && iterations != null) {
            return Search.of(progress -> 0, seed, 1);
        }
        double most = seconds != null
                ? SHARING_OUT * seconds / count
                : SHARING_OUT * enough(shared.cloths().get(0));
        return Search.of(StopRule.elapsed(Duration.ofMillis((long) (1000 * most) + 1)), seed, 1);
    }

    private static double weight(FabricOrder fabric) {
        int asides = fabric.freer().size()
                + fabric.instead().size()
                + (fabric.otherwise().isPresent() ? 1 : 0)
                + (fabric.order().fillers().isEmpty() ? 0 : 1)
                + (fabric.order().cutAlready().spoilt().isEmpty() ? 0 : 1);
        return toCut(fabric.order()) * (1 + ASIDE * asides)
                + fabric.comparison().map(Budget::toCut).orElse(0.0);
    }

    /**
     * Returns the seconds after which a marker is short enough to buy and plan by. They grow faster than the order: there are
     * more pieces to move, and each move looks at more others (benchmarks/README.md has what was measured).
     */
    static double deserved(MarkerOrder order) {
        double contours = contours(order);
        return contours / 4 + contours * contours / 70;
    }

    /**
     * Returns the seconds that a marker to be cut is worth, of which it uses what it gains by. Small orders get more than their
     * moves would tell: curved pieces that hook into one another lie well in few ways, and some seeds need long to find one.
     */
    private static double toCut(MarkerOrder order) {
        return SECONDS_A_CONTOUR * contours(order);
    }

    /** Returns how many contours lie on the cloth, about: what is cut on the fold counts half. */
    private static double contours(MarkerOrder order) {
        double pieces = order.bundles().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .mapToInt(piece -> piece.cut().pieces())
                .sum();
        return pieces / order.fabric().spread().layers();
    }

    /** Returns the search for a marker that is asked for. */
    Search next(MarkerOrder order, long seed, int workers) {
        Search search = next(order, 1, seed, workers);
        return patient ? search : search.stoppedBy(search.stop().withPatience(PATIENCE));
    }

    /** Returns a short search beside it. */
    Search aside(MarkerOrder order, long seed, int workers) {
        return next(order, ASIDE, seed, workers);
    }

    /**
     * Returns the search for pieces that go one by one into the room that others leave: as long as one aside, and where
     * rounds alone count, without end.
     */
    Search oneByOne(MarkerOrder order, long seed, int workers) {
        Search aside = aside(order, seed, workers);
        return clock ? aside : Search.of(progress -> 0, seed, workers);
    }

    /**
     * Returns a search that only has to tell whether some garments find room. All of them together take no more than half
     * of the job's time; when that is over, the first layout tells alone.
     *
     * @param share of the time or rounds for a whole search
     * @param interrupted whether the maker wants no more of it
     */
    Search attempt(double share, long seed, int workers, BooleanSupplier interrupted) {
        double choosing = CHOOSING * whole * 1000;
        double left = Duration.between(time.instant(), end).toMillis() - (1 - CHOOSING) * whole * 1000;
        double millis = Math.max(1, Math.min(share * choosing, ONE_LOOK * left));
        Instant broken = time.instant().plusMillis((long) ((1 + PRESSING) * millis) + 1);
        return search(share, Duration.ofMillis((long) millis), seed, workers)
                .cancelledBy(() ->
                        interrupted.getAsBoolean() || (clock && time.instant().isAfter(broken)));
    }

    /** Returns likewise a search that has to tell whether they find room on several pieces of cloth together. */
    Search attemptToShare(double share, long seed, BooleanSupplier interrupted) {
        StopRule stop = clock
                ? StopRule.elapsed(Duration.ofMillis(1 + (long) (share * CHOOSING * whole * 1000)))
                : progress -> 0;
        return Search.of(stop, seed, 1).cancelledBy(interrupted);
    }

    /** Says whether finding out what fits has taken a tenth of the job's time more than it should: no more looks then. */
    boolean isChoosingOver() {
        double left = Duration.between(time.instant(), end).toMillis() / 1000.0;
        return clock && left < (1 - CHOOSING - OVERTIME) * whole;
    }

    /** Returns the seconds that are left, and at least a moment. */
    double secondsLeft() {
        return Math.max(LEAST_MILLIS, Duration.between(time.instant(), end).toMillis()) / 1000.0;
    }

    private Search next(MarkerOrder order, double share, long seed, int workers) {
        double weight = share * deserved.applyAsDouble(order);
        double part = weight < left ? weight / left : 1;
        left = Math.max(0, left - weight);
        long millis = (long) (Duration.between(time.instant(), end).toMillis() * part);
        return search(share, Duration.ofMillis(Math.max(LEAST_MILLIS, millis)), seed, workers);
    }

    private Search search(double shareOfRounds, Duration limit, long seed, int workers) {
        StopRule elapsed = StopRule.elapsed(limit);
        if (iterations == null) {
            return Search.of(elapsed, seed, workers);
        }
        StopRule rounds = StopRule.iterations(Math.max(1, Math.round(shareOfRounds * iterations)));
        return Search.of(clock ? rounds.or(elapsed) : rounds, seed, workers);
    }
}
