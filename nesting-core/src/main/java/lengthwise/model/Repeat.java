package lengthwise.model;

import java.util.Optional;

/**
 * The repeat of a print, from an origin in marker coordinates. A repeat alone constrains nothing; only match points do.
 *
 * @param lengthwise distance after which the print comes again along the fabric; zero: it does not repeat lengthwise
 * @param crosswise the same across the fabric
 * @param halfDrop every next column across is moved by half the lengthwise repeat
 * @param mirrored the print is its own mirror image about the line along the fabric through the origin
 * @param picture of one repeat, to draw
 */
public record Repeat(
        Length lengthwise,
        Length crosswise,
        boolean halfDrop,
        boolean mirrored,
        Length originX,
        Length originY,
        Optional<PrintPicture> picture) {
    /** A repeat that nobody has a picture of. */
    public Repeat(
            Length lengthwise, Length crosswise, boolean halfDrop, boolean mirrored, Length originX, Length originY) {
        this(lengthwise, crosswise, halfDrop, mirrored, originX, originY, Optional.empty());
    }

    /** A repeat without a known mirror axis. */
    public Repeat(Length lengthwise, Length crosswise, boolean halfDrop, Length originX, Length originY) {
        this(lengthwise, crosswise, halfDrop, /* mirrored= */ false, originX, originY);
    }

    /** Returns the same repeat with a picture of it. */
    public Repeat shownAs(PrintPicture other) {
        return new Repeat(lengthwise, crosswise, halfDrop, mirrored, originX, originY, Optional.of(other));
    }

    /** Returns the distance after which the print comes again; zero: it does not. */
    public Length along(Axis axis) {
        return axis == Axis.LENGTHWISE ? lengthwise : crosswise;
    }
}
