package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Spread;

/** How a fabric of the job lies, as far as the file says it. */
public record JobSpread(
        Optional<Spread.Form> form,
        Optional<Integer> plies,
        Optional<Spread.PlyRun> pliesRun,
        Optional<Length> endAllowance) {
    /** Nothing is said. */
    public static final JobSpread UNSAID =
            new JobSpread(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    static JobSpread of(Spread spread) {
        boolean inPlies = isInPlies(spread.form());
        return new JobSpread(
                Optional.of(spread.form()),
                inPlies ? Optional.of(spread.layers()) : Optional.empty(),
                spread.form() == Spread.Form.PLIES_FACE_TO_FACE ? Optional.of(spread.plyRun()) : Optional.empty(),
                Optional.of(spread.endAllowance()));
    }

    static boolean isInPlies(Spread.Form form) {
        return form == Spread.Form.PLIES_FACE_UP || form == Spread.Form.PLIES_FACE_TO_FACE;
    }

    /** Returns the spread of a form: two layers, but for a single one and for plies of which more are said. */
    Spread spread(Spread.Form form, Length ends) {
        return isInPlies(form)
                ? new Spread(form, ends, plies.orElse(2), pliesRun.orElse(Spread.PlyRun.SAME_WAY))
                : new Spread(form, ends);
    }
}
