package lengthwise;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedOrder;
import lengthwise.solver.Search;

/**
 * Which part of a shared order is cut from which piece of cloth.
 *
 * @param given what each piece of cloth was given, in the order of the shared order's
 */
public record Allotment(List<Given> given) {
    public Allotment {
        given = List.copyOf(given);
    }

    /**
     * What one piece of cloth was given.
     *
     * @param order for just that; it may be nothing
     * @param found a marker of it that the cloth has room for; empty where nothing was given, for what is bought, and where
     *     more was given than room was found for, since it has to lie somewhere
     */
    public record Given(MarkerOrder order, Optional<Marker> found) {
        public boolean isNothing() {
            return order.bundles().isEmpty();
        }
    }

    /** Returns a marker for each piece of cloth that is cut from, where all of them have room; empty where one has not. */
    public Optional<List<Marker>> markers() {
        List<Given> cut = given.stream().filter(part -> !part.isNothing()).toList();
        return cut.stream().allMatch(part -> part.found.isPresent())
                ? Optional.of(cut.stream().flatMap(part -> part.found.stream()).toList())
                : Optional.empty();
    }

    /**
     * Shares an order out. The cloth on hand is filled as well as the search can; the rest goes to the cloth that is bought,
     * and where there is none, or it cannot lie there, to the last cloth that it can lie on.
     *
     * @param search its stop rule is asked for all that is tried together
     */
    public static Allotment of(SharedOrder shared, Search search) {
        return new Allotting(shared, search).allotment();
    }
}
