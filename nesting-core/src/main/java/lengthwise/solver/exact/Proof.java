package lengthwise.solver.exact;

/** A packing and a length that no packing of its task can fall below, on the grid of whole micrometres. */
public record Proof(Packing packing, long lowerBound) {}
