package lengthwise.solver;

import java.time.Duration;

/**
 * How far a search has come.
 *
 * @param iteration sweeps done by each worker
 * @param moves of single pieces, of all workers
 * @param bestLength shortest legal length so far, in micrometres; {@link Long#MAX_VALUE} before there is one
 */
public record Progress(long iteration, long moves, Duration elapsed, long bestLength) {}
