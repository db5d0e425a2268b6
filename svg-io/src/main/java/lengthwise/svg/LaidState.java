package lengthwise.svg;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Segment;

/**
 * How a piece of a marker lies on the cloth, beyond its marks, in marker coordinates, micrometres.
 *
 * @param foldEdge the part of the cut line that lies on the fold of the cloth: there nothing is cut
 * @param arrowHeads the heads of the grain arrow, three points each; one at the up end, or two
 * @param cutAlready whether the piece was cut before the marker was made, and only shows where
 */
public record LaidState(Optional<Segment> foldEdge, List<List<Point>> arrowHeads, boolean cutAlready) {
    public LaidState {
        arrowHeads = arrowHeads.stream().map(List::copyOf).toList();
    }
}
