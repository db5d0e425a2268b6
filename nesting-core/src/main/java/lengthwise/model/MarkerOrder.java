package lengthwise.model;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What one marker has to hold: a fabric, the garments, and the least distance between pieces.
 *
 * @param gap the least distance between two pieces that have no gap of their own
 * @param ownGaps by the names of those that have; between two pieces the larger of their gaps counts
 * @param fillers what may lie in the marker besides, where it adds no length; each is a unit of its own, whole or not
 *     there, with a number that no garment has
 * @param cutAlready what is cut of the cloth already
 * @param lying by the names of the pieces that do not lie just anywhere
 */
public record MarkerOrder(
        Fabric fabric,
        Length gap,
        Map<String, Length> ownGaps,
        List<Bundle> bundles,
        List<Bundle> fillers,
        CutAlready cutAlready,
        Map<String, Lying> lying) {
    public MarkerOrder {
        ownGaps = Map.copyOf(ownGaps);
        lying = Map.copyOf(lying);
        bundles = List.copyOf(bundles);
        fillers = List.copyOf(fillers);
    }

    public MarkerOrder(Fabric fabric, Length gap, Map<String, Length> ownGaps, List<Bundle> bundles) {
        this(fabric, gap, ownGaps, bundles, List.of(), CutAlready.NONE, Map.of());
    }

    public MarkerOrder(Fabric fabric, Length gap, List<Bundle> bundles) {
        this(fabric, gap, Map.of(), bundles);
    }

    public MarkerOrder withFabric(Fabric other) {
        return new MarkerOrder(other, gap, ownGaps, bundles, fillers, cutAlready, lying);
    }

    public MarkerOrder withBundles(List<Bundle> others) {
        return new MarkerOrder(fabric, gap, ownGaps, others, fillers, cutAlready, lying);
    }

    public MarkerOrder withFillers(List<Bundle> others) {
        return new MarkerOrder(fabric, gap, ownGaps, bundles, others, cutAlready, lying);
    }

    public MarkerOrder withCutAlready(CutAlready cut) {
        return new MarkerOrder(fabric, gap, ownGaps, bundles, fillers, cut, lying);
    }

    /** Returns the garments' bundles and, after them, the fillers. */
    public List<Bundle> withAllFillers() {
        return Stream.concat(bundles.stream(), fillers.stream()).toList();
    }

    /** Returns the order for some of its garments, by their numbers. */
    public MarkerOrder forGarments(Set<Integer> numbers) {
        return withBundles(bundles.stream()
                .filter(bundle -> numbers.contains(bundle.garment().number()))
                .toList());
    }

    /** Returns the match points that the print has to be matched by: none where it does not repeat. */
    public List<MatchPoint> matchPoints() {
        return fabric.repeat().isEmpty()
                ? List.of()
                : bundles.stream()
                        .flatMap(bundle -> bundle.pieces().stream())
                        .flatMap(cut -> cut.piece().matchPoint().stream())
                        .distinct()
                        .toList();
    }

    /**
     * Says whether it matters where along an axis the print lies: it repeats that way, and a match point has a place of its
     * own in it, or pieces are mirrored about its axis.
     */
    public boolean hasPlaceInPrint(Axis axis) {
        return fabric.repeat()
                        .filter(repeat -> repeat.along(axis).micrometres() > 0)
                        .isPresent()
                && (!motifs().isEmpty()
                        || matchPoints().stream()
                                .filter(match -> match.holds(axis))
                                .anyMatch(match -> match.isFixed()
                                        || (axis == Axis.CROSSWISE
                                                && match.to().get() instanceof MatchPoint.Partner.OtherHand)));
    }

    /** Returns the places of the print that any piece keeps off or on, each once: none where it does not repeat. */
    public List<Motif> motifs() {
        return fabric.repeat().isEmpty()
                ? List.of()
                : withAllFillers().stream()
                        .flatMap(bundle -> bundle.pieces().stream())
                        .flatMap(cut -> lyingOf(cut.piece().name()).motifs().stream())
                        .map(Lying.MotifTie::motif)
                        .distinct()
                        .toList();
    }

    /** Says whether pieces have to lie as the print does lengthwise, so that every ply has to begin alike in it. */
    public boolean isMatchedLengthwise() {
        return hasPlaceInPrint(Axis.LENGTHWISE)
                || (fabric.repeat()
                                .filter(repeat -> repeat.lengthwise().micrometres() > 0)
                                .isPresent()
                        && matchPoints().stream().anyMatch(match -> match.holds(Axis.LENGTHWISE)));
    }

    public MarkerOrder withLying(Map<String, Lying> other) {
        return new MarkerOrder(fabric, gap, ownGaps, bundles, fillers, cutAlready, other);
    }

    /** Returns how the piece of this name lies. */
    public Lying lyingOf(String piece) {
        return lying.getOrDefault(piece, Lying.ANYWHERE);
    }

    /** Returns the gap of the piece of this name. */
    public Length gapOf(String piece) {
        return ownGaps.getOrDefault(piece, gap);
    }
}
