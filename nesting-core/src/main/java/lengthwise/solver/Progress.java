package lengthwise.solver;

import java.time.Duration;

/**
 * How far a search has come.
 *
 * @param iteration sweeps done by each worker
 * @param lastImprovement the iteration at which the best length was found
 * @param sinceImprovement time since then
 * @param moves of single pieces, of all workers
 * @param bestLength shortest legal length so far, in micrometres; {@link Long#MAX_VALUE} before there is one
 */
public record Progress(
        long iteration,
        long lastImprovement,
        long moves,
        Duration elapsed,
        Duration sinceImprovement,
        long bestLength) {}
