package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.strip;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import lengthwise.model.Cut;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Lying;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.SharedCut;
import lengthwise.model.Spread;
import lengthwise.plan.Purchase;
import lengthwise.plan.Waste;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Selvedge, border and zones from the order to the marker; lengths by hand. */
class TiedToTheEdgesTest {
    private static final Lying ON_SELVEDGE = new Lying(true, Optional.empty(), Optional.empty());

    /** 220 mm of cloth, 200 of them to use: two bands of 110 mm lie side by side only with their edges on the selvedges. */
    @Test
    void theUnusableEdgeIsUsedByAnEdgeOnTheSelvedge() {
        MarkerOrder order = order(
                TestFabric.plain().width(220, 10).fabric(), 0, 1, cut(strip("band", 300, 110), 2, Cut.Manner.ALIKE));
        assertThat(made(order).length()).isEqualTo(mm(600));
        Marker marker = made(order.withLying(Map.of("band", ON_SELVEDGE)));
        assertThat(marker.length()).isEqualTo(mm(300));
        assertThat(marker.placements())
                .extracting(placement -> placement.outline().box().minY())
                .containsExactlyInAnyOrder(-10_000L, 100_000L);
        Waste waste = Waste.of(marker, Purchase.of(marker.length(), order.fabric()));
        assertThat(waste.pieces()).isCloseTo(2 * 300 * 110, within(1e-3));
        assertThat(waste.betweenPieces()).isCloseTo(0, within(1e-3));
        assertThat(waste.edges()).isCloseTo(0, within(1e-3));
        assertThat(waste.laid()).isCloseTo(300 * 220, within(1e-3));
    }

    /** Others keep to the cuttable area: 100 + 100 beside a band of 20 on the selvedge, which takes 10 of it. */
    @Test
    void onlyThatPieceUsesIt() {
        MarkerOrder order = order(
                TestFabric.plain().width(220, 10).fabric(),
                0,
                1,
                cut(strip("band", 300, 20), 1, Cut.Manner.ALIKE),
                cut(rectangle("panel", 300, 95), 2, Cut.Manner.ALIKE));
        assertThat(made(order).length().millimetres()).isGreaterThan(300);
        assertThat(made(order.withLying(Map.of("band", ON_SELVEDGE))).length()).isEqualTo(mm(300));
    }

    /** On folded cloth both selvedges lie at the far side: 100 on the fold, 110 on the selvedge, in half of 420. */
    @Test
    void onFoldedClothTheFarSideHasBothSelvedges() {
        MarkerOrder order = order(
                TestFabric.plain().width(420, 10).folded().fabric(),
                0,
                1,
                cut(onFold(rectangle("front", 300, 100), 300), 1, Cut.Manner.ON_FOLD),
                cut(rectangle("facing", 300, 110), 1, Cut.Manner.PAIR));
        assertThat(made(order).length()).isEqualTo(mm(600));
        assertThat(made(order.withLying(Map.of("facing", ON_SELVEDGE))).length())
                .isEqualTo(mm(300));
    }

    /** Four skirts of 150 × 200 mm across the cloth, all on the border's line, one behind the other: 4 × 150. */
    @ParameterizedTest
    @CsvSource({"NEAR, 30", "FAR, 270"})
    void keyedToABorderPiecesLieInARow(Lying.Selvedge selvedge, double line) {
        Lying.Border border = new Lying.Border(Lying.Tie.LOWEST_POINT, selvedge, mm(line));
        MarkerOrder order = order(
                        TestFabric.plain().width(320, 10).fabric(),
                        0,
                        2,
                        cut(rectangle("skirt", 200, 150), 2, Cut.Manner.ALIKE))
                .withLying(Map.of("skirt", new Lying(false, Optional.of(border), Optional.empty())));
        Marker marker = made(order);
        assertThat(marker.length()).isEqualTo(mm(600));
        long from = selvedge == Lying.Selvedge.NEAR ? 30_000 : 70_000;
        assertThat(marker.placements())
                .allSatisfy(placement ->
                        assertThat(placement.outline().box().minY()).isEqualTo(from));
    }

