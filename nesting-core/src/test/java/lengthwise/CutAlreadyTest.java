package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.geometry.Box;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.model.Cut;
import lengthwise.model.CutAlready;
import lengthwise.model.CutPiece;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** Six blocks of 100 mm on cloth of 200 mm, some of them cut already; what comes out is worked out by hand. */
class CutAlreadyTest {
    private static final TestFabric CLOTH = TestFabric.plain().width(200, 0);
    private static final CutPiece BLOCKS = cut(rectangle("block", 100, 100), 6, Cut.Manner.ALIKE);

    /** The two that begin at 0 are cut; a flaw right behind them, 50 mm long, moves all others by as much. */
    @Test
    void whatIsCutStaysAndTheRestIsLaidRoundANewFlaw() {
        Marker old = made(order(CLOTH.fabric(), 0, 1, BLOCKS));
        List<PlacedPiece> cut = first(old, 2);
        Fabric flawed = TestFabric.plain()
                .width(200, 0)
                .flaws(new Box(100_000, 0, 150_000, 200_000))
                .fabric();
        Marker marker = made(order(flawed, 0, 1, BLOCKS).withCutAlready(done(cut)));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(350));
        assertThat(outlines(marker))
                .containsAll(cut.stream().map(PlacedPiece::outline).toList());
        assertThat(MarkerCheck.violations(marker)).isEmpty();
    }

    /** One of them is spoilt: its cloth is gone, so that seven places are taken. */
    @Test
    void whatIsSpoiltIsLaidOnceMoreBesideItsHole() {
        List<PlacedPiece> cut = first(made(order(CLOTH.fabric(), 0, 1, BLOCKS)), 2);
        MarkerOrder order = order(CLOTH.fabric(), 0, 1, BLOCKS)
                .withCutAlready(new CutAlready(cut.subList(0, 1), cut.subList(1, 2), Length.ofMillimetres(100)));
        Marker marker = made(order);
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(400));
        assertThat(marker.placements()).hasSize(6);
        assertThat(outlines(marker)).doesNotContain(cut.get(1).outline());
        // the hole is one block wide, and all that was cut lies before 100 mm: there is no waste to cut it from
        assertThat(Recut.of(order, endless()).answers())
                .containsExactly(new Recut.Answer(cut.get(1), false, Recut.Way.FROM_WHOLE_CLOTH));
    }

    /** Five blocks are 300 mm long and leave the room of one, from which a spoilt one can be cut again. */
    @Test
    void theWasteIsTriedForWhatIsSpoilt() {
        CutPiece five = cut(rectangle("block", 100, 100), 5, Cut.Manner.ALIKE);
        List<PlacedPiece> cut = first(made(order(CLOTH.fabric(), 0, 1, five)), 5);
        MarkerOrder order = order(CLOTH.fabric(), 0, 1, five)
                .withCutAlready(new CutAlready(cut.subList(1, 5), cut.subList(0, 1), Length.ofMillimetres(300)));
        assertThat(Recut.of(order, endless()).answers())
                .containsExactly(new Recut.Answer(cut.get(0), false, Recut.Way.FROM_THE_WASTE));
        assertThat(made(order).length()).isEqualTo(Length.ofMillimetres(300));
        MarkerOrder two =
                order.withCutAlready(new CutAlready(cut.subList(2, 5), cut.subList(0, 2), Length.ofMillimetres(300)));
        assertThat(Recut.of(two, endless()).answers())
                .extracting(Recut.Answer::way)
                .containsExactly(Recut.Way.FROM_THE_WASTE, Recut.Way.FROM_WHOLE_CLOTH);
    }

    /** With no flaw and nothing spoilt the old marker is one to begin with, even where there is no time to search. */
    @Test
    void theSearchBeginsWithWhatWasPlanned() {
        CutPiece slopes = cut(triangle("slope", 130, 70), 7, Cut.Manner.ALIKE);
        MarkerOrder whole = order(CLOTH.fabric(), 2, 1, slopes);
        Marker old = made(whole);
        List<PlacedPiece> pieces = first(old, 7);
        MarkerOrder order = whole.withCutAlready(
                new CutAlready(pieces.subList(0, 1), List.of(), Length.ofMillimetres(100), pieces.subList(1, 7)));
        MarkerAnswer answer =
                MarkerMaking.make(order, Search.of(StopRule.iterations(1), 7, 1), (marker, progress) -> {});
        assertThat(((MarkerAnswer.Made) answer).marker().length()).isLessThanOrEqualTo(old.length());
    }

    @Test
    void aFlawSpoilsWhatItLiesOver() {
        List<PlacedPiece> cut = first(made(order(CLOTH.fabric(), 0, 1, BLOCKS)), 2);
        Box overTheFirst = new Box(99_000, 0, 120_000, 50_000);
        CutAlready under = done(cut).under(List.of(overTheFirst));
        assertThat(under.spoilt()).hasSize(1);
        assertThat(under.spoilt().get(0).outline().box().minY()).isZero();
        assertThat(done(cut)
                        .under(List.of(new Box(100_000, 0, 120_000, 50_000)))
                        .spoilt())
                .isEmpty();
    }

    @Test
    void theCheckFindsACutPieceThatWasMovedBy200Micrometres() {
        MarkerOrder whole = order(CLOTH.fabric(), 0, 1, BLOCKS);
        Marker old = made(whole);
        Placement last = old.placements().stream()
                .filter(placement -> placement.outline().box().maxX() == 300_000)
                .findFirst()
                .orElseThrow();
        MarkerOrder order = whole.withCutAlready(done(List.of(PlacedPiece.of(last))));
        assertThat(MarkerCheck.violations(new Marker(order, old.placements(), old.length())))
                .isEmpty();
        List<Placement> moved = new ArrayList<>(old.placements());
        moved.remove(last);
        moved.add(new Placement(
                last.item(),
                new Pose(last.pose().orientation(), last.pose().offset().plus(new Point(200, 0)))));
        List<Violation> violations = MarkerCheck.violations(new Marker(order, moved, Length.ofMillimetres(300.2)));
        assertThat(violations)
                .singleElement()
                .extracting(Violation::sentence)
                .isEqualTo(
                        "block of garment 1 is cut already and does not lie where it was cut: it is up to 0.2 mm away from there.");
    }

    @Test
    void theCheckFindsAPieceThatLies200MicrometresOverAHole() {
        CutPiece one = cut(rectangle("cup", 100, 100), 1, Cut.Manner.ALIKE);
        MarkerOrder whole = order(CLOTH.fabric(), 0, 1, one);
        Marker old = made(whole);
        PlacedPiece spoilt = PlacedPiece.of(old.placements().get(0));
        Marker marker =
                made(whole.withCutAlready(new CutAlready(List.of(), List.of(spoilt), Length.ofMillimetres(100))));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(100));
        Placement laid = marker.placements().get(0);
        Box hole = spoilt.outline().box();
        long towards = laid.outline().box().minY() < hole.minY() ? 200 : -200;
        Marker over = new Marker(
                marker.order(),
                List.of(new Placement(
                        laid.item(),
                        new Pose(laid.pose().orientation(), laid.pose().offset().plus(new Point(0, towards))))),
                marker.length());
        assertThat(MarkerCheck.violations(over))
                .anyMatch(violation -> violation instanceof Violation.OverCutAway gone
                        && gone.sentence()
                                .contains("cup of garment 1 lies over the hole where cup of garment 1 was cut"));
    }

    @Test
    void whatTheOrderDoesNotKnowIsRefused() {
        List<PlacedPiece> cut = first(made(order(CLOTH.fabric(), 0, 1, BLOCKS)), 6);
        CutPiece five = cut(rectangle("block", 100, 100), 5, Cut.Manner.ALIKE);
        assertThat(reason(order(CLOTH.fabric(), 0, 1, five).withCutAlready(done(cut))))
                .startsWith("block of garment 1 is cut already, and this order for test-cloth has no such piece");
        CutPiece larger = cut(rectangle("block", 101, 100), 6, Cut.Manner.ALIKE);
        assertThat(reason(order(CLOTH.fabric(), 0, 1, larger).withCutAlready(done(cut))))
                .contains("is cut already, and does not lie on test-cloth as this job wants it");
    }

    @Test
    void whatIsCutTooNearIsRefusedWithTheRuleThatItBreaks() {
        List<PlacedPiece> cut = first(made(order(CLOTH.fabric(), 0, 1, BLOCKS)), 2);
        assertThat(reason(order(CLOTH.fabric(), 3, 1, BLOCKS).withCutAlready(done(cut))))
                .startsWith("What is cut already of test-cloth breaks a rule itself: ")
                .contains("the gap has to be 3 mm");
    }

    private static CutAlready done(List<PlacedPiece> pieces) {
        return new CutAlready(pieces, List.of(), Length.ofMillimetres(100));
    }

    private static List<PlacedPiece> first(Marker marker, int count) {
        return marker.inLayingOrder().stream().limit(count).map(PlacedPiece::of).toList();
    }

    private static List<Outline> outlines(Marker marker) {
        return marker.placements().stream().map(Placement::outline).toList();
    }

    private static String reason(MarkerOrder order) {
        return ((MarkerAnswer.Impossible) make(order)).reason();
    }

    private static Marker made(MarkerOrder order) {
        MarkerAnswer answer = make(order);
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }

    private static MarkerAnswer make(MarkerOrder order) {
        return MarkerMaking.make(order, Search.of(StopRule.iterations(60), 7, 1), (marker, progress) -> {});
    }

    private static Search endless() {
        return Search.of(progress -> 0, 7, 1);
    }
}
