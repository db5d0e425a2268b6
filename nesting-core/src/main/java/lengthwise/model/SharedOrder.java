package lengthwise.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * One order that is shared out over several pieces of cloth for one purpose: a bolt and remnants of it.
 *
 * @param cloths the whole order on each piece of cloth, as it would be cut from it: those on hand from the smallest to the
 *     largest, then what is bought
 * @param keepTogether whether the maker wants all that a garment needs cut from one piece of cloth
 */
public record SharedOrder(List<MarkerOrder> cloths, boolean keepTogether) {
    public SharedOrder {
        if (cloths.size() < 2
                || cloths.stream().map(SharedOrder::needs).distinct().count() > 1) {
            throw new IllegalArgumentException(
                    "An order is shared out over two or more pieces of cloth, for the same pieces of the same garments: "
                            + cloths.stream()
                                    .map(order -> order.fabric().name())
                                    .toList());
        }
        cloths = cloths.stream()
                .sorted(Comparator.comparingDouble(order -> squareMillimetres(order.fabric())))
                .toList();
    }

    /** Returns what each garment and each filler needs, as it is called: the shapes may differ from cloth to cloth. */
    private static List<String> needs(MarkerOrder order) {
        return order.withAllFillers().stream()
                .flatMap(bundle -> bundle.pieces().stream().map(cut -> bundle.garment() + " " + called(cut.piece())))
                .toList();
    }

    private static String called(Piece piece) {
        return piece.name() + " " + piece.size().name();
    }

    /** Returns the area of a piece of cloth; what is bought is larger than any. */
    private static double squareMillimetres(Fabric fabric) {
        return fabric.onHand()
                .map(there -> there.outline()
                        .map(outline -> outline.squareMillimetres())
                        .orElse(there.length().millimetres() * fabric.width().millimetres()))
                .orElse(Double.MAX_VALUE);
    }

    /** Returns what the cloth is for: shell, lining … */
    public String purpose() {
        return cloths.get(0).fabric().role();
    }

    /** Returns the order on the cloth that is bought; empty where all of it is on hand. */
    public Optional<MarkerOrder> bought() {
        return cloths.stream()
                .filter(order -> order.fabric().onHand().isEmpty())
                .findFirst();
    }

    /** Returns the whole order on a piece of cloth, by its name. */
    public Optional<MarkerOrder> on(String cloth) {
        return cloths.stream()
                .filter(order -> order.fabric().name().equals(cloth))
                .findFirst();
    }

    /**
     * Says whether all that a garment needs is cut from one piece of cloth: it is wished, or its pieces are matched to each
     * other, of one shade, or one way by garment, which they can only be on the same cloth.
     */
    public boolean keepsGarments() {
        return keepTogether
                || cloths.stream()
                        .anyMatch(order -> order.fabric().shade().isPresent()
                                || order.fabric().direction() == Direction.ONE_WAY_PER_GARMENT
                                || isMatchedToAnother(order));
    }

    private static boolean isMatchedToAnother(MarkerOrder order) {
        return order.matchPoints().stream()
                .flatMap(match -> match.to().stream())
                .anyMatch(MatchPoint.Partner.Mate.class::isInstance);
    }

    /** Returns the order for some of its garments, by their numbers. */
    public SharedOrder forGarments(Set<Integer> numbers) {
        return new SharedOrder(
                cloths.stream().map(order -> order.forGarments(numbers)).toList(), keepTogether);
    }

    /** Returns the names of the pieces of cloth, in their order. */
    public Stream<String> names() {
        return cloths.stream().map(order -> order.fabric().name());
    }
}
