package lengthwise.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import lengthwise.model.Garment;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.SharedOrder;

/**
 * The judge of the markers of one order that is shared out over several pieces of cloth. Each marker is held to the rules of
 * its own cloth; what is there of every piece is counted over all of them, since none holds the whole order. What was given
 * to which cloth it does not ask.
 */
public final class SharedCheck {
    private final SharedOrder shared;
    private final Length tolerance;

    private SharedCheck(SharedOrder shared, Length tolerance) {
        this.shared = shared;
        this.tolerance = tolerance;
    }

    /** What is cut from one of the pieces of cloth. */
    public record Part(String cloth, List<PlacedPiece> pieces, Length length) {
        public Part {
            pieces = List.copyOf(pieces);
        }

        public static Part of(Marker marker) {
            return new Part(
                    marker.order().fabric().name(),
                    marker.placements().stream().map(PlacedPiece::of).toList(),
                    marker.length());
        }
    }

    /**
     * What is wrong.
     *
     * @param ofEach with each marker by itself, in their order
     * @param together with all of them together: what is missing, too much, or has to be cut from one piece of cloth
     */
    public record Findings(List<List<Violation>> ofEach, List<Violation> together) {
        public Findings {
            ofEach = ofEach.stream().map(List::copyOf).toList();
            together = List.copyOf(together);
        }

        /** Returns everything that is wrong. */
        public List<Violation> all() {
            return Stream.concat(ofEach.stream().flatMap(List::stream), together.stream())
                    .toList();
        }
    }

    /** One marker, and what lies in it of the order. */
    private record Judged(Part part, MarkerOrder order, MarkerCheck check, List<Laid> known) {
        Count.Share share(Wanted wanted) {
            return new Count(order.fabric().spread()).share(wanted, known);
        }
    }

    /**
     * Returns what is wrong with the markers of a shared order.
     *
     * @param parts at most one for each piece of cloth; nothing is cut from the others
     * @param tolerance how far an outline may be off, and two may be into each other
     */
    public static Findings of(SharedOrder shared, List<Part> parts, Length tolerance) {
        return new SharedCheck(shared, tolerance).judge(parts);
    }

    private Findings judge(List<Part> parts) {
        if (parts.isEmpty() || parts.stream().map(Part::cloth).distinct().count() < parts.size()) {
            throw new IllegalArgumentException("There is one marker for each piece of cloth, and at least one: "
                    + parts.stream().map(Part::cloth).toList());
        }
        List<List<Violation>> ofEach = new ArrayList<>();
        List<Judged> judged = new ArrayList<>();
        for (Part part : parts) {
            MarkerOrder order = shared.on(part.cloth).orElseThrow();
            MarkerCheck check = new MarkerCheck(order, tolerance);
            List<Violation> violations = new ArrayList<>();
            judged.add(new Judged(part, order, check, check.onTheCloth(part.pieces, part.length, violations)));
            ofEach.add(violations);
        }
        List<Violation> together = new ArrayList<>();
        for (List<Count.Share> shares : shares(judged)) {
            together.addAll(Count.violations(shares));
            pairApart(shares, judged).ifPresent(together::add);
        }
        if (shared.keepsGarments()) {
            together.addAll(garmentsApart(judged));
        }
        return new Findings(ofEach, together);
    }

    /** Returns, for each piece of each garment and of each filler that is there, what every cloth gives of it. */
    private static List<List<Count.Share>> shares(List<Judged> judged) {
        Set<Integer> there = new TreeSet<>();
        judged.forEach(one -> there.addAll(MarkerCheck.garments(one.known)));
        MarkerCheck first = judged.get(0).check;
        List<List<Count.Share>> shares = new ArrayList<>();
        for (int i = 0; i < first.wanted().size(); i++) {
            int index = i;
            shares.add(judged.stream()
                    .map(one -> one.share(one.check.wanted().get(index)))
                    .toList());
        }
        for (int i = 0; i < first.fillers().size(); i++) {
            int index = i;
            if (there.contains(first.fillers().get(i).garment().number())) {
                shares.add(judged.stream()
                        .map(one -> one.share(one.check.fillers().get(index)))
                        .toList());
            }
        }
        return shares;
    }

    private static Optional<Violation> pairApart(List<Count.Share> shares, List<Judged> judged) {
        List<Integer> cutFrom = IntStream.range(0, shares.size())
                .filter(i -> !shares.get(i).cut().isEmpty())
                .boxed()
                .toList();
        if (cutFrom.size() < 2 || shares.stream().noneMatch(Count.Share::isHalfAPair)) {
            return Optional.empty();
        }
        Wanted wanted = shares.get(0).wanted();
        return Optional.of(new Violation.PairApart(
                wanted.name(),
                wanted.size(),
                wanted.garment().called(),
                cutFrom.stream().map(i -> judged.get(i).part.cloth).toList()));
    }

    private static List<Violation> garmentsApart(List<Judged> judged) {
        Map<Garment, Set<String>> cloths = new TreeMap<>(Comparator.comparingInt(Garment::number));
        for (Judged one : judged) {
            one.known.stream()
                    .flatMap(laid -> laid.wanted().stream())
                    .filter(one.check.wanted()::contains)
                    .forEach(wanted -> cloths.computeIfAbsent(wanted.garment(), garment -> new LinkedHashSet<>())
                            .add(one.part.cloth));
        }
        List<Violation> apart = new ArrayList<>();
        cloths.forEach((garment, names) -> {
            if (names.size() > 1) {
                apart.add(new Violation.GarmentApart(garment.called(), List.copyOf(names)));
            }
        });
        return apart;
    }
}
