package lengthwise.plan;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Unfolding;

/**
 * Which part of the cloth of a marker each garment pays for: by the area of its pieces, whole where they are drawn as halves.
 * What lies between the pieces, at the ends and beyond is shared in the same way, so the parts add up to 1.
 */
public final class GarmentShares {
    private final Map<Integer, Double> areas = new LinkedHashMap<>();
    private final double all;

    private GarmentShares(MarkerOrder order) {
        Map<List<CutPiece>, Double> known = new HashMap<>();
        for (Bundle bundle : order.bundles()) {
            areas.put(
                    bundle.garment().number(),
                    known.computeIfAbsent(
                            bundle.pieces(),
                            pieces -> pieces.stream()
                                    .mapToDouble(GarmentShares::squareMillimetres)
                                    .sum()));
        }
        all = areas.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    public static GarmentShares of(MarkerOrder order) {
        return new GarmentShares(order);
    }

    private static double squareMillimetres(CutPiece cut) {
        int each = cut.cut().manner() == Cut.Manner.PAIR ? 2 : 1;
        return each * cut.cut().count() * Unfolding.whole(cut.piece()).outline().squareMillimetres();
    }

    /** Returns the part of one garment, from 0 to 1; 0 for one that takes none of this cloth. */
    public double of(int garment) {
        return all == 0 ? 0 : areas.getOrDefault(garment, 0.0) / all;
    }
}
