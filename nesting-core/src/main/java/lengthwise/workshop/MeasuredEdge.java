package lengthwise.workshop;

import java.util.Locale;
import java.util.Optional;
import lengthwise.model.Length;

/**
 * An edge that was measured on the drawing.
 *
 * @param size as the order calls it; may be empty
 * @param drawn how long it is there, halves opened
 * @param where the pieces and their points, a clause
 * @param stated what the job says that it measures, where it does
 */
public record MeasuredEdge(String edge, String size, Length drawn, Along along, String where, Optional<Length> stated) {
    /** More than a fiftieth is more than flattening, rounding and a tape measure make together. */
    private static final int LEAST_PART_OFF = 50;

    /** What line of the drawing was measured. */
    public enum Along {
        /** Where it is sewn. */
        SEW_LINE,
        /** Where it is cut, since no sew line is drawn all the way. */
        CUT_LINE
    }

    /** Returns the same edge, of which the job says how long it is. */
    public MeasuredEdge stated(Length length) {
        return new MeasuredEdge(edge, size, drawn, along, where, Optional.of(length));
    }

    /** Says whether the stated length and the drawn one differ by more than 2 %. */
    public boolean isOff() {
        return stated.isPresent()
                && Math.abs(stated.get().minus(drawn).micrometres()) * LEAST_PART_OFF > drawn.micrometres();
    }

    /** Returns by how much the stated length is off the drawn one: "5.5 % less". */
    public Optional<String> difference() {
        if (stated.isEmpty()) {
            return Optional.empty();
        }
        double percent = Math.abs(share()) * 100;
        return Optional.of(
                percent < 0.05
                        ? "the same"
                        : String.format(Locale.ROOT, "%.1f %% %s", percent, share() > 0 ? "more" : "less"));
    }

    private double share() {
        return stated.orElse(drawn).micrometres() / (double) Math.max(1, drawn.micrometres()) - 1;
    }
}
