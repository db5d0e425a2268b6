package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.mate;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lengthwise.check.SharedCheck;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.OnHand;
import lengthwise.model.Piece;
import lengthwise.model.SharedOrder;
import lengthwise.rules.Ruling;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.RandomOrders;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rectangles that fill pieces of cloth exactly: where each of them comes from is worked out by hand. */
class AllotmentTest {
    private static final int SWEEPS = 20;

    private static final Fabric BOLT =
            TestFabric.plain().named("bolt").width(400, 0).fabric();

    static LongStream few() {
        return LongStream.range(0, 40);
    }

    static LongStream many() {
        long from = Long.getLong("seeds.from", 1_000);
        return LongStream.range(from, from + 500);
    }

    /**
     * Two flaps of 200 × 150 fill the small remnant of 200 × 300, a back of 400 × 300 the large one. A front of 500 × 400 is
     * longer than either and as wide as the bolt: 500 mm are bought, and no less can be.
     */
    @Test
    void everyPieceHasOneHome() {
        SharedOrder shared = shared(
                1,
                List.of(onHand("left-1", 300, 200), onHand("left-2", 300, 400), BOLT),
                cut(rectangle("front", 500, 400), 1, Cut.Manner.ALIKE),
                cut(rectangle("back", 400, 300), 1, Cut.Manner.ALIKE),
                cut(rectangle("flap", 200, 150), 2, Cut.Manner.ALIKE));
        Map<String, Marker> markers = markers(shared);
        assertThat(pieces(markers))
                .isEqualTo(
                        Map.of("left-1", List.of("flap", "flap"), "left-2", List.of("back"), "bolt", List.of("front")));
        assertThat(marker(markers, "bolt").length()).isEqualTo(Length.ofMillimetres(500));
    }

    /**
     * A remnant of 300 × 400 takes twelve blocks of 100 mm and no thirteenth: eight of twenty are bought, two columns of four
     * in 200 mm.
     */
    @Test
    void whatTheRemnantDoesNotTakeIsBought() {
        SharedOrder shared = shared(
                5, List.of(BOLT, onHand("left", 400, 300)), cut(rectangle("block", 100, 100), 4, Cut.Manner.ALIKE));
        Map<String, Marker> markers = markers(shared);
        assertThat(marker(markers, "left").placements()).hasSize(12);
        assertThat(marker(markers, "bolt").placements()).hasSize(8);
        assertThat(marker(markers, "bolt").length()).isEqualTo(Length.ofMillimetres(200));
    }

    /** A yoke of 100 × 450 is wider than the bolt, so that it goes before the larger panel of 300 × 190. */
    @Test
    void whatCannotBeBoughtGoesFirst() {
        Map<String, Marker> markers = markers(shared(
                1,
                List.of(onHand("left", 500, 300), BOLT),
                cut(rectangle("panel", 300, 190), 1, Cut.Manner.ALIKE),
                cut(rectangle("yoke", 100, 450), 1, Cut.Manner.ALIKE)));
        assertThat(pieces(markers)).isEqualTo(Map.of("left", List.of("yoke"), "bolt", List.of("panel")));
    }

    /** Where all fits on hand nothing is bought, and the smallest cloth that takes it all is cut. */
    @Test
    void whereAllFitsNothingIsBought() {
        Map<String, Marker> markers = markers(shared(
                1,
                List.of(BOLT, onHand("large", 400, 900), onHand("small", 300, 200)),
                cut(rectangle("flap", 200, 150), 2, Cut.Manner.ALIKE)));
        assertThat(markers).containsOnlyKeys("small");
    }

    /** A garment is a panel of 150 and a flap of 100; 300 mm of cloth take both panels, or one garment. */
    @Test
    void garmentsAreKeptTogetherWhereThatIsAsked() {
        List<Fabric> cloths = List.of(onHand("left", 100, 300), BOLT);
        CutPiece panel = cut(rectangle("panel", 150, 100), 1, Cut.Manner.ALIKE);
        CutPiece flap = cut(rectangle("flap", 100, 100), 1, Cut.Manner.ALIKE);
        SharedOrder apart = shared(2, cloths, panel, flap);
        assertThat(pieces(markers(apart)).get("left")).containsExactly("panel", "panel");
        SharedOrder together = new SharedOrder(apart.cloths(), true);
        assertThat(pieces(markers(together)).get("left")).containsExactlyInAnyOrder("panel", "flap");
        List<Fabric> oneWayEach = cloths.stream()
                .map(cloth -> cloth.withDirection(Direction.ONE_WAY_PER_GARMENT))
                .toList();
        assertThat(pieces(markers(shared(2, oneWayEach, panel, flap))).get("left"))
                .containsExactlyInAnyOrder("panel", "flap");
    }

