package lengthwise.rules;

import java.util.List;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Pose;

/**
 * One contour that the search has to place.
 *
 * @param outline in the frame of the piece
 * @param gap least distance to any other piece, in micrometres; between two pieces the larger of their gaps counts
 */
public record Demand(Outline outline, PlacementDomain domain, long gap) {
    /** Returns the demand for a contour that is laid already. */
    public Demand laidAt(Pose pose) {
        return new Demand(
                outline,
                new PlacementDomain(List.of(pose.orientation()), new PlacementDomain.Positions.Laid(pose.offset())),
                gap);
    }
}
