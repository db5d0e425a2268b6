package lengthwise.job;

import java.util.Optional;
import lengthwise.drawing.EdgePoint;

/**
 * An edge of a drawn piece, to be measured on it.
 *
 * @param between its ends; empty where the whole outline is meant
 * @param counts how often it counts; left out: twice where it ends on the fold, since it goes on in the other half, else once
 */
public record DrawnEdge(String piece, Optional<Between> between, Optional<Counts> counts) {
    /**
     * From one point of the outline to another.
     *
     * @param past a point on the way, where two ways lead round
     */
    public record Between(EdgePoint from, EdgePoint to, Optional<EdgePoint> past) {}

    /** How often the edge of a half piece counts. */
    public enum Counts {
        ONCE,
        TWICE
    }

    /** The edge as it may stand in the job. */
    enum Edge {
        WHOLE_OUTLINE
    }
}
