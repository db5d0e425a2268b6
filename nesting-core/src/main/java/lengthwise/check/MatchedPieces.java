package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Point;
import lengthwise.model.Axis;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkRef;
import lengthwise.model.MatchPoint;
import lengthwise.model.MatchPoint.Partner;
import lengthwise.model.Repeat;

/**
 * Two pieces of one garment that are matched to each other lie alike in the print: the way between their marks is a whole
 * number of repeats. Of a left and a right it is so once one of them is mirrored about the print's axis.
 *
 * <p>The print is seen in the cloth: through two layers face to face, left and left lie in the same one.
 */
final class MatchedPieces {
    private final Fabric fabric;
    private final Length tolerance;

    MatchedPieces(Fabric fabric, Length tolerance) {
        this.fabric = fabric;
        this.tolerance = tolerance;
    }

    List<Violation> violations(List<Laid> laid) {
        List<Violation> violations = new ArrayList<>();
        Optional<Repeat> repeat = fabric.repeatOnTable();
        if (repeat.isEmpty()) {
            return violations;
        }
        for (Laid one : laid) {
            Optional<MatchPoint> match = one.wanted().get(0).piece().matchPoint();
            Optional<Partner> partner = match.flatMap(MatchPoint::to);
            if (partner.isPresent() && partner.get() instanceof Partner.Mate mate) {
                for (Laid other : mates(one, mate, laid)) {
                    toMate(one, other, match.get(), mate.at(), repeat.get()).ifPresent(violations::add);
                }
            } else if (partner.isPresent()) {
                violations.addAll(toOtherHand(one, laid, match.get(), repeat.get()));
            }
        }
        return violations;
    }

    /** Returns what lies there of the other piece for the same garment, of the same hand where both have one. */
    private static List<Laid> mates(Laid one, Partner.Mate mate, List<Laid> laid) {
        List<Laid> named = laid.stream()
                .filter(other -> !other.placed().equals(one.placed())
                        && other.wanted().get(0).name().equals(mate.piece()))
                .filter(other -> shareGarment(one, other))
                .toList();
        List<Laid> ofItsHand = named.stream()
                .filter(other -> hand(one).isEmpty()
                        || hand(other).isEmpty()
                        || hand(one).equals(hand(other)))
                .toList();
        return ofItsHand.isEmpty() ? named : ofItsHand;
    }

    private static boolean shareGarment(Laid one, Laid other) {
        return one.placed().garments().stream().anyMatch(other.placed().garments()::contains);
    }

    private static String hand(Laid laid) {
        return laid.placed().hand();
    }

    private Optional<Violation> toMate(Laid one, Laid other, MatchPoint match, MarkRef mark, Repeat repeat) {
        Optional<Point> at = other.wanted().get(0).piece().marks().at(mark);
        if (at.isEmpty()) {
            return Optional.empty();
        }
        PrintLattice lattice = PrintLattice.of(repeat, match);
        return judged(
                one,
                other,
                match,
                pairs(one, other)
                        .map(pair -> lattice.off(pair.one
                                .pose()
                                .apply(match.at())
                                .minus(pair.other.pose().apply(at.get())))));
    }

    private List<Violation> toOtherHand(Laid one, List<Laid> laid, MatchPoint match, Repeat repeat) {
        PrintLattice lattice = PrintLattice.of(repeat, match);
        long axis = 2 * repeat.originY().micrometres();
        if (fabric.spread().mirrors()) {
            // the other hand lies at −y of the opened cloth, whose fold is y = 0
            return judged(one, one, match, Stream.of(lattice.off(new Point(0, axis))))
                    .map(List::of)
                    .orElse(List.of());
        }
        boolean acrossToo = match.holds(Axis.CROSSWISE) && repeat.crosswise().micrometres() > 0;
        return laid.subList(laid.indexOf(one) + 1, laid.size()).stream()
                .filter(other ->
                        other.wanted().get(0).piece().equals(one.wanted().get(0).piece()))
                .filter(other -> shareGarment(one, other) && areTwoHands(one, other))
                .flatMap(other -> judged(
                        one,
                        other,
                        match,
                        pairs(one, other)
                                .filter(pair -> pair.one.flipped() != pair.other.flipped())
                                .map(pair -> {
                                    Point from = pair.one.pose().apply(match.at());
                                    Point to = pair.other.pose().apply(match.at());
                                    Point seen = acrossToo ? new Point(to.x(), axis - to.y()) : to;
                                    return lattice.off(from.minus(seen));
                                }))
                        .stream())
                .toList();
    }

    /** By their letters, or where one has none by their outlines. */
    private static boolean areTwoHands(Laid one, Laid other) {
        return (hand(one).isEmpty() || hand(other).isEmpty())
                ? one.readings().stream()
                        .anyMatch(first ->
                                other.readings().stream().anyMatch(second -> first.flipped() != second.flipped()))
                : !hand(one).equals(hand(other));
    }

    private record Pair(Reading one, Reading other) {}

    /** Returns the ways of reading two outlines at one turn; a symmetric one that is never cut mirrored is read as drawn. */
    private Stream<Pair> pairs(Laid one, Laid other) {
        return readings(one)
                .flatMap(first -> readings(other)
                        .filter(second -> upwards(one, first) == upwards(other, second))
                        .filter(second -> !fabric.spread().mirrors() || first.flipped() == second.flipped())
                        .map(second -> new Pair(first, second)));
    }

    /** Returns to which end of the cloth the up end points, or the end that would be up: 1 or −1. */
    private static int upwards(Laid laid, Reading reading) {
        Point up = laid.wanted().get(0).piece().upEnd().orElse(new Point(1, 0));
        return Long.signum(reading.pose().orientation().apply(up).x());
    }

    private Stream<Reading> readings(Laid laid) {
        boolean asDrawn = !fabric.spread().mirrors()
                && laid.wanted().stream().allMatch(wanted -> wanted.mirrored() == 0)
                && laid.readings().stream().anyMatch(reading -> !reading.flipped());
        return laid.readings().stream().filter(reading -> !asDrawn || !reading.flipped());
    }

    private Optional<Violation> judged(Laid one, Laid other, MatchPoint match, Stream<Point> ways) {
        Optional<Point> least = ways.min(Comparator.comparingLong(PrintLattice::largest));
        if (least.isEmpty()) {
            return Optional.of(new Violation.TurnedFromMatch(one.placed(), other.placed()));
        }
        Point off = least.get();
        long allowed = match.tolerance().micrometres() + 2 * tolerance.micrometres();
        return PrintLattice.largest(off) <= allowed
                ? Optional.empty()
                : Optional.of(new Violation.OffMatchedPiece(
                        one.placed(),
                        other.placed(),
                        Math.abs(off.x()) / 1000.0,
                        Math.abs(off.y()) / 1000.0,
                        match.tolerance()));
    }
}
