package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lengthwise.model.Garment;

/**
 * Where the fabric is one-way for each garment, all up ends of a garment point to the same end of the fabric.
 *
 * <p>Garments that share a placed outline with an up end (cut through two layers) go together. A symmetric outline can be read either
 * way, but then as drawn one way and mirrored the other, so the direction is settled before hands are counted: of the
 * two directions the one that leaves less to complain of is taken as meant.
 */
final class GarmentDirection {
    private static final List<Integer> DIRECTIONS = List.of(0, 180);

    private final Count count;

    GarmentDirection(Count count) {
        this.count = count;
    }

    List<Violation> violations(List<Wanted> wanted, List<Laid> laid) {
        List<Violation> violations = new ArrayList<>();
        for (Set<Integer> garments : groups(wanted, laid)) {
            List<Wanted> theirs = wanted.stream()
                    .filter(one -> garments.contains(one.garment().number()))
                    .toList();
            List<Laid> pieces = laid.stream()
                    .filter(piece -> numbers(piece).anyMatch(garments::contains))
                    .toList();
            violations.addAll(DIRECTIONS.stream()
                    .map(degrees -> violations(theirs, pieces, degrees))
                    .min(Comparator.comparingInt(List::size))
                    .orElseThrow());
        }
        return violations;
    }

    private List<Violation> violations(List<Wanted> wanted, List<Laid> laid, int degrees) {
        List<Violation> violations = new ArrayList<>();
        List<Laid> narrowed = new ArrayList<>();
        for (Laid piece : laid) {
            List<Reading> kept = piece.readings().stream()
                    .filter(reading -> mayPoint(piece, reading, degrees))
                    .toList();
            if (kept.isEmpty()) {
                violations.add(new Violation.WrongWayInGarment(piece.placed()));
            }
            narrowed.add(kept.isEmpty() ? piece : piece.readAs(kept));
        }
        violations.addAll(count.violations(wanted, narrowed));
        return violations;
    }

    /** A piece that points to a selvedge has been told of already. */
    private static boolean mayPoint(Laid piece, Reading reading, int degrees) {
        Wanted wanted = piece.wanted().get(0);
        return !hasUpEnd(piece)
                || reading.degreesFromUp(wanted.piece()) == degrees
                || reading.degreesFromUp(wanted.piece()) == 90;
    }

    private static boolean hasUpEnd(Laid piece) {
        return piece.wanted().get(0).piece().up().isPresent();
    }

    /** Returns the numbers of the garments, those together that share a placed outline. */
    private static List<Set<Integer>> groups(List<Wanted> wanted, List<Laid> laid) {
        List<Set<Integer>> groups = new ArrayList<>();
        Stream<Set<Integer>> links = Stream.concat(
                wanted.stream().map(one -> Set.of(one.garment().number())),
                laid.stream()
                        .filter(GarmentDirection::hasUpEnd)
                        .map(piece -> new TreeSet<>(numbers(piece).toList())));
        links.forEach(link -> {
            List<Set<Integer>> met = groups.stream()
                    .filter(group -> group.stream().anyMatch(link::contains))
                    .toList();
            Set<Integer> joined = new TreeSet<>(link);
            met.forEach(joined::addAll);
            groups.removeAll(met);
            groups.add(joined);
        });
        groups.removeIf(Set::isEmpty);
        return groups;
    }

    private static Stream<Integer> numbers(Laid piece) {
        return piece.wanted().stream().map(Wanted::garment).map(Garment::number);
    }
}
