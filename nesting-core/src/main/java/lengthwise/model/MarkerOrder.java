package lengthwise.model;

import java.util.List;

/** What one marker has to hold: a fabric, the garments, and the least distance between pieces. */
public record MarkerOrder(Fabric fabric, Length gap, List<Bundle> bundles) {
    public MarkerOrder {
        bundles = List.copyOf(bundles);
    }
}