    /** A pocket that is matched to its front is cut from the same cloth, though the remnant has room for it alone. */
    @Test
    void whatIsMatchedToAnotherPieceStaysWithIt() {
        Piece front = holed(rectangle("front", 300, 100), 50, 50);
        Piece pocket = matched(holed(rectangle("pocket", 100, 100), 50, 50), 1, Optional.empty(), mate("front", 1));
        List<Fabric> cloths = Stream.of(
                        TestFabric.plain().named("left").width(100, 0).onHand(100),
                        TestFabric.plain().named("bolt").width(400, 0))
                .map(cloth -> cloth.direction(Direction.ONE_WAY).repeat(50, 50).fabric())
                .toList();
        SharedOrder shared = shared(1, cloths, cut(front, 1, Cut.Manner.ALIKE), cut(pocket, 1, Cut.Manner.ALIKE));
        assertThat(shared.keepsGarments()).isTrue();
        assertThat(markers(shared)).containsOnlyKeys("bolt");
    }

    /** One cup would fit, and its other hand would not: neither is cut from there. */
    @Test
    void ofAPairNoHalfIsCutElsewhere() {
        Piece cup = piece("cup", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 60, 10, 60, 0, 50);
        assertThat(markers(shared(1, List.of(onHand("left", 100, 100), BOLT), cut(cup, 1, Cut.Manner.PAIR))))
                .containsOnlyKeys("bolt");
        assertThat(markers(shared(1, List.of(onHand("left", 120, 100), BOLT), cut(cup, 1, Cut.Manner.PAIR))))
                .containsOnlyKeys("left");
    }

    /** Folded, 200 × 200 take four contours of 100 mm, which are eight blocks: two are bought, single. */
    @Test
    void foldedClothGivesTwoAtATime() {
        Fabric folded = TestFabric.plain()
                .named("left")
                .width(400, 0)
                .folded()
                .onHand(200)
                .fabric();
        Map<String, Marker> markers =
                markers(shared(1, List.of(folded, BOLT), cut(rectangle("block", 100, 100), 10, Cut.Manner.ALIKE)));
        assertThat(marker(markers, "left").placements()).hasSize(4);
        assertThat(marker(markers, "bolt").placements()).hasSize(2);
    }

    /** Where nothing is bought the last cloth gets what is over, and the answer is how much it is short. */
    @Test
    void whatIsOverIsShortOnTheLastCloth() {
        SharedOrder shared = shared(
                1,
                List.of(onHand("left-1", 100, 200), onHand("left-2", 100, 300)),
                cut(rectangle("block", 100, 100), 6, Cut.Manner.ALIKE));
        List<Allotment.Given> given = Allotment.of(shared, endless(1)).given();
        assertThat(given.get(0).order().bundles().get(0).pieces().get(0).cut().count())
                .isEqualTo(2);
        assertThat(given.get(1).found()).isEmpty();
        MarkerAnswer answer = MarkerMaking.make(
                given.get(1).order(), Search.of(StopRule.iterations(SWEEPS), 1, 1), (marker, progress) -> {});
        assertThat(((MarkerAnswer.TooLong) answer).shortfall()).isEqualTo(Length.ofMillimetres(100));
        assertThat(((MarkerAnswer.TooLong) answer).staysOut()).hasSize(1);
    }

