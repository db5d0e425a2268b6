package lengthwise.svg;

import java.util.List;
import java.util.stream.Stream;
import lengthwise.model.CutAlready;
import lengthwise.model.Garment;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Placement;

/**
 * A pale tint for each size of a marker, or for each garment where all are of one size. Pale enough to print as paper
 * grey with black lettering on it; nothing is said by colour alone.
 */
final class Tints {
    private static final List<String> PALE =
            List.of("#dfeae3", "#f5e6d3", "#dce7f2", "#f1dfe3", "#ebe8cd", "#e5deee", "#d6e9ea", "#ecdfd5");

    private final List<String> keys;
    private final boolean bySize;
    private final CutAlready cut;

    Tints(MarkerOrder order) {
        List<Garment> garments =
                order.bundles().stream().map(bundle -> bundle.garment()).toList();
        bySize = garments.stream().map(Garment::size).distinct().count() > 1;
        cut = order.cutAlready();
        keys = garments.stream().map(this::key).distinct().toList();
    }

    String of(Placement placement) {
        return cut.holds(placement)
                ? MarkerSvg.NOT_CUTTABLE
                : tint(key(placement.item().garments().get(0)));
    }

    /** A tint and what it stands for. */
    record Entry(String tint, String meaning) {}

    /** Returns what the tints mean; nothing where there is only one. */
    List<Entry> key(MarkerOrder order) {
        return keys.size() < 2 || keys.size() > PALE.size()
                ? List.of()
                : keys.stream()
                        .map(key -> new Entry(tint(key), bySize ? sizeMeaning(key, order) : "garment " + key))
                        .toList();
    }

    private static String sizeMeaning(String size, MarkerOrder order) {
        Stream<String> numbers = order.bundles().stream()
                .map(bundle -> bundle.garment())
                .filter(garment -> garment.size().name().equals(size))
                .map(Garment::called)
                .distinct();
        List<String> all = numbers.toList();
        return "size %s: garment%s %s".formatted(size, all.size() > 1 ? "s" : "", String.join(", ", all));
    }

    private String key(Garment garment) {
        return bySize ? garment.size().name() : garment.called();
    }

    /** Fillers are of no garment and stay white. */
    private String tint(String key) {
        return keys.contains(key) ? PALE.get(keys.indexOf(key) % PALE.size()) : "#ffffff";
    }
}
