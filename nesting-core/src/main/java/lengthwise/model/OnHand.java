package lengthwise.model;

import java.util.Optional;
import lengthwise.geometry.Outline;

/**
 * The piece of cloth that is there: a marker for it may be no longer, and no piece may leave it.
 *
 * @param length from cut end to cut end, as bought
 * @param outline of a remnant that is no straight piece over the whole width, in marker coordinates (after washing, if
 *     pre-washed); it has no holes
 */
public record OnHand(Length length, Optional<Outline> outline) {
    public OnHand {
        if (outline.isPresent() && !outline.get().holes().isEmpty()) {
            throw new IllegalArgumentException("The outline of a remnant has no holes; holes in it are flaws.");
        }
    }

    /** A straight piece over the whole width. */
    public static OnHand of(Length length) {
        return new OnHand(length, Optional.empty());
    }
}
