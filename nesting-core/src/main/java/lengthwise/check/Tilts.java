package lengthwise.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;

/** A piece is off its grain by no more than its tolerance allows; left and right of a piece equally and oppositely. */
final class Tilts {
    /** How far the ends of a piece may be off for having been brought to the grid, together, in micrometres. */
    private static final double GRID_ROUNDING = 2;

    private final MarkerOrder order;
    private final double tolerance;

    Tilts(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.tolerance = (double) tolerance.micrometres();
    }

    /** Returns how far a piece may be off, in degrees, with what reading it leaves open; 0 where it may not. */
    double degreesAllowed(Wanted wanted) {
        return order.lyingOf(wanted.name())
                .tolerance()
                .map(allowed -> allowed.degreesOf(wanted.piece()) + leftOpen(wanted))
                .orElse(0.0);
    }

    private double leftOpen(Wanted wanted) {
        double half = Math.max(
                        wanted.piece().outline().box().width(),
                        wanted.piece().outline().box().height())
                / 2.0;
        return StrictMath.toDegrees((GRID_ROUNDING + tolerance) / half);
    }

    List<Violation> violations(List<Laid> laid) {
        Map<Wanted, List<Laid>> pairs = new LinkedHashMap<>();
        for (Laid piece : laid) {
            for (Wanted wanted : piece.wanted()) {
                if (wanted.mirrored() > 0
                        && order.lyingOf(wanted.name()).tolerance().isPresent()) {
                    pairs.computeIfAbsent(wanted, key -> new ArrayList<>()).add(piece);
                }
            }
        }
        List<Violation> violations = new ArrayList<>();
        pairs.forEach((wanted, mates) -> mates.stream()
                .filter(mate -> off(mates.get(0), mate) > 2 * leftOpen(wanted))
                .findFirst()
                .ifPresent(mate -> violations.add(
                        new Violation.TiltedUnlike(mates.get(0).placed(), mate.placed(), off(mates.get(0), mate)))));
        return violations;
    }

    /** Returns by how much two are tilted unlike in their own frames, read as is best for them. */
    private static double off(Laid one, Laid other) {
        return one.readings().stream()
                .flatMapToDouble(first ->
                        other.readings().stream().mapToDouble(second -> Math.abs(first.tilt() - second.tilt())))
                .min()
                .orElse(0);
    }
}
