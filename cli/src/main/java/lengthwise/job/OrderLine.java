package lengthwise.job;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Length;
import lengthwise.model.Size;

/**
 * So many garments of one size.
 *
 * @param size {@link Size#ONE} where the line names none
 * @param measures the wearer's measures that strips are cut by, in the order of the file
 */
public record OrderLine(Size size, int make, List<Measure> measures) {
    public OrderLine {
        measures = List.copyOf(measures);
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
