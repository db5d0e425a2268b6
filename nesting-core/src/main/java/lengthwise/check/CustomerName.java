package lengthwise.check;

import java.util.List;
import java.util.Optional;
import lengthwise.model.Garment;
import lengthwise.model.PlacedPiece;

/** The names written on a piece are of those for whom its garments are ordered, so that each gets her own. */
final class CustomerName {
    private CustomerName() {}

    static Optional<Violation> violation(PlacedPiece placed, List<Wanted> wanted) {
        String ordered = Garment.customers(wanted.stream().map(Wanted::garment).toList());
        return placed.customers().equals(ordered)
                ? Optional.empty()
                : Optional.of(new Violation.WrongCustomer(placed, ordered));
    }
}
