package lengthwise.workshop;

import java.util.List;
import java.util.OptionalDouble;
import lengthwise.model.Length;

/**
 * What a run takes out of the maker's stash for one fabric, and what goes back.
 *
 * @param fabric of the job
 * @param cloth the label on it
 * @param length how long it was, as it lay in the stash
 * @param spent how much of that is spent
 * @param back what goes into the stash; a rest under the label comes first
 * @param value of what is spent, as cloth over the whole width, to the hundredth; empty where it has no price
 */
public record StashDraw(
        String fabric, String cloth, Length length, Length spent, List<Back> back, OptionalDouble value) {
    public StashDraw {
        back = List.copyOf(back);
    }

    /** A piece of cloth that goes back, as it is then: washed, where it is washed before it is cut. */
    public record Back(Length length, Length width) {}
}
