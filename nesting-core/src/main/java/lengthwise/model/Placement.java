package lengthwise.model;

import lengthwise.geometry.Outline;
import lengthwise.geometry.Pose;

/** An item and where it lies, in marker coordinates: x from the start of the marker, y from the edge of the cuttable area. */
public record Placement(Item item, Pose pose) {
    public Outline outline() {
        return pose.apply(item.piece().outline());
    }
}