    @Test
    void anOrderIsSharedByClothsOfTheSamePieces() {
        MarkerOrder one = order(BOLT, 0, 1, cut(rectangle("block", 100, 100), 1, Cut.Manner.ALIKE));
        MarkerOrder other =
                order(onHand("left", 100, 100), 0, 1, cut(rectangle("patch", 100, 100), 1, Cut.Manner.ALIKE));
        assertThatThrownBy(() -> new SharedOrder(List.of(one, other), false))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("bolt");
        assertThatThrownBy(() -> new SharedOrder(List.of(one), false)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("few")
    void whatIsSharedOutIsAllThereOnce(long seed) {
        isAllThereOnce(seed);
    }

    @Tag("long")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("many")
    void ofFiveHundredOrdersAllIsThereOnce(long seed) {
        isAllThereOnce(seed);
    }

    /** Two remnants are a third and a half as long as a marker of the whole order. */
    private static void isAllThereOnce(long seed) {
        MarkerOrder order = RandomOrders.of(seed);
        if (!(MarkerMaking.make(order, Search.of(StopRule.iterations(2), seed, 1), (marker, progress) -> {})
                instanceof MarkerAnswer.Made whole)) {
            assertThat(Ruling.of(order)).isNotNull();
            return;
        }
        Length bought = order.fabric()
                .spread()
                .onTable(whole.marker().length())
                .times(order.fabric().spread().lengths());
        SharedOrder shared = new SharedOrder(
                List.of(
                        order,
                        order.withFabric(named(order.fabric(), "third").withOnHand(OnHand.of(bought.scaled(1 / 3.0)))),
                        order.withFabric(named(order.fabric(), "half").withOnHand(OnHand.of(bought.scaled(0.5))))),
                seed % 3 == 0);
        Map<String, Marker> markers = markers(shared);
        assertThat(markers).isNotEmpty();
        assertThat(markers.values().stream()
                        .filter(marker -> marker.order().fabric().onHand().isPresent())
                        .allMatch(marker -> marker.length()
                                        .compareTo(
                                                marker.order().fabric().room().orElseThrow())
                                <= 0))
                .isTrue();
        Allotment again = Allotment.of(shared, endless(seed));
        assertThat(again).isEqualTo(Allotment.of(shared, endless(seed)));
    }

    /** Returns the markers of what every cloth is given, checked together, by the names of their cloths. */
    private static Map<String, Marker> markers(SharedOrder shared) {
        Map<String, Marker> markers = new TreeMap<>();
        for (Allotment.Given given : Allotment.of(shared, endless(1)).given()) {
            if (given.isNothing()) {
                continue;
            }
            Search search = Search.of(StopRule.iterations(SWEEPS), 1, 1);
            MarkerAnswer answer = given.found().isPresent()
                    ? MarkerMaking.make(given.order(), given.found().get(), search, (marker, progress) -> {})
                    : MarkerMaking.make(given.order(), search, (marker, progress) -> {});
            assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
            markers.put(given.order().fabric().name(), ((MarkerAnswer.Made) answer).marker());
        }
        List<SharedCheck.Part> parts =
                markers.values().stream().map(SharedCheck.Part::of).toList();
        assertThat(SharedCheck.of(shared, parts, Length.ZERO).all()).isEmpty();
        return markers;
    }

    private static Map<String, List<String>> pieces(Map<String, Marker> markers) {
        Map<String, List<String>> pieces = new TreeMap<>();
        markers.forEach((cloth, marker) -> pieces.put(
                cloth,
                marker.placements().stream()
                        .map(placement -> placement.item().piece().name())
                        .toList()));
        return pieces;
    }

    private static Marker marker(Map<String, Marker> markers, String cloth) {
        assertThat(markers).containsKey(cloth);
        return markers.entrySet().stream()
                .filter(one -> one.getKey().equals(cloth))
                .findFirst()
                .orElseThrow()
                .getValue();
    }

    private static Fabric onHand(String name, double width, double length) {
        return TestFabric.plain().named(name).width(width, 0).onHand(length).fabric();
    }

    private static SharedOrder shared(int garments, List<Fabric> cloths, CutPiece... pieces) {
        List<MarkerOrder> orders = new ArrayList<>();
        IntStream.range(0, cloths.size()).forEach(i -> orders.add(order(cloths.get(i), 0, garments, pieces)));
        return new SharedOrder(orders, false);
    }

    private static Search endless(long seed) {
        return Search.of(progress -> 0, seed, 1);
    }

    private static Fabric named(Fabric fabric, String name) {
        return new Fabric(
                name,
                fabric.role(),
                fabric.width(),
                fabric.unusableEdge(),
                fabric.direction(),
                fabric.mostStretch(),
                fabric.repeat(),
                fabric.shrinkage(),
                fabric.spread(),
                fabric.price(),
                fabric.soldBy(),
                fabric.flaws(),
                fabric.onHand(),
                fabric.pile(),
                fabric.buying(),
                fabric.shade());
    }
}
