package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Length;

/** A plain rectangle that needs no drawing: a tie, a binding. */
public record JobStrip(Length cutWidth, StripLength length, Optional<Runs> runs, Optional<PrintUse> print) {
    /** How long a strip is cut. */
    public sealed interface StripLength {
        /** The same for every garment. */
        record Fixed(Length length) implements StripLength {}

        /** A measure of the order line and what is added to it; a negative addition makes the strip shorter. */
        record OfMeasure(String measure, Length plus) implements StripLength {}
    }

    /** Which way the long side of a strip lies. */
    public enum Runs {
        LENGTHWISE,
        CROSSWISE,
        EITHER,
        /** At 45° to the selvedge. */
        BIAS
    }

    /** Whether a strip minds the direction of the print. */
    public enum PrintUse {
        FOLLOW,
        IGNORE
    }

    /**
     * Returns how long the strip is for one order line; empty where the line does not have the measure.
     */
    public Optional<Length> lengthFor(OrderLine line) {
        if (length instanceof StripLength.OfMeasure of) {
            return line.measure(of.measure()).map(measure -> measure.plus(of.plus()));
        }
        return Optional.of(((StripLength.Fixed) length).length());
    }
}