    /** A zone of 100 mm takes panels of 100 × 100 one behind the other only; what it adds is never below nothing. */
    @Test
    void aZoneIsKeptToAndItsCostIsExact() {
        Lying.Zone zone = new Lying.Zone("plain", new Fabric.Band(mm(50), mm(150)));
        MarkerOrder anywhere = order(
                TestFabric.plain().width(200, 0).fabric(),
                0,
                1,
                cut(rectangle("panel", 100, 100), 4, Cut.Manner.ALIKE));
        MarkerOrder kept = anywhere.withLying(Map.of("panel", new Lying(false, Optional.empty(), Optional.of(zone))));
        Marker marker = made(kept);
        assertThat(marker.length()).isEqualTo(mm(400));
        assertThat(((MarkerAnswer.Made) MarkerMaking.loosen(anywhere, marker, search()))
                        .marker()
                        .length())
                .isEqualTo(mm(200));
    }

    /** Four squares in a square share four sides of 100 mm. */
    @Test
    void straightEdgesThatCoincideAreCutOnce() {
        Fabric narrow = TestFabric.plain().width(200, 0).fabric();
        Marker touching = made(order(narrow, 0, 1, cut(rectangle("panel", 100, 100), 4, Cut.Manner.ALIKE)));
        assertThat(SharedCut.together(SharedCut.on(touching))).isEqualTo(mm(400));
        Marker apart = made(order(narrow, 3, 1, cut(rectangle("panel", 100, 98), 4, Cut.Manner.ALIKE)));
        assertThat(SharedCut.on(apart)).isEmpty();
    }

    /** Two right triangles that fill a rectangle share its diagonal: 300, 400, 500. */
    @Test
    void slantingOnesAsWell() {
        Fabric narrow = TestFabric.plain().width(400, 0).fabric();
        Marker marker = made(order(narrow, 0, 1, cut(triangle("flap", 300, 400), 2, Cut.Manner.ALIKE)));
        assertThat(marker.length()).isEqualTo(mm(300));
        assertThat(SharedCut.together(SharedCut.on(marker)).micrometres()).isBetween(499_990L, 500_010L);
    }

    @ParameterizedTest
    @EnumSource(
            value = Spread.Form.class,
            names = {"SELVEDGES_TO_MIDDLE", "TUBE"})
    void whereNoSelvedgeLiesAtASideItIsRefused(Spread.Form form) {
        MarkerOrder order = order(
                        TestFabric.plain().width(400, 0).spread(form).fabric(),
                        0,
                        1,
                        cut(rectangle("facing", 300, 50), 1, Cut.Manner.PAIR))
                .withLying(Map.of("facing", ON_SELVEDGE));
        assertThat(refused(order)).contains("facing", "edge-on-selvedge", "no selvedge");
    }

    @Test
    void twoRulesThatContradictAreBothNamed() {
        Lying border = new Lying(
                false,
                Optional.of(new Lying.Border(Lying.Tie.LOWEST_POINT, Lying.Selvedge.NEAR, mm(30))),
                Optional.empty());
        Lying zone = new Lying(
                false, Optional.empty(), Optional.of(new Lying.Zone("plain", new Fabric.Band(mm(0), mm(50)))));
        TestFabric cloth = TestFabric.plain().width(400, 10);
        assertThat(refused(cloth.direction(Direction.ONE_WAY), border)).contains("keyed to a border", "one-way");
        TestFabric folded = TestFabric.plain().width(800, 10).folded();
        assertThat(refused(folded, border)).contains("keyed to a border", "same selvedge on the same side");
        assertThat(refused(folded, zone)).contains("zone plain", "same selvedge on the same side");
        assertThat(refused(TestFabric.plain().width(400, 10), zone))
                .contains("skirt is 60.0 mm across", "zone plain", "50.0 mm wide");
        assertThat(refused(
                        TestFabric.plain().width(150, 10),
                        new Lying(
                                false,
                                Optional.of(new Lying.Border(Lying.Tie.LOWEST_POINT, Lying.Selvedge.NEAR, mm(60))),
                                Optional.empty())))
                .contains("keyed to a border", "30.0 mm over the cuttable width");
        assertThat(refused(
                        cloth.direction(Direction.EITHER_WAY),
                        new Lying(
                                true,
                                Optional.empty(),
                                zone.zone().map(z -> new Lying.Zone("plain", new Fabric.Band(mm(0), mm(100)))))))
                .contains("edge-on-selvedge", "zone");
    }

    private static String refused(TestFabric cloth, Lying lying) {
        return refused(order(cloth.fabric(), 0, 1, cut(triangle("skirt", 100, 60), 1, Cut.Manner.PAIR))
                .withLying(Map.of("skirt", lying)));
    }

    private static String refused(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Impossible.class);
        return ((MarkerAnswer.Impossible) answer).reason();
    }

    private static Marker made(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).as(answer.toString()).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }

    private static Search search() {
        return Search.of(StopRule.iterations(300), 1, 1);
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
