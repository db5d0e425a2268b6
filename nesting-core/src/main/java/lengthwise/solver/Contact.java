package lengthwise.solver;

/** How deep a shape lies in another one, and the shortest way out. Filled by {@link DepthMap#look}. */
final class Contact {
    /** Depth in micrometres; negative: the distance apart; very negative: far apart. */
    double depth;
    /** Unit vector of the shortest way out. */
    double outX;

    double outY;
}
