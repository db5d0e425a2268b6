package lengthwise.job;

import java.util.Optional;
import lengthwise.model.Lying;
import lengthwise.model.Spread;

/** What a marker for one width of a fabric is worth on a greater width of it. */
public enum WiderFabric {
    /** It lies on wider cloth as well; what is on the far fold or the far selvedge moves out with it, if it can. */
    TAKES_THE_SAME,
    /** Folds, the print on the folded cloth or a border lie elsewhere on wider cloth, but it can be cut down to the width. */
    CAN_BE_CUT_DOWN,
    /** What is printed or woven at the far edge lies farther from what is at the near one, and cutting down brings neither back. */
    ANOTHER_CLOTH;

    public static WiderFabric of(Job job, JobFabric said) {
        Optional<Spread.Form> form = said.spread().form();
        boolean foldedLengthwise = form.equals(Optional.of(Spread.Form.FOLD_LENGTHWISE));
        boolean printed = said.repeat().isPresent() || !said.across().zones().isEmpty();
        boolean farBorder = said.across()
                .border()
                .filter(border -> border.selvedge() == Lying.Selvedge.FAR)
                .isPresent();
        boolean selvedgeKept =
                job.pieces().stream().anyMatch(piece -> piece.lying().edgeOnSelvedge());
        if (form.equals(Optional.of(Spread.Form.TUBE))) {
            return printed || farBorder ? ANOTHER_CLOTH : TAKES_THE_SAME;
        }
        if (farBorder) {
            return printed || selvedgeKept ? ANOTHER_CLOTH : CAN_BE_CUT_DOWN;
        }
        boolean foldMoves = form.equals(Optional.of(Spread.Form.SELVEDGES_TO_MIDDLE)) || (foldedLengthwise && printed);
        if (foldMoves) {
            return selvedgeKept ? ANOTHER_CLOTH : CAN_BE_CUT_DOWN;
        }
        return TAKES_THE_SAME;
    }
}
