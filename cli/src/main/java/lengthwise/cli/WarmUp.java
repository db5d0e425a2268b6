package lengthwise.cli;

import java.util.List;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;
import lengthwise.rules.Demand;
import lengthwise.rules.LayoutTask;
import lengthwise.rules.PlacementDomain;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.solver.StripSearch;

/**
 * Loads the classes of the search on another processor while the job and its drawings are read, by laying two small
 * pieces that nobody asked for. It saves time on the way to the first marker and touches no result.
 */
final class WarmUp {
    private WarmUp() {}

    static void start() {
        Thread thread = new Thread(WarmUp::layTwoPieces, "warm-up");
        thread.setDaemon(true);
        thread.start();
    }

    private static void layTwoPieces() {
        Outline arrowHead = Outline.of(Ring.of(0, 0, 30_000, 20_000, 0, 40_000, 9_000, 20_000));
        Demand demand = new Demand(
                arrowHead,
                new PlacementDomain(List.of(Orientation.AS_DRAWN), new PlacementDomain.Positions.Free()),
                1_000);
        StripSearch.solve(
                new LayoutTask(100_000, List.of(demand, demand), List.of(), List.of()),
                Search.of(StopRule.iterations(2), 1, 1));
    }
}
