package lengthwise.model;

import java.util.Optional;

/**
 * How near to each other pieces are cut of a cloth whose colour drifts, so that they are of one shade. Of one way at
 * least something is said.
 *
 * @param lengthwise all pieces of a garment lie within such a stretch of the cloth, from where the first begins to where
 *     the last ends
 * @param crosswise left and right of a piece lie in a band of such a width, wherever it is
 */
public record Shade(Optional<Length> lengthwise, Optional<Length> crosswise) {}
