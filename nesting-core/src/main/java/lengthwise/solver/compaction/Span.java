package lengthwise.solver.compaction;

/**
 * Two bodies that have to stay near to each other: one may lie at most so far after the other, along x or along y. What
 * says it of both ways round is two of these.
 *
 * @param first number of the one that the other may not lie too far after
 * @param most how far the position of the last may be beyond that of the first, in micrometres
 */
public record Span(int first, int last, boolean alongX, double most) {}
