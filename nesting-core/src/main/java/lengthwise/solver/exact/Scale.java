package lengthwise.solver.exact;

/**
 * Counts lengths in a coarse unit, so that the numbers of a model stay small, and single micrometres in parts of it.
 *
 * <p>Where every length is a sum of multiples of the unit and of fewer than {@code parts} single micrometres, lengths
 * compare as pairs of units and micrometres do, as long as {@code parts} micrometres are less than the unit.
 */
record Scale(long unit, long parts) {
    /** Returns the largest such length that is not above one in micrometres. */
    long floor(long micrometres) {
        return micrometres / unit * parts + Math.min(parts - 1, micrometres % unit);
    }

    /** Returns the least such length that is not below one in micrometres. */
    long ceil(long micrometres) {
        long rest = micrometres % unit;
        return rest < parts ? micrometres / unit * parts + rest : (micrometres / unit + 1) * parts;
    }

    long micrometres(long counted) {
        return counted / parts * unit + counted % parts;
    }
}
