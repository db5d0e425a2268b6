package lengthwise.report;

import java.util.List;
import lengthwise.Recut;

/** Says what becomes of pieces that were cut and are of no use. */
public final class RecutWords {
    private RecutWords() {}

    /** Returns a sentence or two for each piece. */
    public static List<String> of(Recut recut) {
        return recut.answers().stream().map(RecutWords::of).toList();
    }

    private static String of(Recut.Answer answer) {
        String called = answer.spoilt().called();
        String why = answer.underFlaw()
                ? "A flaw lies over %s, which is cut already".formatted(called)
                : "%s is cut and spoilt".formatted(called);
        return switch (answer.way()) {
            case FROM_THE_WASTE ->
                why + ": it has to be cut again. There is room for it in the waste between what is cut.";
            case FROM_WHOLE_CLOTH ->
                why + ": it has to be cut again. No room for it was found in the waste; it takes whole cloth.";
            case NOT_WANTED -> why + "; this order does not want it.";
        };
    }
}
