package lengthwise.rules;

import static lengthwise.rules.Rulings.refusal;
import static lengthwise.rules.Rulings.ruled;
import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.strip;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.MatchPoint;
import lengthwise.model.Piece;
import lengthwise.model.Shrinkage;
import lengthwise.testing.TestFabric;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;

class RulingTest {
    private static final Fabric PLAIN = TestFabric.plain().fabric();
    private static final Fabric FOLDED = TestFabric.plain().folded().fabric();
    private static final CutPiece PAIR = cut(triangle("cup", 90, 60), 1, Cut.Manner.PAIR);

    /** Face up, one direction: every ply gives the same hand (Industrial Cutting of Textile Materials, p. 34). */
    @Test
    void singleLayerLaysLeftAndRightByThemselves() {
        Ruling.Task task = ruled(order(PLAIN, 0, 2, PAIR));
        assertThat(task.items()).extracting(Item::hand).containsExactly(Hand.RIGHT, Hand.LEFT, Hand.RIGHT, Hand.LEFT);
        assertThat(task.items()).extracting(Item::mirrored).containsExactly(false, true, false, true);
        assertThat(flips(task, 0)).containsOnly(false);
        assertThat(flips(task, 1)).containsOnly(true);
    }

    /** Layers face to face give one left and one right a cut (Industrial Cutting of Textile Materials, pp. 272, 279). */
    @Test
    void foldedFabricCutsAPairInOneGoEitherFaceUp() {
        Ruling.Task task = ruled(order(FOLDED, 0, 2, PAIR));
        assertThat(task.items()).hasSize(2);
        assertThat(flips(task, 0)).contains(true, false);
        assertThat(task.task().height()).isEqualTo(730_000);
    }

    /** One on the fold is one whole piece, twice as wide as drawn: common practice, no source. */
    @Test
    void aHalfPieceIsOpenedInASingleLayerAndLiesOnTheFoldOtherwise() {
        CutPiece half = cut(onFold(triangle("front", 300, 200), 300), 1, Cut.Manner.ON_FOLD);
        Ruling.Task open = ruled(order(PLAIN, 0, 1, half));
        assertThat(open.task().demands().get(0).outline().box().height()).isEqualTo(400_000);
        assertThat(open.task().demands().get(0).domain().positions()).isEqualTo(new PlacementDomain.Positions.Free());

        Ruling.Task folded = ruled(order(FOLDED, 0, 1, half));
        assertThat(folded.items()).hasSize(1);
        assertThat(folded.task().demands().get(0).domain().positions())
                .isEqualTo(new PlacementDomain.Positions.Line(Point.ORIGIN, 0));
        assertThat(folded.task().demands().get(0).domain().orientations())
                .containsExactlyInAnyOrder(
                        new Orientation(false, QuarterTurn.NONE), new Orientation(true, QuarterTurn.HALF));
    }

    @Test
    void oddPiecesOnFoldedFabricAreSaid() {
        Ruling.Task task = ruled(order(FOLDED, 0, 3, cut(rectangle("pocket", 100, 80), 1, Cut.Manner.ALIKE)));
        assertThat(task.items()).hasSize(2);
        assertThat(task.items().get(0).garments()).hasSize(2);
        assertThat(task.surplus()).singleElement().asString().contains("One pocket more than ordered", "3 are ordered");
    }

    @Test
    void alikeAndWithoutSymmetryCannotBeCutFromFoldedFabric() {
        assertThat(refusal(order(FOLDED, 0, 1, cut(triangle("flap", 90, 60), 2, Cut.Manner.ALIKE))))
                .contains("flap", "mirrored", "single layer");
    }

    /** A one-way print: every piece lies the same way, rotation set {0°} (Industrial Cutting of Textile Materials, p. 20). */
    @Test
    void oneWayLeavesOneTurnAndStripsThatIgnoreThePrintAreFree() {
        Ruling.Task task = ruled(order(
                TestFabric.plain().direction(Direction.ONE_WAY).fabric(),
                0,
                1,
                PAIR,
                cut(strip("tie", 32, 460), 1, Cut.Manner.ALIKE)));
        assertThat(turns(task, 0)).containsExactly(QuarterTurn.NONE);
        assertThat(turns(task, 1)).containsExactly(QuarterTurn.NONE);
        assertThat(turns(task, 2)).containsExactly(QuarterTurn.NONE, QuarterTurn.HALF);
    }

    /** Pieces of one garment the same way, other garments may be turned (Industrial Cutting of Textile Materials, p. 233). */
    @Test
    void oneWayPerGarmentBindsThePiecesOfEachGarment() {
        Ruling.Task task = ruled(order(
                TestFabric.plain().direction(Direction.ONE_WAY_PER_GARMENT).fabric(),
                0,
                2,
                PAIR,
                cut(strip("tie", 32, 460), 1, Cut.Manner.ALIKE)));
        assertThat(turns(task, 0)).containsExactly(QuarterTurn.NONE, QuarterTurn.HALF);
        assertThat(task.task().bonds())
                .containsExactly(new Bond.SameTurn(List.of(0, 1)), new Bond.SameTurn(List.of(3, 4)));
    }

