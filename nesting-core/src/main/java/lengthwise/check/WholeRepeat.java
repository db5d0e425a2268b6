package lengthwise.check;

import java.util.List;
import lengthwise.model.Axis;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Repeat;

/** Where plies are matched, or pieces mind motifs, one begins a whole number of lengthwise repeats behind the other, end allowances included. */
final class WholeRepeat {
    private final MarkerOrder order;
    private final Fabric fabric;
    private final Length tolerance;

    WholeRepeat(MarkerOrder order, Length tolerance) {
        this.order = order;
        this.fabric = order.fabric();
        this.tolerance = tolerance;
    }

    List<Violation> violations(List<Laid> laid, Length marker) {
        long repeat = fabric.repeatOnTable()
                .map(Repeat::lengthwise)
                .orElse(Length.ZERO)
                .micrometres();
        List<Wanted> there =
                laid.stream().flatMap(piece -> piece.wanted().stream()).toList();
        boolean matched = there.stream()
                        .flatMap(one -> one.piece().matchPoint().stream())
                        .anyMatch(match -> match.holds(Axis.LENGTHWISE))
                || there.stream()
                        .anyMatch(one -> !order.lyingOf(one.name()).motifs().isEmpty());
        int plies = fabric.spread().lengths();
        if (repeat == 0 || !matched || plies < 2) {
            return List.of();
        }
        Length onward = fabric.spread()
                .startAllowance()
                .plus(marker)
                .plus(fabric.spread().endAllowance());
        long over = onward.micrometres() % repeat;
        long off = Math.min(over, repeat - over);
        return off <= tolerance.micrometres()
                ? List.of()
                : List.of(new Violation.SplitRepeat(onward, new Length(repeat), off / 1000.0));
    }
}
