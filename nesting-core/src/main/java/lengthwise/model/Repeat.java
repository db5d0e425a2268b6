package lengthwise.model;

/**
 * The repeat of a print, from an origin in marker coordinates. A repeat alone constrains nothing; only match points do.
 *
 * @param lengthwise distance after which the print comes again along the fabric; zero: it does not repeat lengthwise
 * @param crosswise the same across the fabric
 * @param halfDrop every next column across is moved by half the lengthwise repeat
 */
public record Repeat(Length lengthwise, Length crosswise, boolean halfDrop, Length originX, Length originY) {}
