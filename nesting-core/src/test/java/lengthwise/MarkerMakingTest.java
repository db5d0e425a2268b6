package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.mate;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.otherHand;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.strip;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.MatchPoint;
import lengthwise.model.OnHand;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;
import lengthwise.solver.Search;
import lengthwise.solver.SearchResult.StopReason;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MarkerMakingTest {
    private static final Piece CUP = triangle("cup", 90, 60);
    private static final Piece HALF_FRONT = onFold(triangle("front", 300, 200), 300);

    /** By hand: a pair of equal right triangles either way round fills a rectangle of 300 × 200 = 100 %. */
    @Test
    void twoTrianglesFillTheirRectangle() {
        Fabric narrow = TestFabric.plain().width(200, 0).fabric();
        Marker marker = made(order(narrow, 0, 1, cut(triangle("flap", 300, 200), 2, Cut.Manner.ALIKE)));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(300));
        assertThat(marker.efficiency()).isEqualTo(1.0);
    }

    /** The rotation set of one-way cloth is smaller, so its marker cannot be shorter; here by hand: 2 × 300. */
    @Test
    void oneWayTheSameTrianglesTakeMore() {
        Fabric narrow =
                TestFabric.plain().width(200, 0).direction(Direction.ONE_WAY).fabric();
        Marker marker = made(order(narrow, 0, 1, cut(triangle("flap", 300, 200), 2, Cut.Manner.ALIKE)));
        assertThat(marker.length().millimetres()).isGreaterThan(300);
        assertThat(marker.placements())
                .allSatisfy(placement ->
                        assertThat(placement.pose().orientation().turn()).isEqualTo(QuarterTurn.NONE));
    }

    /** What a rule costs is never below nothing: the marker without it is searched from the one with it. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void withoutARuleNoMarkerIsLonger(int seed) {
        Fabric strict = TestFabric.plain()
                .width(400, 0)
                .direction(Direction.ONE_WAY)
                .flaws(new Box(250_000, 100_000, 260_000, 150_000))
                .fabric();
        MarkerOrder order = order(
                strict,
                3,
                2,
                cut(triangle("cup", 90 + seed, 60), 3, Cut.Manner.PAIR),
                cut(triangle("flap", 210, 130 + seed), 2, Cut.Manner.ALIKE),
                cut(strip("tie", 180, 32), 3, Cut.Manner.ALIKE));
        Marker marker = made(order);
        for (Fabric freer : List.of(strict.withDirection(Direction.EITHER_WAY), strict.withoutFlaws())) {
            MarkerAnswer answer =
                    MarkerMaking.loosen(order.withFabric(freer), marker, Search.of(StopRule.iterations(seed), seed, 1));
            assertThat(((MarkerAnswer.Made) answer).marker().length()).isLessThanOrEqualTo(marker.length());
        }
    }

    /**
     * A jigsaw on cloth of 400 mm folded lengthwise: the layer of 300 × 200 mm between fold and selvedge is cut by one slanting
     * line into a half that lies on the fold and a piece that comes out as a pair. No shorter marker can be, and it is found.
     */
    @ParameterizedTest
    @CsvSource({"1, 300", "2, 600"})
    void aJigsawOnFoldedClothIsPutTogether(int garments, double millimetres) {
        Fabric folded = TestFabric.plain()
                .width(400, 0)
                .direction(Direction.ONE_WAY)
                .folded()
                .fabric();
        Optional<QuarterTurn> up = Optional.of(QuarterTurn.NONE);
        Piece half = onFold(TestPieces.piece("back", up, 0, 0, 160, 0, 120, 200, 0, 200), 160);
        Piece side = TestPieces.piece("side", up, 160, 0, 300, 0, 300, 200, 120, 200);
        Marker marker =
                made(order(folded, 0, garments, cut(half, 1, Cut.Manner.ON_FOLD), cut(side, 1, Cut.Manner.PAIR)));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(millimetres));
    }

    /** By hand: either way round two equal right triangles fill 300 × 200; from the one-way marker that is found too. */
    @Test
    void withoutOneWayTheTrianglesFillTheirRectangle() {
        Fabric oneWay =
                TestFabric.plain().width(200, 0).direction(Direction.ONE_WAY).fabric();
        MarkerOrder order = order(oneWay, 0, 1, cut(triangle("flap", 300, 200), 2, Cut.Manner.ALIKE));
        assertThat(loosened(order, oneWay.withDirection(Direction.EITHER_WAY))).isEqualTo(Length.ofMillimetres(300));
    }

    /** By hand: squares of 100 one after another, matched to a repeat of 64, lie 128 apart: 228. Unmatched they take 200. */
    @Test
    void matchingThePrintAdds28() {
        Fabric print = TestFabric.plain().width(100, 0).repeat(64, 50).fabric();
        MarkerOrder order =
                order(print, 0, 1, cut(matched(rectangle("patch", 100, 100), 0, 50, 0), 2, Cut.Manner.ALIKE));
        assertThat(made(order).length()).isEqualTo(Length.ofMillimetres(228));
        assertThat(loosened(order, print.withoutRepeat())).isEqualTo(Length.ofMillimetres(200));
    }

    /** By hand: matched, two plies of two patches take 128 + 100 = 228 and end at the next repeat of 64, 256. */
    @Test
    void matchedPliesEndAtAWholeRepeat() {
        TestFabric print = TestFabric.plain().width(100, 0).repeat(64, 50);
        Fabric plies = print.plies(Spread.Form.PLIES_FACE_UP, 2, Spread.PlyRun.SAME_WAY)
                .fabric();
        MarkerOrder order =
                order(plies, 0, 2, cut(matched(rectangle("patch", 100, 100), 0, 50, 0), 2, Cut.Manner.ALIKE));
        Marker marker = made(order);
        assertThat(marker.placements()).hasSize(2);
        assertThat(marker.piecesEnd()).isEqualTo(Length.ofMillimetres(228));
        assertThat(marker.length()).isEqualTo(Length.ofMillimetres(256));
        assertThat(loosened(order, plies.withoutRepeat())).isEqualTo(Length.ofMillimetres(200));
        MarkerAnswer onHand = MarkerMaking.make(
                order.withFabric(plies.withOnHand(OnHand.of(Length.ofMillimetres(2 * 230)))),
                search(20),
                (better, progress) -> {});
        assertThat(((MarkerAnswer.TooLong) onHand).shortfall()).isEqualTo(Length.ofMillimetres(26));
    }

    /** A repeat without match points adds nothing, also through plies. */
    @Test
    void aRepeatWithoutMatchPointsAddsNothing() {
        for (int layers : List.of(1, 2)) {
            TestFabric cloth =
                    TestFabric.plain().width(300, 0).plies(Spread.Form.PLIES_FACE_UP, layers, Spread.PlyRun.SAME_WAY);
            MarkerOrder plain = order(cloth.fabric(), 2, 2, cut(CUP, 3, Cut.Manner.PAIR));
            Marker printed = made(plain.withFabric(cloth.repeat(64, 50).fabric()));
            assertThat(printed.length()).isEqualTo(made(plain).length());
        }
    }

    /**
     * By hand: patches of 100 on cloth of 260. Stripes across, 150 apart, leave the width free: two side by side, the next two 150
     * on: 250. Stripes along, 150 apart, leave the length free: two side by side, the next two behind them: 200.
     */
    @Test
    void stripesLeaveTheOtherWayFree() {
        CutPiece patches = cut(matched(rectangle("patch", 100, 100), 0, 0, 0), 4, Cut.Manner.ALIKE);
        TestFabric cloth = TestFabric.plain().width(260, 0);
        assertThat(made(order(cloth.repeat(150, 0).fabric(), 0, 1, patches)).length())
                .isEqualTo(Length.ofMillimetres(250));
        assertThat(made(order(cloth.repeat(0, 150).fabric(), 0, 1, patches)).length())
                .isEqualTo(Length.ofMillimetres(200));
    }

    /** Cups of 90 × 60, tips anywhere: along the free way of stripes the search packs as if there were no stripes. */
    @ParameterizedTest
    @CsvSource({"120, 0", "0, 61"})
    void alongStripesTheSearchFindsPlaces(double lengthwise, double crosswise) {
        TestFabric cloth = TestFabric.plain().width(190, 0).direction(Direction.ONE_WAY);
        MarkerOrder order = order(
                cloth.repeat(lengthwise, crosswise).fabric(), 0, 1, cut(matched(CUP, 0, 0, 0), 6, Cut.Manner.ALIKE));
        Marker marker = made(order);
        // three rows of cups; those of a row lie at most 90 apart, or at a stripe
        assertThat(marker.length()).isLessThanOrEqualTo(Length.ofMillimetres(lengthwise > 0 ? 210 : 180));
    }

    /**
     * By hand: patches of 100 one after another on cloth of 100, stripes across every 150. Hole over hole they lie 150 apart:
     * 250. With the hole of one 50 further in they touch: 200. Nothing says where the print begins.
     */
    @ParameterizedTest
    @CsvSource({"0, 250", "50, 200"})
    void twoPiecesLieAlikeInThePrint(double hole, double length) {
        Fabric stripes = TestFabric.plain()
                .width(100, 0)
                .direction(Direction.ONE_WAY)
                .repeat(150, 0)
                .fabric();
        Piece front = holed(rectangle("front", 100, 100), 20, 50);
        Piece pocket = TestPieces.matched(
                holed(rectangle("pocket", 100, 100), 20 + hole, 50), 0, Optional.empty(), mate("front", 1));
        MarkerOrder order = order(stripes, 0, 1, cut(front, 1, Cut.Manner.ALIKE), cut(pocket, 1, Cut.Manner.ALIKE));
        assertThat(made(order).length()).isEqualTo(Length.ofMillimetres(length));
        assertThat(loosened(order, stripes.withoutRepeat())).isEqualTo(Length.ofMillimetres(200));
        // three garments, each with a place of its own in the print; of one of these the patches may lie apart
        MarkerOrder three = order(stripes, 0, 3, cut(front, 1, Cut.Manner.ALIKE), cut(pocket, 1, Cut.Manner.ALIKE));
        assertThat(made(three).placements()).hasSize(6);
        assertThat(made(three)).isEqualTo(made(three));
    }

    @Test
    void leftAndRightLieMirroredInThePrint() {
        Fabric print = TestFabric.plain()
                .width(400, 0)
                .direction(Direction.ONE_WAY)
                .repeat(new Repeat(
                        Length.ofMillimetres(64),
                        Length.ofMillimetres(80),
                        /* halfDrop= */ false,
                        /* mirrored= */ true,
                        Length.ZERO,
                        Length.ofMillimetres(30)))
                .fabric();
        Piece front = TestPieces.matched(holed(CUP, 30, 20), 0, Optional.empty(), otherHand());
        Marker marker = made(order(print, 2, 2, cut(front, 1, Cut.Manner.PAIR)));
        for (int garment = 0; garment < 2; garment++) {
            Point right = hole(marker, 2 * garment);
            Point left = hole(marker, 2 * garment + 1);
            assertThat(Math.floorMod(right.x() - left.x(), 64_000)).isZero();
            // as far beyond an axis as the other is before one; the axes lie at 30 mm and every 80 mm
            assertThat(Math.floorMod(right.y() - 30_000 + left.y() - 30_000, 80_000))
                    .isZero();
        }
    }

    private static Point hole(Marker marker, int number) {
        Placement placement = marker.placements().get(number);
        return placement
                .pose()
                .apply(placement.item().piece().marks().drillHoles().get(0));
    }

    /** More cloth than there is: what stays out, and the rest in its place in the print. */
    @Test
    void aMatchedOrderThatIsTooLongSaysWhatStaysOut() {
        Fabric stripes = TestFabric.plain()
                .width(100, 0)
                .direction(Direction.ONE_WAY)
                .repeat(150, 0)
                .onHand(380)
                .fabric();
        Piece front = holed(rectangle("front", 100, 100), 20, 50);
        Piece pocket =
                TestPieces.matched(holed(rectangle("pocket", 100, 100), 20, 50), 0, Optional.empty(), mate("front", 1));
        MarkerAnswer answer = MarkerMaking.make(
                order(stripes, 0, 2, cut(front, 1, Cut.Manner.ALIKE), cut(pocket, 1, Cut.Manner.ALIKE)),
                search(20),
                (marker, progress) -> {});
        assertThat(((MarkerAnswer.TooLong) answer).staysOut()).isNotEmpty();
    }

    @Test
    void foldedBesideThePrintAMatchPointIsRefused() {
        TestFabric cloth = TestFabric.plain().width(400, 0).folded();
        CutPiece pair = cut(matched(CUP, 30, 20, 2), 1, Cut.Manner.PAIR);
        Repeat onFold = new Repeat(
                Length.ofMillimetres(64), Length.ofMillimetres(60), false, Length.ZERO, Length.ofMillimetres(-58.5));
        assertThat(made(order(cloth.repeat(onFold).fabric(), 0, 1, pair)).placements())
                .hasSize(1);
        Repeat beside = new Repeat(
                Length.ofMillimetres(64), Length.ofMillimetres(60), false, Length.ZERO, Length.ofMillimetres(5));
        MarkerAnswer answer = MarkerMaking.make(
                order(cloth.repeat(beside).fabric(), 0, 1, pair), search(5), (marker, progress) -> {});
        assertThat(((MarkerAnswer.Impossible) answer).reason())
                .contains("cup has a match point", "10.0 mm off", "single layer", "origin");
    }

    private static Length loosened(MarkerOrder order, Fabric freer) {
        MarkerAnswer answer = MarkerMaking.loosen(order.withFabric(freer), made(order), search(80));
        return ((MarkerAnswer.Made) answer).marker().length();
    }

    private static Piece matched(Piece piece, double x, double y, double tolerance) {
        return new Piece(
                piece.name(),
                piece.size(),
                piece.outline(),
                piece.up(),
                piece.turning(),
                Optional.empty(),
                Optional.of(new MatchPoint(
                        new Point(Math.round(x * 1e3), Math.round(y * 1e3)), Length.ofMillimetres(tolerance))),
                false,
                piece.marks());
    }

    @Test
    void aMarkerOfOtherPiecesIsNoStart() {
        Fabric fabric = TestFabric.plain().width(400, 0).fabric();
        MarkerOrder one = order(fabric, 0, 1, cut(triangle("flap", 300, 200), 2, Cut.Manner.ALIKE));
        MarkerOrder other = order(fabric, 0, 1, cut(triangle("flap", 300, 200), 3, Cut.Manner.ALIKE));
        assertThatThrownBy(() -> MarkerMaking.loosen(other, made(one), Search.of(StopRule.iterations(1), 1, 1)))
                .hasMessageContaining("2 for 3");
    }

    @Test
    void whatLiesOnTheFoldLiesOnIt() {
        Marker marker = made(order(
                TestFabric.plain().folded().fabric(),
                2,
                3,
                cut(HALF_FRONT, 1, Cut.Manner.ON_FOLD),
                cut(CUP, 1, Cut.Manner.PAIR)));
        List<Placement> fronts = marker.placements().stream()
                .filter(placement -> placement.item().piece().name().equals("front"))
                .toList();
        assertThat(fronts).hasSize(3);
        assertThat(fronts)
                .allSatisfy(front ->
                        assertThat(front.pose().apply(Point.ORIGIN).y()).isZero());
        assertThat(marker.placements()).hasSize(6);
    }

    @Test
    void oneWayPerGarmentTurnsWholeGarments() {
        Marker marker = made(order(
                TestFabric.plain()
                        .width(160, 0)
                        .direction(Direction.ONE_WAY_PER_GARMENT)
                        .fabric(),
                1,
                4,
                cut(CUP, 2, Cut.Manner.PAIR)));
        for (int garment = 1; garment <= 4; garment++) {
            int number = garment;
            assertThat(marker.placements().stream()
                            .filter(placement ->
                                    placement.item().garments().get(0).number() == number)
                            .map(placement -> placement.pose().orientation().turn())
                            .distinct())
                    .hasSize(1);
        }
    }

    @Test
    void matchPointsMeetThePrintAndFlawsStayFree() {
        Box flaw = new Box(40_000, 100_000, 90_000, 160_000);
        Piece matched = matched(CUP, 30, 20, 1);
        MarkerOrder order = order(
                TestFabric.plain().width(400, 10).repeat(64, 64).flaws(flaw).fabric(),
                2,
                2,
                cut(matched, 1, Cut.Manner.ALIKE),
                cut(strip("tie", 32, 200), 2, Cut.Manner.ALIKE));
        Marker marker = made(order);
        assertThat(marker.placements().stream()
                        .filter(placement -> placement.item().piece().name().equals("cup"))
                        .map(placement -> placement.pose().apply(new Point(30_000, 20_000))))
                .allSatisfy(at -> {
                    assertThat(offLattice(at.x())).isLessThanOrEqualTo(1_000);
                    assertThat(offLattice(at.y())).isLessThanOrEqualTo(1_000);
                });
    }

    private static long offLattice(long coordinate) {
        long beyond = Math.floorMod(coordinate, 64_000);
        return Math.min(beyond, 64_000 - beyond);
    }

    @Test
    void noAnswerSaysWhichPieceAndWhatToDo() {
        MarkerAnswer answer = MarkerMaking.make(
                order(TestFabric.plain().fabric(), 0, 1, cut(strip("rib-tie", 32, 1600), 1, Cut.Manner.ALIKE)),
                search(5),
                (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Impossible.class);
        assertThat(((MarkerAnswer.Impossible) answer).reason())
                .contains("rib-tie is 160.0 cm", "146.0 cm", "run the other way", "join");
    }

    /** 150 cm with both selvedges to the middle lie 75 cm wide and meet at 37.5: a tie of 70 cm across finds no place. */
    @Test
    void whereTheSelvedgesMeetTheReasonIsNoFlaw() {
        MarkerAnswer answer = MarkerMaking.make(
                order(
                        TestFabric.plain()
                                .spread(Spread.Form.SELVEDGES_TO_MIDDLE)
                                .fabric(),
                        0,
                        1,
                        cut(strip("belt", 120, 700), 2, Cut.Manner.ALIKE)),
                search(5),
                (marker, progress) -> {});
        assertThat(((MarkerAnswer.Impossible) answer).reason())
                .contains("belt finds no place", "the selvedges meet in the middle", "single layer")
                .doesNotContain("flaws");
    }

    /** The first marker comes before any sweep, and each that follows is shorter. */
    @Test
    void everyMarkerOnTheWayIsShorterThanTheLast() {
        List<Length> lengths = new ArrayList<>();
        MarkerMaking.make(
                order(TestFabric.plain().width(400, 0).fabric(), 2, 5, cut(CUP, 2, Cut.Manner.PAIR)),
                search(60),
                (marker, progress) -> lengths.add(marker.length()));
        assertThat(lengths).isNotEmpty();
        assertThat(lengths).isSortedAccordingTo(Comparator.reverseOrder());
    }

    @Test
    void anInterruptReturnsTheBestSoFar() {
        MarkerAnswer answer = MarkerMaking.make(
                order(TestFabric.plain().width(400, 0).fabric(), 2, 5, cut(CUP, 2, Cut.Manner.PAIR)),
                search(1_000_000).cancelledBy(() -> true),
                (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        assertThat(((MarkerAnswer.Made) answer).reason()).isEqualTo(StopReason.CANCELLED);
    }

    @Test
    void sameSeedSameMarkerAlsoOnFoldedCloth() {
        MarkerOrder order = order(
                TestFabric.plain().width(600, 0).folded().fabric(),
                2,
                3,
                cut(onFold(rectangle("front", 200, 120), 200), 1, Cut.Manner.ON_FOLD),
                cut(CUP, 2, Cut.Manner.PAIR));
        assertThat(made(order)).isEqualTo(made(order));
    }

    private static Marker made(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(80), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return ((MarkerAnswer.Made) answer).marker();
    }

    private static Search search(long iterations) {
        return Search.of(StopRule.iterations(iterations), 7, 2);
    }
}
