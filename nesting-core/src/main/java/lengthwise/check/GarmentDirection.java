package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
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

    /**
     * Returns what lies there, read as its garments point; adds what points the other way.
     *
     * @return as many as lie there, in their order
     */
    List<Laid> settled(List<Wanted> wanted, List<Laid> laid, List<Violation> violations) {
        List<Laid> settled = new ArrayList<>(laid);
        for (Set<Integer> garments : groups(wanted, laid)) {
            List<Wanted> theirs = wanted.stream()
                    .filter(one -> garments.contains(one.garment().number()))
                    .toList();
            List<Integer> pieces = IntStream.range(0, laid.size())
                    .filter(i -> numbers(laid.get(i)).anyMatch(garments::contains))
                    .boxed()
                    .toList();
            Pointing pointing = DIRECTIONS.stream()
                    .map(degrees -> pointing(pieces.stream().map(laid::get).toList(), degrees))
                    .min(Comparator.comparingInt(one -> one.wrong.size()
                            + count.violations(theirs, one.laid).size()))
                    .orElseThrow();
            violations.addAll(pointing.wrong);
            for (int i = 0; i < pieces.size(); i++) {
                settled.set(pieces.get(i), pointing.laid.get(i));
            }
        }
        return settled;
    }

    /** Some garments taken to point one way. */
    private record Pointing(List<Violation> wrong, List<Laid> laid) {}

    private static Pointing pointing(List<Laid> laid, int degrees) {
        List<Violation> wrong = new ArrayList<>();
        List<Laid> narrowed = new ArrayList<>();
        for (Laid piece : laid) {
            List<Reading> kept = piece.readings().stream()
                    .filter(reading -> mayPoint(piece, reading, degrees))
                    .toList();
            if (kept.isEmpty()) {
                wrong.add(new Violation.WrongWayInGarment(piece.placed()));
            }
            narrowed.add(kept.isEmpty() ? piece : piece.readAs(kept));
        }
        return new Pointing(wrong, narrowed);
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
