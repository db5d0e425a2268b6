package lengthwise.toolpath;

import java.util.List;
import lengthwise.geometry.Outline;
import lengthwise.geometry.OutlineOffset;
import lengthwise.model.Length;

/**
 * The width of what the tool takes away, and on which side of the cut line it is to be taken.
 *
 * @param width of the cut; half of it lies on either side of the tool's path
 */
public record Kerf(Length width, Side side) {
    /** Nothing is allowed for: the tool follows the cut line. */
    public static final Kerf NONE = new Kerf(Length.ZERO, Side.OUTWARD);

    /** Which side of the cut line the path is moved to. */
    public enum Side {
        /** Outside pieces, inside their holes: what is cut out measures what was drawn. */
        OUTWARD,
        /** Inside pieces: the opening that is left measures what was drawn. */
        INWARD
    }

    /** @throws IllegalArgumentException if the width is negative */
    public Kerf {
        if (width.micrometres() < 0) {
            throw new IllegalArgumentException("A kerf has a width of 0 or more, not " + width + ".");
        }
    }

    /** Returns the path along an outline, corners kept: in one part, unless the outline is too narrow for it. */
    List<Outline> along(Outline outline) {
        return side == Side.OUTWARD
                ? List.of(OutlineOffset.grow(outline, half()))
                : OutlineOffset.shrink(outline, half());
    }

    /** Returns half the width in micrometres. */
    long half() {
        return StrictMath.round(width.micrometres() / 2.0);
    }
}
