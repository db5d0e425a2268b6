package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Length;

/** A plain rectangle that needs no drawing: a tie, a binding. */
public record JobStrip(Length cutWidth, LengthRule length, Optional<Runs> runs, Optional<PrintUse> print) {
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
}
