package lengthwise.rules;

import lengthwise.geometry.Outline;

/**
 * One contour that the search has to place.
 *
 * @param outline in the frame of the piece
 * @param gap least distance to any other piece, in micrometres; between two pieces the larger of their gaps counts
 */
public record Demand(Outline outline, PlacementDomain domain, long gap) {}
