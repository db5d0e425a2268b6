package lengthwise.drawing;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which groups and layers of a drawing are sizes: those named as a size, and layers that hold pieces of the same names
 * in different measures.
 */
final class Sizes {
    private final Map<Integer, String> byGroup = new HashMap<>();

    Sizes(Drawing drawing) {
        Map<Integer, String> layers = new LinkedHashMap<>();
        Map<Integer, Map<String, Double>> held = new HashMap<>();
        for (DrawnShape shape : drawing.shapes()) {
            for (int i = 0; i < shape.groups().size(); i++) {
                Group group = shape.groups().get(i);
                Optional<String> name = group.names().spoken();
                name.flatMap(SizeNames::of).ifPresent(size -> byGroup.put(group.number(), size));
                if (group.layer() && name.isPresent() && !SizeNames.isGenericLayer(name.get())) {
                    layers.putIfAbsent(group.number(), name.get());
                    label(shape, i)
                            .ifPresent(label -> held.computeIfAbsent(group.number(), g -> new LinkedHashMap<>())
                                    .merge(label, length(shape), Math::max));
                }
            }
        }
        if (byGroup.isEmpty()) {
            findGrades(layers, held);
        }
    }

    /** Returns the size of what these groups hold, the innermost speaking first. */
    Optional<String> of(List<Group> groups) {
        for (int i = groups.size() - 1; i >= 0; i--) {
            String size = byGroup.get(groups.get(i).number());
            if (size != null) {
                return Optional.of(size);
            }
        }
        return Optional.empty();
    }

    /** Returns the maker's name for a shape below a layer: its own label, or that of a group in between. */
    private static Optional<String> label(DrawnShape shape, int layer) {
        Optional<String> label = shape.names().label();
        for (int i = shape.groups().size() - 1; i > layer && label.isEmpty(); i--) {
            label = shape.groups().get(i).names().label();
        }
        return label.filter(name -> !MarkKind.isAllThereIs(name));
    }

    private static double length(DrawnShape shape) {
        return shape.chains().stream().mapToDouble(Chain::length).sum();
    }

    private void findGrades(Map<Integer, String> layers, Map<Integer, Map<String, Double>> held) {
        for (int layer : layers.keySet()) {
            Map<String, Double> own = held.getOrDefault(layer, Map.of());
            Set<Integer> alike = new HashSet<>();
            for (int other : layers.keySet()) {
                Map<String, Double> theirs = held.getOrDefault(other, Map.of());
                if (other != layer && !own.isEmpty() && own.keySet().equals(theirs.keySet()) && differ(own, theirs)) {
                    alike.add(other);
                }
            }
            if (!alike.isEmpty()) {
                byGroup.put(layer, layers.getOrDefault(layer, ""));
            }
        }
    }

    private static boolean differ(Map<String, Double> own, Map<String, Double> theirs) {
        return own.entrySet().stream()
                .anyMatch(entry ->
                        Math.abs(entry.getValue() - theirs.getOrDefault(entry.getKey(), entry.getValue())) > 1000);
    }
}
