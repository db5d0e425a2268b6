package lengthwise.pdf;

import java.util.Locale;
import lengthwise.model.Length;

/**
 * What a printed check square measured, against what it should. True means within half a millimetre; a print that is not
 * is made again at the scale that puts it right, true side over measured side.
 */
public record MeasuredSquare(Length measured, Length side) {
    private static final long TOLERANCE = 500;

    /** The side of one square and of the other (1 in = 25.4 mm exactly: International Yard and Pound Agreement, 1959). */
    public static final Length TEN_CENTIMETRES = Length.ofMillimetres(CheckSheet.METRIC);

    public static final Length FOUR_INCHES = Length.ofMillimetres(CheckSheet.INCHES);

    public boolean isTrue() {
        return Math.abs(measured.minus(side).micrometres()) <= TOLERANCE;
    }

    /** Returns the scale to set, in per cent of the print that was measured. */
    public double scaleToSet() {
        return 100.0 * side.micrometres() / measured.micrometres();
    }

    /** Says what to do, in sentences. */
    public String answer() {
        String name = side.equals(FOUR_INCHES) ? "4 in (101.6 mm)" : "10 cm (100 mm)";
        String found = String.format(Locale.ROOT, "%.1f mm", measured.millimetres());
        if (isTrue()) {
            return "True: the square of %s measures %s. Measure it the other way too, then cut.".formatted(name, found);
        }
        Length other = side.equals(FOUR_INCHES) ? TEN_CENTIMETRES : FOUR_INCHES;
        String confused = new MeasuredSquare(measured, other).isTrue()
                ? " If you measured the other square, it is true: say "
                        + (other.equals(FOUR_INCHES) ? "\"4 in\"." : "\"10 cm\".")
                : "";
        return String.format(
                        Locale.ROOT,
                        "Reprint, don't cut: the square of %s measures %s, so the print is at %.1f %%. Print it at 100 %%,"
                                + " without scaling or fitting to the page. If the printer still does that, set its scale to"
                                + " %.1f %%.",
                        name,
                        found,
                        100.0 * measured.micrometres() / side.micrometres(),
                        scaleToSet())
                + confused;
    }
}
