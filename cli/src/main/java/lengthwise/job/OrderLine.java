package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Size;

/**
 * So many garments of one size.
 *
 * @param size {@link Size#ONE} where the line names none
 * @param customer the name of whom it is made for, where the line names one
 * @param colour of the cloth; of several none is laid in one marker
 * @param priority 1 is made first; where the line names none it comes after those that do, in the order of the file
 * @param measures the wearer's measures that sizes are chosen and lengths are cut by, in the order of the file
 */
public record OrderLine(
        Size size,
        int make,
        Optional<String> customer,
        Optional<String> colour,
        Optional<Integer> priority,
        List<Measure> measures) {
    public OrderLine {
        measures = List.copyOf(measures);
    }

    public OrderLine(Size size, int make, List<Measure> measures) {
        this(size, make, Optional.empty(), Optional.empty(), Optional.empty(), measures);
    }

    /** Returns the line for another number of garments. */
    OrderLine withMake(int number) {
        return new OrderLine(size, number, customer, colour, priority, measures);
    }

    /** Returns the line for any colour, in no order of priority: what is the same to a marker. */
    OrderLine plain() {
        return new OrderLine(size, make, customer, Optional.empty(), Optional.empty(), measures);
    }

    /** One measure by the maker's name for it. */
    public record Measure(String name, Length length) {}

    public Optional<Length> measure(String name) {
        return measures.stream()
                .filter(measure -> measure.name().equals(name))
                .map(Measure::length)
                .findFirst();
    }
}
