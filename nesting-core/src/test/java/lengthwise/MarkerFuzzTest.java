package lengthwise;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import lengthwise.check.MarkerCheck;
import lengthwise.model.Bundle;
import lengthwise.model.CutAlready;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Size;
import lengthwise.rules.FillerRule;
import lengthwise.rules.Ruling;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.RandomOrders;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Random orders through the front door: whatever comes out, the check has nothing against it. */
class MarkerFuzzTest {
    private static final int SWEEPS = 6;

    static LongStream few() {
        return LongStream.range(0, 40);
    }

    /** {@code -Dseeds.from=N} takes the thousand from there. */
    static LongStream many() {
        long from = Long.getLong("seeds.from", 1_000);
        return LongStream.range(from, from + 1_000);
    }

    @Test
    void mostRandomOrdersCanBeLaid() {
        assertThat(few().filter(seed -> Ruling.of(RandomOrders.of(seed)) instanceof Ruling.Task))
                .hasSizeGreaterThan(25);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("few")
    void everyMarkerPassesTheCheck(long seed) {
        everyMarkerOf(seed);
    }

    @Tag("long")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("many")
    void everyMarkerOfAThousandPassesTheCheck(long seed) {
        everyMarkerOf(seed);
    }

    private static void everyMarkerOf(long seed) {
        MarkerOrder order = RandomOrders.of(seed);
        List<Marker> improved = new ArrayList<>();
        Search search = Search.of(StopRule.iterations(SWEEPS), seed, 1 + (int) (seed % 2));
        MarkerAnswer answer = MarkerMaking.make(order, search, (marker, progress) -> improved.add(marker));
        if (answer instanceof MarkerAnswer.Impossible impossible) {
            assertThat(impossible.reason()).isNotBlank();
            return;
        }
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        MarkerAnswer.Made made = (MarkerAnswer.Made) answer;
        assertThat(made.marker().length()).isGreaterThanOrEqualTo(made.lowerBound());
        assertThat(improved).isNotEmpty();
        for (Marker marker : improved) {
            assertThat(MarkerCheck.violations(marker)).isEmpty();
        }
        assertThat(asReadBack(made.marker())).isEmpty();
        fillersAddNoLength(order, made.marker(), seed);
        cutHalfItGoesOn(order, made.marker(), seed);
    }

    /** Every second piece is cut; by every third seed the first of them is spoilt. */
    private static void cutHalfItGoesOn(MarkerOrder order, Marker marker, long seed) {
        List<PlacedPiece> pieces =
                marker.inLayingOrder().stream().map(PlacedPiece::of).toList();
        List<PlacedPiece> cut = new ArrayList<>();
        List<PlacedPiece> planned = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            (i % 2 == 0 ? cut : planned).add(pieces.get(i));
        }
        int spoilt = seed % 3 == 0 ? 1 : 0;
        CutAlready half =
                new CutAlready(cut.subList(spoilt, cut.size()), cut.subList(0, spoilt), marker.length(), planned);
        MarkerOrder goesOn = order.withCutAlready(half);
        Search search = Search.of(StopRule.iterations(SWEEPS), seed, 1);
        MarkerAnswer answer = MarkerMaking.make(goesOn, search, (better, progress) -> {});
        if (spoilt > 0) {
            assertThat(answer).isNotInstanceOf(MarkerAnswer.Rejected.class);
            return;
        }
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        Marker again = ((MarkerAnswer.Made) answer).marker();
        assertThat(again.length()).isLessThanOrEqualTo(marker.length());
        assertThat(again.placements().stream().filter(half::holds)).hasSize(cut.size());
    }

    /** One more garment of the order's first kind as a filler, twice at most. */
    private static void fillersAddNoLength(MarkerOrder order, Marker marker, long seed) {
        List<CutPiece> pieces = order.bundles().get(0).pieces();
        MarkerOrder withFillers = order.withFillers(IntStream.rangeClosed(1, 2)
                .mapToObj(i -> new Bundle(new Garment(order.bundles().size() + i, Size.ONE), pieces.subList(0, 1)))
                .toList());
        if (!(FillerRule.of(withFillers) instanceof Ruling.Task)) {
            return;
        }
        Marker plain = new Marker(withFillers, marker.placements(), marker.length());
        Marker filled = Filling.of(plain, Search.of(progress -> 0, seed, 1)).marker();
        assertThat(filled.length()).isEqualTo(marker.length());
        assertThat(filled.placements()).startsWith(marker.placements().toArray(new Placement[0]));
        assertThat(MarkerCheck.violations(filled)).isEmpty();
        assertThat(asReadBack(new Marker(withFillers, filled.placements(), filled.length())))
                .isEmpty();
    }

    /** What passes exactly passes to a tolerance. */
    private static List<?> asReadBack(Marker marker) {
        return MarkerCheck.violations(
                marker.order(),
                marker.placements().stream().map(PlacedPiece::of).toList(),
                marker.length(),
                MarkerCheck.OUTSIDE_TOLERANCE);
    }
}
