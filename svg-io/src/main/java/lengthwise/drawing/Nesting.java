package lengthwise.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which closed lines lie in which. Lines of different sizes do not see each other: grades drawn on top of one another
 * are neither holes nor duplicates.
 */
final class Nesting {
    private final List<Contour> contours;
    private final Map<Contour, Contour> holders = new HashMap<>();
    private final Map<Contour, List<Contour>> held = new HashMap<>();

    private Nesting(List<Contour> contours) {
        this.contours = contours;
    }

    static Nesting of(List<Contour> contours, Effort effort) throws DrawingException {
        Nesting nesting = new Nesting(List.copyOf(contours));
        List<Contour> bySize = new ArrayList<>(contours);
        bySize.sort(Comparator.comparingDouble(Contour::area));
        for (int i = 0; i < bySize.size(); i++) {
            Contour inner = bySize.get(i);
            for (int j = i + 1; j < bySize.size(); j++) {
                Contour outer = bySize.get(j);
                effort.spend(1);
                if (outer.box().contains(inner.box())
                        && canHold(outer.size(), inner.size())
                        && outer.covers(inner, effort)) {
                    nesting.holders.put(inner, outer);
                    break;
                }
            }
        }
        for (Contour contour : nesting.contours) {
            nesting.holder(contour)
                    .ifPresent(outer -> nesting.held
                            .computeIfAbsent(outer, o -> new ArrayList<>())
                            .add(contour));
        }
        return nesting;
    }

    private static boolean canHold(Optional<String> outer, Optional<String> inner) {
        return outer.isEmpty() || inner.isEmpty() || outer.equals(inner);
    }

    Optional<Contour> holder(Contour inner) {
        return Optional.ofNullable(holders.get(inner));
    }

    /** Returns the lines that lie in no other, in the order drawn. */
    List<Contour> roots() {
        return contours.stream().filter(c -> !holders.containsKey(c)).toList();
    }

    /** Returns the lines directly inside another, in the order drawn. */
    List<Contour> inside(Contour outer) {
        return held.getOrDefault(outer, List.of());
    }

    /** Says whether a line is a cut-out of the shape that it lies in, by the shape's fill rule. */
    boolean isCutOut(Contour inner) {
        Contour outer = holders.get(inner);
        if (outer == null || !outer.shape().equals(inner.shape())) {
            return false;
        }
        return inner.shape().fillRule() == DrawnShape.FillRule.EVENODD
                || inner.runsClockwise() != outer.runsClockwise();
    }
}
