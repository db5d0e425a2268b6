package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Spread;

/**
 * How a fabric of the job lies, as far as the file says it.
 *
 * @param compare another way to lay it, for comparison in the report
 */
public record JobSpread(
        Optional<Spread.Form> form,
        Optional<Integer> plies,
        Optional<Spread.PlyRun> pliesRun,
        Optional<Length> endAllowance,
        Optional<Spread.Form> compare) {
    /** Nothing is said. */
    public static final JobSpread UNSAID =
            new JobSpread(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    JobSpread withForm(Spread.Form other) {
        return new JobSpread(Optional.of(other), plies, pliesRun, endAllowance, Optional.empty());
    }

    /** Returns what is said when a spread was made of this. */
    JobSpread filled(Spread spread) {
        boolean inPlies = isInPlies(spread.form());
        return new JobSpread(
                Optional.of(spread.form()),
                inPlies ? Optional.of(spread.layers()) : Optional.empty(),
                spread.form() == Spread.Form.PLIES_FACE_TO_FACE ? Optional.of(spread.plyRun()) : Optional.empty(),
                Optional.of(spread.endAllowance()),
                compare);
    }

    static boolean isInPlies(Spread.Form form) {
        return form == Spread.Form.PLIES_FACE_UP || form == Spread.Form.PLIES_FACE_TO_FACE;
    }

    /** Returns the spread of a form: two layers, but for a single one and for plies of which more are said. */
    Spread spread(Spread.Form form, Length ends) {
        return isInPlies(form)
                ? new Spread(
                        form,
                        ends,
                        plies.orElse(2),
                        pliesRun.filter(run -> form == Spread.Form.PLIES_FACE_TO_FACE)
                                .orElse(Spread.PlyRun.SAME_WAY))
                : new Spread(form, ends);
    }
}
