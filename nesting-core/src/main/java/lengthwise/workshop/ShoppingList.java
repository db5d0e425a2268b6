package lengthwise.workshop;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lengthwise.model.Length;

/**
 * All that an order has to be bought for.
 *
 * @param job its title
 * @param version of Lengthwise
 * @param inches whether the job measures in inches and yards
 * @param lines a line for each thing to buy: fabrics, elastic, thread, labels
 * @param seams the thread by the seams that it is for
 * @param bindings how bindings are cut from their fabrics, whose lines hold their cloth
 * @param edges what was measured on the drawings, edge by edge and size by size
 * @param notes what was assumed, sentences
 */
public record ShoppingList(
        String job,
        String version,
        boolean inches,
        List<Line> lines,
        List<SeamThread> seams,
        List<Binding> bindings,
        List<MeasuredEdge> edges,
        List<String> notes) {
    public ShoppingList {
        lines = List.copyOf(lines);
        seams = List.copyOf(seams);
        bindings = List.copyOf(bindings);
        edges = List.copyOf(edges);
        notes = List.copyOf(notes);
    }

    /** What kind of thing a line is for. */
    public enum Kind {
        FABRIC,
        ELASTIC,
        THREAD,
        LABEL
    }

    /** So much of something. */
    public sealed interface Amount {
        /** By the length. */
        record ByLength(Length length) implements Amount {}

        /** By the piece. */
        record ByPiece(long pieces) implements Amount {}
    }

    /**
     * One thing to buy.
     *
     * @param name of the fabric, or the maker's own
     * @param details what to ask for beyond its name, such as its width; may be empty
     * @param need what is used
     * @param buy the same rounded up to what the shop sells
     * @param packs how many spools or packs that is, where it is sold so
     * @param cost of what is bought, to a hundredth; empty where no price is given
     * @param why what it is for, a clause
     */
    public record Line(
            Kind kind,
            String name,
            String details,
            Amount need,
            Amount buy,
            Optional<Packs> packs,
            OptionalDouble cost,
            String why) {}

    /** So many packs of a kind: 3 spools. */
    public record Packs(long count, String one, String several) {
        /** Returns for example "1 spool" or "3 spools". */
        public String words() {
            return count + " " + (count == 1 ? one : several);
        }
    }

    /**
     * What the seams of one stitch class take, waste left out.
     *
     * @param stitch the class of ISO 4915
     * @param needle the part of the thread that runs through needles, where known
     */
    public record SeamThread(int stitch, Length seam, Length thread, Optional<Length> needle) {}

    /**
     * How one binding is cut.
     *
     * @param length in all, joins taken off
     * @param onBias at 45°, or straight across the cloth
     */
    public record Binding(
            String name, String fabric, Length length, Length cutWidth, boolean onBias, BindingCloth cloth) {}

    /** Returns the cost of all that has a price. */
    public double known() {
        return lines.stream()
                .map(Line::cost)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .sum();
    }

    /** Returns the names of what has no price. */
    public List<String> withoutPrice() {
        return lines.stream()
                .filter(line -> line.cost().isEmpty())
                .map(Line::name)
                .distinct()
                .toList();
    }

    /** Returns an amount of money to the hundredth, so that the lines of a list add up to its total. */
    public static double toTheHundredth(double amount) {
        return StrictMath.round(amount * 100) / 100.0;
    }
}
