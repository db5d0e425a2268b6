package lengthwise.cli;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Locale;
import java.util.Optional;

/**
 * How far a chart is, and how long it will still take: the searches that are left, as long as they were planned, and what
 * each cell so far has taken beside its search.
 */
final class ChartPace {
    private static final Duration BETWEEN_LINES = Duration.ofSeconds(1);

    private final int all;
    private final int workers;
    private final double planned;
    private final InstantSource clock;
    private final Instant start;
    private Instant said = Instant.MIN;
    private int finished;
    private double done;

    /**
     * Begins.
     *
     * @param all cells that are to be worked out
     * @param planned seconds for the searches of all of them; 0 where rounds alone count
     */
    ChartPace(int all, int workers, double planned, InstantSource clock) {
        this.all = all;
        this.workers = workers;
        this.planned = planned;
        this.clock = clock;
        this.start = clock.instant();
    }

    /** Notes a finished cell and returns a line for people, at most one a second; called by one thread at a time. */
    Optional<String> finished(double seconds) {
        finished++;
        done += seconds;
        Instant now = clock.instant();
        if (finished < all && now.isBefore(said.plus(BETWEEN_LINES))) {
            return Optional.empty();
        }
        said = now;
        double passed = Duration.between(start, now).toMillis() / 1000.0;
        double beside = Math.max(0, passed * workers - done) / finished;
        double left = (planned - done + beside * (all - finished)) / workers;
        return Optional.of(
                finished == all
                        ? "%d of %d cells.".formatted(finished, all)
                        : "%d of %d cells, about %s left.".formatted(finished, all, words(left)));
    }

    private static String words(double seconds) {
        long whole = Math.round(seconds);
        return whole < 60 ? whole + " s" : String.format(Locale.ROOT, "%d min %d s", whole / 60, whole % 60);
    }
}
