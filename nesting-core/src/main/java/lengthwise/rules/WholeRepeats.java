package lengthwise.rules;

import java.util.List;
import lengthwise.model.Axis;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Repeat;

/**
 * How long a marker may be where plies are matched: each ply begins where the print comes again, so that from the start
 * of one to the start of the next there is a whole number of repeats.
 *
 * <p>Reference: I. Vilumsone-Nemes, <i>Industrial Cutting of Textile Materials</i>, pp. 231, 256.
 *
 * @param repeat lengthwise, as it lies on the table; zero where any length will do
 * @param ends what a ply takes of the cloth besides the marker
 */
public record WholeRepeats(Length repeat, Length ends) {
    static WholeRepeats of(List<Item> items, MarkerOrder order) {
        Fabric fabric = order.fabric();
        boolean matched = fabric.spread().lengths() > 1
                && items.stream()
                        .map(Item::piece)
                        .anyMatch(piece -> piece.matchPoint()
                                        .filter(match -> match.holds(Axis.LENGTHWISE))
                                        .isPresent()
                                || !order.lyingOf(piece.name()).motifs().isEmpty());
        Length repeat = fabric.repeatOnTable()
                .filter(print -> matched)
                .map(Repeat::lengthwise)
                .orElse(Length.ZERO);
        return new WholeRepeats(repeat, fabric.spread().onTable(Length.ZERO));
    }

    /** Returns the least length that a marker may have for pieces that reach so far. */
    public Length upTo(Length end) {
        return end.plus(new Length(Math.floorMod(-end.plus(ends).micrometres(), step())));
    }

    /** Returns the greatest length that a marker may have in so much room. */
    public Length downTo(Length room) {
        return room.minus(new Length(Math.floorMod(room.plus(ends).micrometres(), step())));
    }

    private long step() {
        return Math.max(1, repeat.micrometres());
    }
}
