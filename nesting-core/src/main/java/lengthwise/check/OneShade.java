package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import lengthwise.geometry.Box;
import lengthwise.model.Axis;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Shade;

/** On cloth whose colour drifts the pieces of a garment lie in one stretch of it, left and right of a piece in one band. */
final class OneShade {
    private final MarkerOrder order;
    private final long tolerance;

    /** @param tolerance how far each outline may be off */
    OneShade(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = 2 * tolerance.micrometres();
    }

    List<Violation> violations(List<Laid> laid) {
        List<Violation> violations = new ArrayList<>();
        order.fabric().shade().flatMap(Shade::lengthwise).ifPresent(most -> {
            Map<Integer, List<Laid>> garments = new TreeMap<>();
            for (Laid piece : laid) {
                for (int garment : numbers(piece)) {
                    garments.computeIfAbsent(garment, key -> new ArrayList<>()).add(piece);
                }
            }
            garments.forEach((garment, pieces) -> judge(pieces, garment, Axis.LENGTHWISE, most, violations));
        });
        order.fabric().shade().flatMap(Shade::crosswise).ifPresent(most -> {
            Map<Integer, Map<String, List<Laid>>> mates = new TreeMap<>();
            for (Laid piece : laid) {
                for (Wanted wanted : piece.wanted()) {
                    if (wanted.mirrored() > 0) {
                        mates.computeIfAbsent(wanted.garment().number(), key -> new TreeMap<>())
                                .computeIfAbsent(wanted.name(), key -> new ArrayList<>())
                                .add(piece);
                    }
                }
            }
            mates.forEach((garment, pairs) ->
                    pairs.values().forEach(pair -> judge(pair, garment, Axis.CROSSWISE, most, violations)));
        });
        return violations;
    }

    private static List<Integer> numbers(Laid piece) {
        return piece.wanted().stream()
                .map(wanted -> wanted.garment().number())
                .distinct()
                .toList();
    }

    private void judge(List<Laid> pieces, int garment, Axis axis, Length most, List<Violation> violations) {
        Comparator<Laid> byStart = Comparator.comparingLong(piece -> start(piece, axis));
        Comparator<Laid> byEnd = Comparator.comparingLong(piece -> end(piece, axis));
        Laid first = pieces.stream().min(byStart).orElseThrow();
        Laid last = pieces.stream().max(byEnd).orElseThrow();
        long extent = end(last, axis) - start(first, axis);
        if (pieces.size() > 1 && extent > most.micrometres() + tolerance) {
            violations.add(
                    new Violation.TooFarApart(first.placed(), last.placed(), garment, axis, new Length(extent), most));
        }
    }

    private static long start(Laid piece, Axis axis) {
        Box box = piece.placed().outline().box();
        return axis == Axis.LENGTHWISE ? box.minX() : box.minY();
    }

    private static long end(Laid piece, Axis axis) {
        Box box = piece.placed().outline().box();
        return axis == Axis.LENGTHWISE ? box.maxX() : box.maxY();
    }
}
