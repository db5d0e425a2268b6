package lengthwise.model;

import lengthwise.geometry.Box;

/**
 * A place in a print that comes again with it: the rectangle that is said, or the ellipse that fills it.
 *
 * @param name the maker's name for it
 * @param place from the print's origin, in marker coordinates; where the print does not repeat along an axis it goes on for
 *     ever that way, whatever the rectangle says
 * @param round whether it is the ellipse
 */
public record Motif(String name, Box place, boolean round) {}
