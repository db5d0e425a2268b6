package lengthwise.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Item;

/**
 * One way per garment: the pieces of a garment lie the same way, the next garment may be turned. Contours that serve
 * two garments bind both.
 */
final class GarmentDirectionRule {
    private GarmentDirectionRule() {}

    static List<Bond> bonds(List<Item> items, Fabric fabric) {
        Map<Garment, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < items.size(); i++) {
            Item item = items.get(i);
            if (DirectionRule.bindsGarment(item.piece(), fabric)) {
                List<Integer> joined = new ArrayList<>();
                for (Garment garment : item.garments()) {
                    List<Integer> group = groups.getOrDefault(garment, List.of());
                    if (!joined.equals(group)) {
                        joined.addAll(group);
                    }
                }
                joined.add(i);
                joined.forEach(member -> items.get(member).garments().forEach(g -> groups.put(g, joined)));
            }
        }
        return groups.values().stream()
                .distinct()
                .filter(group -> group.size() > 1)
                .map(group -> (Bond) new Bond.SameTurn(group))
                .toList();
    }
}
