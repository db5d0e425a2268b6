package lengthwise.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import lengthwise.FabricRun.Assumption;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Lying;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;

/**
 * What one fabric has to give, and what was assumed about it.
 *
 * @param comparison the same with the cloth laid another way, where the job asks what that would take
 * @param isPart whether it is a part of an order, whose rest lies on other cloth: what a rule costs is not asked then, since
 *     without it the order would be shared out otherwise
 */
public record FabricOrder(
        MarkerOrder order, List<Assumption> assumptions, Optional<MarkerOrder> comparison, boolean isPart) {
    /** An order with one rule of its fabric left out: what that rule costs can be found. */
    public record Freer(String rule, MarkerOrder order) {}

    /** A whole order. */
    FabricOrder(MarkerOrder order, List<Assumption> assumptions, Optional<MarkerOrder> comparison) {
        this(order, assumptions, comparison, /* isPart= */ false);
    }

    /** Returns what this fabric was given of an order. */
    public FabricOrder part(MarkerOrder given) {
        return new FabricOrder(given, assumptions, Optional.empty(), /* isPart= */ true);
    }

    /** Returns the same order with one rule of its fabric left out, for each that binds a piece. */
    public List<Freer> freer() {
        Fabric fabric = order.fabric();
        if (isPart || !order.cutAlready().isNone()) {
            return List.of();
        }
        List<Freer> freer = new ArrayList<>();
        if (fabric.direction() != Direction.EITHER_WAY
                && anyPiece(piece -> piece.up().isPresent())) {
            freer.add(new Freer(
                    fabric.direction() == Direction.ONE_WAY ? "One-way" : "One-way per garment",
                    order.withFabric(fabric.withDirection(Direction.EITHER_WAY))));
        }
        boolean minds = !order.motifs().isEmpty();
        if (!order.matchPoints().isEmpty()) {
            freer.add(new Freer(
                    minds ? "Matching the print and minding its motifs" : "Matching the print",
                    order.withFabric(fabric.withoutRepeat())));
        } else if (minds) {
            freer.add(new Freer("Minding the motifs", lying(Lying::withoutMotifs)));
        }
        if (order.lying().values().stream().anyMatch(lying -> lying.zone().isPresent())) {
            freer.add(new Freer("Keeping to the zones", lying(Lying::withoutZone)));
        }
        if (fabric.shade().isPresent()) {
            freer.add(new Freer("Keeping to one shade", order.withFabric(fabric.withShade(Optional.empty()))));
        }
        if (!fabric.flaws().isEmpty()) {
            freer.add(new Freer("Keeping off the flaws", order.withFabric(fabric.withoutFlaws())));
        }
        return List.copyOf(freer);
    }

    /** Returns the same order with its pieces laid another way than was asked for, to compare. */
    public List<Instead> instead() {
        return !isPart && order.cutAlready().isNone() ? Instead.of(order) : List.of();
    }

    private MarkerOrder lying(UnaryOperator<Lying> freer) {
        Map<String, Lying> lying = new LinkedHashMap<>();
        order.lying().forEach((piece, how) -> lying.put(piece, freer.apply(how)));
        return order.withLying(lying);
    }

    private boolean anyPiece(Predicate<Piece> has) {
        return order.bundles().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .map(CutPiece::piece)
                .anyMatch(has);
    }

    /**
     * Returns the order as it would be if the fabric were one-way, where that was assumed away and every piece knows
     * its up end: what the other choice costs can then be found.
     */
    public Optional<MarkerOrder> otherwise() {
        boolean assumed = assumptions.stream().anyMatch(one -> one.text().equals(FabricMaking.EITHER_WAY_ASSUMED));
        boolean known = order.bundles().stream()
                .flatMap(bundle -> bundle.pieces().stream())
                .map(CutPiece::piece)
                .allMatch(piece -> piece.strip() || piece.up().isPresent());
        return assumed && known && !isPart && order.cutAlready().isNone()
                ? Optional.of(order.withFabric(order.fabric().withDirection(Direction.ONE_WAY)))
                : Optional.empty();
    }

    /** Returns this with what the other choice costs, a sentence, in place of the general one. */
    public FabricOrder withOtherChoice(String cost) {
        return new FabricOrder(
                order,
                assumptions.stream()
                        .map(one -> one.text().equals(FabricMaking.EITHER_WAY_ASSUMED)
                                ? new Assumption(one.text(), cost)
                                : one)
                        .toList(),
                comparison,
                isPart);
    }
}
