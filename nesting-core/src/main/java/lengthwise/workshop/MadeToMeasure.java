package lengthwise.workshop;

import java.util.List;
import lengthwise.model.Length;
import lengthwise.model.Size;

/**
 * What is made for one customer.
 *
 * @param garments their numbers in the order
 * @param size as made
 * @param why a clause; what her measures say of the size, empty where they say nothing
 * @param cut what is cut to a length of her own
 */
public record MadeToMeasure(String customer, List<Integer> garments, Size size, String why, List<CutTo> cut) {
    public MadeToMeasure {
        garments = List.copyOf(garments);
        cut = List.copyOf(cut);
    }

    /** A piece and the length it is cut to. */
    public record CutTo(String piece, Length length) {}
}
