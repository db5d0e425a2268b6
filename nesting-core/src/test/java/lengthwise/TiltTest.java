package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutAlready;
import lengthwise.model.GrainTolerance;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Pieces off their grain by what is allowed, from the order to the marker; lengths by hand. */
class TiltTest {
    /** 6 mm over the 600 mm of a panel are 0.573°: the angle by plane geometry, atan(d/L). */
    private static final Lying TOLERANT = new Lying(
            false,
            Optional.empty(),
            Optional.empty(),
            Optional.of(new GrainTolerance.Deviation(Length.ofMillimetres(6))));

    /**
     * Panels 600 mm long and 100 high that rise by 5 mm: two above each other take 205 mm, and the cloth has 202.5, so that
     * one has to be moved on by half of its length at least. Turned by 0.573° they fall by 1 mm: 201 mm high, 601 mm long.
     */
    @ParameterizedTest
    @EnumSource(
            value = Cut.Manner.class,
            names = {"ALIKE", "PAIR"})
    void aRowThatJustMissesTheWidthIsTurnedIn(Cut.Manner manner) {
        int count = manner == Cut.Manner.PAIR ? 1 : 2;
        MarkerOrder onGrain = order(TestFabric.plain().width(202.5, 0).fabric(), 0, 1, cut(rising(), count, manner));
        Length straight = made(onGrain).marker().length();
        assertThat(straight).isGreaterThanOrEqualTo(Length.ofMillimetres(900));
        MarkerAnswer.Made made = made(onGrain.withLying(Map.of("panel", TOLERANT)));
        assertThat(made.marker().length()).isBetween(Length.ofMillimetres(600), Length.ofMillimetres(602));
        assertThat(made.onGrain().orElseThrow()).isGreaterThanOrEqualTo(Length.ofMillimetres(900));
        assertThat(made.lowerBound()).isLessThanOrEqualTo(made.marker().length());
        assertThat(tilts(made.marker())).allMatch(tilt -> Math.abs(tilt) <= 572_938);
    }

    /** For one shade both panels have to lie within 700 mm, which on grain they cannot. */
    @Test
    void whatDoesNotFitOnGrainIsTilted() {
        TestFabric cloth = TestFabric.plain().width(202.5, 0).shadeLengthwise(700);
        MarkerOrder order =
                order(cloth.fabric(), 0, 1, cut(rising(), 1, Cut.Manner.PAIR)).withLying(Map.of("panel", TOLERANT));
        assertThat(made(order).marker().length()).isLessThanOrEqualTo(Length.ofMillimetres(602));
    }

    /** Where a tilt gains nothing none is used. */
    @Test
    void whatFitsOnGrainStaysOnIt() {
        MarkerOrder order = order(
                        TestFabric.plain().width(300, 0).fabric(),
                        0,
                        3,
                        cut(rectangle("panel", 200, 100), 1, Cut.Manner.ALIKE))
                .withLying(Map.of("panel", TOLERANT));
        MarkerAnswer.Made made = made(order);
        assertThat(made.marker().length()).isEqualTo(Length.ofMillimetres(200));
        assertThat(tilts(made.marker())).containsOnly(0);
        assertThat(made.onGrain()).isEmpty();
    }

    /** What the tilted marker is cut of stays tilted, and so do its mates. */
    @Test
    void itGoesOnFromATiltedPieceThatIsCut() {
        MarkerOrder order = order(TestFabric.plain().width(202.5, 0).fabric(), 0, 1, cut(rising(), 1, Cut.Manner.PAIR))
                .withLying(Map.of("panel", TOLERANT));
        Marker marker = made(order).marker();
        List<PlacedPiece> pieces =
                marker.inLayingOrder().stream().map(PlacedPiece::of).toList();
        CutAlready cut = new CutAlready(pieces.subList(0, 1), List.of(), marker.length(), List.of());
        assertThat(made(order.withCutAlready(cut)).marker().length()).isLessThanOrEqualTo(Length.ofMillimetres(602));
    }

    @Test
    void twoRulesThatContradictAreBothNamed() {
        Piece dotted = matched(holed(triangle("panel", 200, 100), 20, 20), 2, Optional.empty(), Optional.empty());
        MarkerOrder order = order(
                        TestFabric.plain().width(500, 0).repeat(100, 100).fabric(),
                        0,
                        1,
                        cut(dotted, 1, Cut.Manner.ALIKE))
                .withLying(Map.of("panel", TOLERANT));
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Impossible.class);
        assertThat(((MarkerAnswer.Impossible) answer).reason()).contains("grain-tolerance", "matched to the print");
    }

    private static Piece rising() {
        return piece("panel", Optional.of(QuarterTurn.NONE), 0, 0, 600, 5, 600, 105, 0, 100);
    }

    private static List<Integer> tilts(Marker marker) {
        return marker.placements().stream()
                .map(placement -> placement.pose().orientation().tilt())
                .toList();
    }

    private static MarkerAnswer.Made made(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).as(answer.toString()).isInstanceOf(MarkerAnswer.Made.class);
        return (MarkerAnswer.Made) answer;
    }

    private static Search search() {
        return Search.of(StopRule.iterations(600), 1, 1);
    }
}
