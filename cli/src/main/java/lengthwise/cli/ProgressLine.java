package lengthwise.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.OptionalDouble;
import lengthwise.model.Marker;
import lengthwise.solver.Progress;
import lengthwise.solver.Search;
import lengthwise.solver.SearchEvent;

/**
 * Shows how a search is coming along: on a terminal a line that is written over, elsewhere nothing but the end.
 */
final class ProgressLine {
    private static final int BAR = 24;

    private final PrintWriter err;
    private final boolean terminal;
    private final String fabric;
    private double shownFraction = -1;
    private OptionalDouble efficiency = OptionalDouble.empty();
    private long length;

    ProgressLine(PrintWriter err, boolean terminal, String fabric) {
        this.err = err;
        this.terminal = terminal;
        this.fabric = fabric;
    }

    /** Follows the events of a search. */
    synchronized void event(SearchEvent event, Search search) {
        Progress progress = event instanceof SearchEvent.Improved improved
                ? improved.progress()
                : ((SearchEvent.Working) event).progress();
        double fraction = Math.min(1, search.stop().fraction(progress));
        if (terminal && (event instanceof SearchEvent.Improved || fraction - shownFraction > 0.01)) {
            shownFraction = fraction;
            show(fraction);
        }
    }

    /** Takes note of a better marker. */
    synchronized void better(Marker marker) {
        length = marker.length().micrometres();
        efficiency = OptionalDouble.of(marker.efficiency());
        if (terminal) {
            show(Math.max(0, shownFraction));
        }
    }

    private void show(double fraction) {
        int done = (int) Math.round(fraction * BAR);
        err.print(String.format(
                Locale.ROOT,
                "\r%s [%s%s] %3.0f %%  %s   ",
                fabric,
                "=".repeat(done),
                " ".repeat(BAR - done),
                fraction * 100,
                efficiency.isPresent()
                        ? String.format(
                                Locale.ROOT, "%.3f m, %.1f %% used", length / 1e6, efficiency.getAsDouble() * 100)
                        : "laying the first pieces"));
        err.flush();
    }

    /** Ends the line. */
    synchronized void done() {
        if (terminal) {
            show(1);
            err.println();
        }
    }
}
