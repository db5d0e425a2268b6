package lengthwise.model;

/** A length on the grid. May be zero; may be negative where a difference is meant. */
public record Length(long micrometres) implements Comparable<Length> {
    public static final Length ZERO = new Length(0);

    /** Returns the nearest grid length. */
    public static Length ofMillimetres(double millimetres) {
        return new Length(StrictMath.round(millimetres * 1000));
    }

    public double millimetres() {
        return micrometres / 1000.0;
    }

    public Length plus(Length other) {
        return new Length(micrometres + other.micrometres);
    }

    public Length minus(Length other) {
        return new Length(micrometres - other.micrometres);
    }

    public Length times(long factor) {
        return new Length(micrometres * factor);
    }

    /** Returns the nearest grid length to this one times a factor. */
    public Length scaled(double factor) {
        return new Length(StrictMath.round(micrometres * factor));
    }

    /** Returns the least multiple of a step that is not below this. */
    public Length upTo(Length step) {
        return new Length(-Math.floorDiv(-micrometres, step.micrometres) * step.micrometres);
    }

    /** Returns the largest multiple of a step that is not above this. */
    public Length downTo(Length step) {
        return new Length(Math.floorDiv(micrometres, step.micrometres) * step.micrometres);
    }

    public static Length min(Length a, Length b) {
        return a.micrometres <= b.micrometres ? a : b;
    }

    public static Length max(Length a, Length b) {
        return a.micrometres >= b.micrometres ? a : b;
    }

    @Override
    public int compareTo(Length other) {
        return Long.compare(micrometres, other.micrometres);
    }
}
