package lengthwise.plan.lays;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lengthwise.model.Length;
import lengthwise.plan.lays.CutOrderPlanning.Effort;
import lengthwise.plan.lays.SettledPlan.Outcome;
import org.junit.jupiter.api.Test;

class SettledPlanTest {
    private static final List<Length> NET = List.of(Length.ofMillimetres(800), Length.ofMillimetres(1000));
    private static final Length ENDS = Length.ofMillimetres(40);
    private static final CutOrder SEVEN = CutOrder.of(List.of("S", "M"), List.of(3, 4));

    private final List<List<Integer>> laid = new ArrayList<>();

    /** By hand: 3 S and 4 M, two plies and three garments at most: {S, M, M} twice and {S} once. */
    @Test
    void theFabricIsThatOfTheMarkersLaid() {
        SettledPlan plan = settled(SEVEN, new LayLimits(2, 3));
        assertThat(plan.plan().lays())
                .containsExactly(new Lay(List.of(1, 2), List.of(2)), new Lay(List.of(1, 0), List.of(1)));
        // 2 × (0.3 + 1.2 × 2.8 + 0.04) + (0.3 + 1.2 × 0.8 + 0.04) m
        assertThat(plan.plan().fabric()).isEqualTo(Length.ofMillimetres(8700));
        // 3 × 0.8 + 4 × 1 + 3 × 0.04 m: three plies at least, since a marker holds three
        assertThat(plan.plan().bound()).isEqualTo(Length.ofMillimetres(6520));
        assertThat(plan.settled()).isTrue();
        assertThat(plan.byGuess()).isEqualTo(plan.plan().fabric());
    }

    @Test
    void noMarkerIsLaidTwice() {
        settled(SEVEN, new LayLimits(2, 3));
        assertThat(laid).doesNotHaveDuplicates();
    }

    /** The marker of one of each is 2.76 m with ends: on a table of 2.5 m every garment has a marker of its own. */
    @Test
    void noPlyIsLongerThanTheTable() {
        LayLimits table = new LayLimits(2, 1, 3, Optional.of(Length.ofMillimetres(2500)), 0, 0, OptionalInt.empty());
        SettledPlan plan = settled(SEVEN, table);
        assertThat(plan.plan().lays())
                .allMatch(lay -> length(lay.ratio()).plus(ENDS).compareTo(Length.ofMillimetres(2500)) <= 0);
        assertThat(plan.plan().cut(0, 0)).isEqualTo(3);
        assertThat(plan.plan().cut(0, 1)).isEqualTo(4);
    }

    @Test
    void aMarkerThatCannotBeLaidIsNamed() {
        Outcome outcome =
                SettledPlan.of(SEVEN, new LayLimits(2, 3), NET, ENDS, Aim.FABRIC, effort(), ratio -> Optional.empty());
        assertThat(outcome).isEqualTo(new Outcome.NoMarker(List.of(0, 1)));
    }

    /** By hand: with one S fewer, {S, M, M} on two plies is all there is to cut. */
    @Test
    void oneGarmentFewerMakesOneLay() {
        SettledPlan plan = settled(SEVEN, new LayLimits(2, 3));
        List<OrderChanges.Change> changes =
                OrderChanges.of(SEVEN, new LayLimits(2, 3), plan.guess(), Aim.FABRIC, plan.plan(), effort(), 3);
        assertThat(changes.get(0).size()).isZero();
        assertThat(changes.get(0).by()).isEqualTo(-1);
        assertThat(changes.get(0).lays()).isEqualTo(1);
        // the lay of one S: 0.3 + 1.2 × 0.8 + 0.04 m
        assertThat(changes.get(0).fabric()).isEqualTo(-1_300_000);
    }

    private SettledPlan settled(CutOrder order, LayLimits limits) {
        Outcome outcome = SettledPlan.of(order, limits, NET, ENDS, Aim.FABRIC, effort(), ratio -> {
            laid.add(ratio);
            return Optional.of(length(ratio));
        });
        return ((Outcome.Settled) outcome).plan();
    }

    /** Invented: 0.3 m for the ragged end and a fifth more than the garments. */
    private static Length length(List<Integer> ratio) {
        return new Length(1000L * (300 + 960 * ratio.get(0) + 1200 * ratio.get(1)));
    }

    private static Effort effort() {
        return new Effort(5, 1, () -> false);
    }
}
