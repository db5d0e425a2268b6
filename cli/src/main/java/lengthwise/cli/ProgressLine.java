package lengthwise.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Locale;
import lengthwise.model.Length;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;

/**
 * Shows on a terminal how a search is coming along: a line that is written over, never more often than an eye can
 * follow, and that never goes back. Elsewhere it shows nothing.
 */
final class ProgressLine {
    private static final int BAR = 24;

    /** Longer names would break the line on a narrow terminal, and only its last part would be written over. */
    private static final int LONGEST_NAME = 20;

    private static final Duration BETWEEN_REWRITES = Duration.ofMillis(200);

    private static final String NOTHING_YET = "laying the first pieces";

    private final PrintWriter err;
    private final boolean terminal;
    private final String fabric;
    private final InstantSource clock;
    private double fraction;
    private String found = NOTHING_YET;
    private String shown = "";
    private Instant shownAt = Instant.MIN;

    ProgressLine(PrintWriter err, boolean terminal, String fabric, InstantSource clock) {
        this.err = err;
        this.terminal = terminal;
        this.fabric = fabric.length() <= LONGEST_NAME ? fabric : fabric.substring(0, LONGEST_NAME - 3) + "...";
        this.clock = clock;
    }

    /** From Java 22 there is always a console; a progress line in a log does no harm. */
    @SuppressWarnings("SystemConsoleNull")
    static boolean onTerminal() {
        return System.console() != null;
    }

    /** Shows the line before the search begins. */
    synchronized void start() {
        show();
    }

    /** Follows the events of a search. */
    synchronized void event(SearchEvent event, Search search) {
        Progress progress = event instanceof SearchEvent.Improved improved
                ? improved.progress()
                : ((SearchEvent.Working) event).progress();
        fraction = Math.max(fraction, Math.min(1, search.stop().fraction(progress)));
        if (event instanceof SearchEvent.Working) {
            showIfDue();
        }
    }

    /** Takes note of a better marker. */
    synchronized void better(Length length, double efficiency) {
        boolean first = found.equals(NOTHING_YET);
        found = String.format(Locale.ROOT, "%.3f m, %.1f %% used", length.millimetres() / 1000, efficiency * 100);
        if (first) {
            show();
        } else {
            showIfDue();
        }
    }

    /**
     * Ends the line.
     *
     * @param finished whether the search ran to its end
     */
    synchronized void done(boolean finished) {
        if (finished) {
            fraction = 1;
        }
        show();
        if (terminal) {
            err.println();
            err.flush();
        }
    }

    /** Says, on a line of its own, what is looked into when the search is over. */
    synchronized void after(String what) {
        if (terminal) {
            err.println(fabric + ": " + what);
            err.flush();
        }
    }

    private void showIfDue() {
        if (!clock.instant().isBefore(shownAt.plus(BETWEEN_REWRITES))) {
            show();
        }
    }

    private void show() {
        int filled = (int) Math.round(fraction * BAR);
        String line = String.format(
                Locale.ROOT,
                "%s [%s%s] %3.0f %%  %s",
                fabric,
                "=".repeat(filled),
                " ".repeat(BAR - filled),
                fraction * 100,
                found);
        if (terminal && !line.equals(shown)) {
            err.print("\r" + line + " ".repeat(Math.max(0, shown.length() - line.length())));
            err.flush();
            shown = line;
            shownAt = clock.instant();
        }
    }
}