    /** A drawing with one piece turned by 180° is the same order: on one-way cloth its up end goes to the same end. */
    @Test
    void aPieceDrawnUpsideDownIsTurnedUpright() {
        Piece drawn = triangle("cup", 90, 60);
        Piece upsideDown = TestPieces.piece("cup", Optional.of(QuarterTurn.HALF), 0, 0, -90, 0, 0, -60);
        Fabric perGarment =
                TestFabric.plain().direction(Direction.ONE_WAY_PER_GARMENT).fabric();
        Ruling.Task task =
                ruled(order(perGarment, 0, 1, cut(drawn, 1, Cut.Manner.ALIKE), cut(upsideDown, 1, Cut.Manner.ALIKE)));
        assertThat(task.items()).extracting(item -> item.piece().up()).containsOnly(Optional.of(QuarterTurn.NONE));
        assertThat(task.task().demands().get(1).outline())
                .isEqualTo(task.task().demands().get(0).outline());
    }

    @Test
    void symmetryThatNeedsAHalfTurnDoesNotHelpInAPrint() {
        Piece tongue = TestPieces.piece("tongue", Optional.of(QuarterTurn.NONE), 0, 0, 60, 0, 40, 50, 20, 50);
        CutPiece two = cut(tongue, 2, Cut.Manner.ALIKE);
        assertThat(ruled(order(FOLDED, 0, 1, two)).items()).hasSize(1);
        Fabric print = TestFabric.plain().folded().direction(Direction.ONE_WAY).fabric();
        assertThat(Ruling.of(order(print, 0, 1, two))).isInstanceOf(Ruling.Refused.class);
    }

    @Test
    void aContourThatServesTwoGarmentsBindsBoth() {
        Ruling.Task task = ruled(order(
                TestFabric.plain()
                        .folded()
                        .direction(Direction.ONE_WAY_PER_GARMENT)
                        .fabric(),
                0,
                2,
                PAIR,
                cut(rectangle("band", 200, 40), 1, Cut.Manner.ALIKE)));
        assertThat(task.task().bonds()).hasSize(1);
        assertThat(((Bond.SameTurn) task.task().bonds().get(0)).members()).containsExactlyInAnyOrder(0, 1, 2);
    }

    @Test
    void stretchAgainstPrintStopsAndSaysSo() {
        Piece crosswise = TestPieces.piece("front", Optional.of(QuarterTurn.QUARTER), 0, 0, 90, 0, 0, 60);
        CutPiece cut = cut(crosswise, 1, Cut.Manner.ALIKE);
        Fabric oneWay = TestFabric.plain().direction(Direction.ONE_WAY).fabric();
        assertThat(refusal(order(oneWay, 0, 1, cut))).contains("front", "pulled two ways", "print: ignore");
        assertThat(ruled(order(PLAIN, 0, 1, cut)).items()).hasSize(1);
    }

    @Test
    void aRepeatAloneConstrainsNothingAMatchPointDoes() {
        Piece plain = triangle("cup", 90, 60);
        Piece matched = new Piece(
                plain.name(),
                plain.size(),
                plain.outline(),
                plain.up(),
                plain.turning(),
                Optional.empty(),
                Optional.of(new MatchPoint(new Point(30_000, 20_000), Length.ofMillimetres(1))),
                false,
                plain.marks());
        Ruling.Task task = ruled(order(
                TestFabric.plain()
                        .repeat(320, 160)
                        .shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH)
                        .fabric(),
                0,
                1,
                cut(plain, 1, Cut.Manner.ALIKE),
                cut(matched, 1, Cut.Manner.ALIKE)));
        assertThat(task.task().demands().get(0).domain().positions()).isEqualTo(new PlacementDomain.Positions.Free());
        // by hand: 320 mm less 3 % is 310.4 mm; 160 mm less 2 % is 156.8 mm
        assertThat(task.task().demands().get(1).domain().positions())
                .isEqualTo(new PlacementDomain.Positions.Lattice(
                        new Point(30_000, 20_000), Point.ORIGIN, 310_400, 156_800, false, 1_000));
    }

    @Test
    void aFlawIsAnObstacle() {
        Box flaw = new Box(100_000, 0, 200_000, 50_000);
        Ruling.Task task = ruled(order(TestFabric.plain().flaws(flaw).fabric(), 0, 1, PAIR));
        assertThat(task.task().obstacles())
                .singleElement()
                .satisfies(obstacle -> assertThat(obstacle.region().box()).isEqualTo(flaw));
    }

    private static List<Boolean> flips(Ruling.Task task, int demand) {
        return task.task().demands().get(demand).domain().orientations().stream()
                .map(Orientation::flipped)
                .toList();
    }

    private static List<QuarterTurn> turns(Ruling.Task task, int demand) {
        return task.task().demands().get(demand).domain().orientations().stream()
                .map(Orientation::turn)
                .toList();
    }
}
