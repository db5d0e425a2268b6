package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lengthwise.geometry.Box;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutAlready;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Spread;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One shade for a garment, from the order to the marker; lengths by hand. */
class ShadeTest {
    /** Three squares of 100 mm for each of three garments, in a row on cloth as wide as they are: 900, each garment in 300. */
    @Test
    void aGarmentAfterTheOtherInJustTheRoomItTakes() {
        TestFabric cloth = TestFabric.plain().width(100, 0);
        Marker marker = made(order(cloth.shadeLengthwise(300).fabric(), 0, 3, cut(square(), 3, Cut.Manner.ALIKE)));
        assertThat(marker.length()).isEqualTo(mm(900));
        assertThat(longestGarment(marker)).isEqualTo(300_000);
    }

    /** With 0.2 mm less no layout is possible. */
    @Test
    void noneIsFoundWhereThereIsNone() {
        TestFabric cloth = TestFabric.plain().width(100, 0);
        assertThat(refused(order(cloth.shadeLengthwise(299.8).fabric(), 0, 3, cut(square(), 3, Cut.Manner.ALIKE))))
                .contains("one shade", "lengthwise 30 cm");
    }

    /** Two pairs of squares fill a row of 400 mm; where mates have the same band of 100 mm, it takes two rows. */
    @Test
    void matesLieOneBehindTheOther() {
        MarkerOrder anywhere = order(TestFabric.plain().width(400, 0).fabric(), 0, 2, cut(flag(), 1, Cut.Manner.PAIR));
        MarkerOrder inBands = anywhere.withFabric(
                TestFabric.plain().width(400, 0).shadeCrosswise(100).fabric());
        assertThat(made(anywhere).length()).isEqualTo(mm(100));
        Marker marker = made(inBands);
        assertThat(marker.length()).isEqualTo(mm(200));
        assertThat(((MarkerAnswer.Made) MarkerMaking.loosen(anywhere, marker, search()))
                        .marker()
                        .length())
                .isEqualTo(mm(100));
    }

    /** Pieces of many forms, with a gap, of which large ones want to lie together and small ones in holes. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyGarmentKeepsWithinItsStretch(long seed) {
        MarkerOrder order = swimSuits(6, TestFabric.plain().width(700, 10).shadeLengthwise(420));
        Marker marker = made(order, Search.of(StopRule.iterations(200), seed, 1));
        assertThat(longestGarment(marker)).isLessThanOrEqualTo(420_000);
        Marker free = made(order.withFabric(order.fabric().withShade(Optional.empty())));
        assertThat(longestGarment(free)).isGreaterThan(420_000);
    }

    /** So many pieces that they are laid section by section. */
    @Test
    void inALongOrderToo() {
        MarkerOrder order = swimSuits(30, TestFabric.plain().width(900, 10).shadeLengthwise(500));
        Marker marker = made(order, Search.of(StopRule.iterations(60), 1, 1));
        assertThat(marker.placements()).hasSize(240);
        assertThat(longestGarment(marker)).isLessThanOrEqualTo(500_000);
    }

    /** Garments 1 and 2 are begun; what is left of them goes near to what is cut. */
    @Test
    void whatIsCutAlreadyDrawsTheRestToIt() {
        MarkerOrder order = swimSuits(4, TestFabric.plain().width(700, 10).shadeLengthwise(500));
        Marker marker = made(order);
        List<PlacedPiece> pieces =
                marker.inLayingOrder().stream().map(PlacedPiece::of).toList();
        CutAlready cut = new CutAlready(pieces.subList(0, 5), List.of(), marker.length(), List.of());
        assertThat(longestGarment(made(order.withCutAlready(cut)))).isLessThanOrEqualTo(500_000);
    }

    @Test
    void aPieceThatIsLongerThanThatIsNamed() {
        MarkerOrder order = order(
                TestFabric.plain().width(500, 0).shadeLengthwise(250).fabric(),
                0,
                1,
                cut(rectangle("front", 300, 100), 1, Cut.Manner.ALIKE),
                cut(square(), 1, Cut.Manner.ALIKE));
        assertThat(refused(order)).contains("front is 300.0 mm lengthwise", "within 250.0 mm (shade: lengthwise)");
    }

    @ParameterizedTest
    @EnumSource(
            value = Spread.Form.class,
            names = {"FOLD_CROSSWISE", "FOLD_LENGTHWISE", "TUBE"})
    void twoRulesThatContradictAreBothNamed(Spread.Form form) {
        boolean across = form == Spread.Form.FOLD_CROSSWISE;
        TestFabric cloth = TestFabric.plain().width(500, 0).spread(form);
        MarkerOrder order = order(
                (across ? cloth.shadeLengthwise(400) : cloth.shadeCrosswise(400)).fabric(),
                0,
                1,
                cut(flag(), 1, Cut.Manner.PAIR));
        assertThat(refused(order))
                .contains("shade", across ? "different stretches" : "lies folded", "Lay it in a single layer");
    }

    private static MarkerOrder swimSuits(int garments, TestFabric cloth) {
        return order(
                cloth.fabric(),
                3,
                garments,
                cut(triangle("cup", 160, 120), 2, Cut.Manner.PAIR),
                cut(rectangle("back", 200, 180), 1, Cut.Manner.ALIKE),
                cut(triangle("front", 220, 260), 1, Cut.Manner.ALIKE),
                cut(rectangle("tie", 300, 30), 2, Cut.Manner.ALIKE));
    }

    private static Piece square() {
        return rectangle("square", 100, 100);
    }

    /** As good as a square, and its mirror image is another. */
    private static Piece flag() {
        return TestPieces.piece("flag", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 99, 99, 100, 0, 100);
    }

    private static long longestGarment(Marker marker) {
        Map<Integer, List<Box>> garments = marker.placements().stream()
                .collect(Collectors.groupingBy(
                        placement -> placement.item().garments().get(0).number(),
                        Collectors.mapping(placement -> placement.outline().box(), Collectors.toList())));
        return garments.values().stream()
                .mapToLong(
                        boxes -> boxes.stream().reduce(Box::union).orElseThrow().width())
                .max()
                .orElseThrow();
    }

    private static Marker made(MarkerOrder order) {
        return made(order, search());
    }

    private static Marker made(MarkerOrder order, Search search) {
        MarkerAnswer answer = MarkerMaking.make(order, search, (marker, progress) -> {});
        assertThat(answer).as(answer.toString()).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }

    private static String refused(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Impossible.class);
        return ((MarkerAnswer.Impossible) answer).reason();
    }

    private static Search search() {
        return Search.of(StopRule.iterations(150), 1, 1);
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
