package lengthwise.check;

import static lengthwise.check.Violation.OffFabric.Edge.FAR;
import static lengthwise.check.Violation.OffFabric.Edge.FOLD;
import static lengthwise.check.Violation.OffFabric.Edge.NEAR;
import static lengthwise.check.Violation.OffFabric.Edge.START;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import lengthwise.geometry.Box;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Piece.MatchPoint;
import lengthwise.model.Piece.Turning;
import lengthwise.model.PieceMarks;
import lengthwise.model.PlacedPiece;
import lengthwise.model.Placement;
import lengthwise.model.Repeat;
import lengthwise.model.Segment;
import lengthwise.model.Shrinkage;
import lengthwise.model.Size;
import lengthwise.model.Spread;
import org.junit.jupiter.api.Test;

/** One smallest marker for each violation, and the legal one beside it. */
class MarkerCheckTest {
    private static final Size S = new Size("S");
    private static final Garment ONE = new Garment(1, S);
    private static final Garment TWO = new Garment(2, S);

    /** No two of its eight orientations look alike. 100 mm long, 60 mm high. */
    private static final Outline SLEEVE = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_000));

    private static final Outline BLOCK = Outline.of(new Box(0, 0, 100_000, 30_000).ring());
    private static final Length METRE = Length.ofMillimetres(1000);

    private static final Orientation FLIPPED = new Orientation(true, QuarterTurn.NONE);
    private static final Orientation TURNED = turned(QuarterTurn.HALF);

    @Test
    void anExactMarkerIsClean() {
        Marker marker = marker(
                order(cloth(), bundle(ONE, alike(sleeve(), 2))),
                placed(sleeve(), ONE, 0, 0),
                placed(sleeve(), ONE, 0, 60_000));
        assertThat(MarkerCheck.violations(marker)).isEmpty();
    }

    @Test
    void oneMicrometreOfOverlapIsToldWithItsAmount() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 2)));
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 30_000)))
                .isEmpty();
        Violation.Overlap overlap = only(
                Violation.Overlap.class, check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 29_999)));
        assertThat(overlap.squareMillimetres()).isCloseTo(0.1, within(1e-6));
        assertThat(overlap.thickness()).isCloseTo(0.001, within(1e-5));
        assertThat(overlap.sentence())
                .isEqualTo("block S of garment 1 overlaps block S of garment 1: 0.1 mm² in common, 0.001 mm at its"
                        + " thickest.");
    }

    @Test
    void aGapIsKeptOrMissedByAMicrometre() {
        MarkerOrder order = new MarkerOrder(cloth(), Length.ofMillimetres(3), List.of(bundle(ONE, alike(block(), 2))));
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 33_000)))
                .isEmpty();
        Violation.TooClose close = only(
                Violation.TooClose.class, check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 32_999)));
        assertThat(close.distance()).isCloseTo(2.999, within(1e-9));
        assertThat(close.sentence()).contains("lies 2.999 mm from").endsWith("the gap has to be 3 mm.");
    }

    /** Block and plate lie 3 mm apart; a gap of 5 mm of the plate's own is larger, one of 1 mm is not. */
    @Test
    void betweenTwoPiecesTheLargerOfTheirGapsCounts() {
        Piece plate = piece("plate", block().outline());
        List<Bundle> bundles = List.of(bundle(ONE, alike(block(), 1), alike(plate, 1)));
        Placement[] laid = {placed(block(), ONE, 0, 0), placed(plate, ONE, 0, 33_000)};
        Length gap = Length.ofMillimetres(3);
        assertThat(check(new MarkerOrder(cloth(), gap, Map.of("plate", Length.ofMillimetres(1)), bundles), laid))
                .isEmpty();
        Violation.TooClose close = only(
                Violation.TooClose.class,
                check(new MarkerOrder(cloth(), gap, Map.of("plate", Length.ofMillimetres(5)), bundles), laid));
        assertThat(close.sentence()).endsWith("the gap has to be 5 mm.");
    }

    @Test
    void everyEdgeOfTheFabricIsAnEdge() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 900_000, 970_000))).isEmpty();
        assertThat(off(check(order, placed(block(), ONE, -1, 0)))).isEqualTo(START);
        assertThat(off(check(order, placed(block(), ONE, 0, -1)))).isEqualTo(NEAR);
        assertThat(off(check(order, placed(block(), ONE, 0, 970_001)))).isEqualTo(FAR);
        MarkerOrder folded = order(folded(), bundle(ONE, pair(block(), 1)));
        assertThat(off(check(folded, placed(block(), ONE, 0, -1)))).isEqualTo(FOLD);
        assertThat(off(check(folded, placed(block(), ONE, 0, 470_001)))).isEqualTo(FAR);
    }

    @Test
    void theStatedLengthHoldsEveryPiece() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        Violation.LengthWrong wrong = only(Violation.LengthWrong.class, check(order, placed(block(), ONE, 900_200, 0)));
        assertThat(wrong.sentence())
                .isEqualTo(
                        "The marker is said to be 1000 mm long, but block S of garment 1 ends 0.2 mm after" + " that.");
    }

    @Test
    void aFlawMayBeTouchedAndNotCovered() {
        Fabric flawed = withFlaw(cloth(), new Box(100_000, 0, 110_000, 10_000));
        MarkerOrder order = order(flawed, bundle(ONE, alike(block(), 1)));
        assertThat(check(order, placed(block(), ONE, 0, 0))).isEmpty();
        Violation.OverFlaw over = only(Violation.OverFlaw.class, check(order, placed(block(), ONE, 200, 0)));
        assertThat(over.squareMillimetres()).isCloseTo(2, within(1e-9));
        assertThat(over.sentence()).contains("the flaw from x 100 to 110 mm, y 0 to 10 mm: 2 mm² of it, 0.2 mm");
    }

    @Test
    void twoTenthsOfADegreeAreOffGrain() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        PlacedPiece tilted = read(sleeve(), "", rotated(SLEEVE, 0.2).moved(new Point(1000, 1000)));
        Violation.OffGrain off = only(Violation.OffGrain.class, check(order, tilted));
        assertThat(off.degrees()).isCloseTo(0.2, within(0.002));
    }

    @Test
    void aBendBelongsToTheShapeAndATiltToTheGrain() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        Outline moved = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_200));
        Violation.WrongShape shape = only(Violation.WrongShape.class, check(order, read(sleeve(), "", moved)));
        assertThat(shape.by()).isCloseTo(0.2, within(0.05));
        Outline both = rotated(moved, 5).moved(new Point(20_000, 20_000));
        List<Violation> violations = check(order, read(sleeve(), "", both));
        assertThat(violations).hasSize(2);
        assertThat(((Violation.OffGrain) violations.get(0)).degrees()).isCloseTo(5, within(0.2));
        assertThat(violations.get(1)).isInstanceOf(Violation.WrongShape.class);
    }

    @Test
    void oneMicrometreIsAnotherShape() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        Outline moved = Outline.of(Ring.of(0, 0, 100_000, 0, 70_000, 40_000, 20_000, 60_001));
        assertThat(only(Violation.WrongShape.class, check(order, read(sleeve(), "", moved)))
                        .by())
                .isCloseTo(0.001, within(1e-6));
    }

    @Test
    void aCutOutBelongsToTheShape() {
        Outline ring = new Outline(
                Ring.of(0, 0, 90_000, 0, 90_000, 50_000, 0, 50_000),
                List.of(Ring.of(20_000, 20_000, 20_000, 40_000, 60_000, 20_000)));
        Piece facing = piece("facing", ring);
        MarkerOrder order = order(cloth(), bundle(ONE, alike(facing, 1)));
        assertThat(check(order, placed(facing, ONE, FLIPPED, 0, 50_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongHand.class);
        assertThat(check(order, read(facing, "", Outline.of(ring.shell()))))
                .singleElement()
                .isInstanceOf(Violation.WrongShape.class);
    }

    @Test
    void aQuarterTurnIsForStrips() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(block(), 1)));
        Violation.OffGrain off = only(
                Violation.OffGrain.class, check(order, placed(block(), ONE, turned(QuarterTurn.QUARTER), 30_000, 0)));
        assertThat(off.degrees()).isEqualTo(90);
        Piece tie = strip();
        MarkerOrder ties = order(cloth(), bundle(ONE, alike(tie, 1)));
        assertThat(check(ties, placed(tie, ONE, turned(QuarterTurn.QUARTER), 30_000, 0)))
                .isEmpty();
    }

    @Test
    void upIsUpOnOneWayFabric() {
        MarkerOrder either = order(cloth(), bundle(ONE, alike(sleeve(), 1)));
        MarkerOrder oneWay = order(cloth(Direction.ONE_WAY), bundle(ONE, alike(sleeve(), 1)));
        Placement upsideDown = placed(sleeve(), ONE, TURNED, 100_000, 60_000);
        assertThat(check(either, upsideDown)).isEmpty();
        Violation.WrongWayUp wrong = only(Violation.WrongWayUp.class, check(oneWay, upsideDown));
        assertThat(wrong.degrees()).isEqualTo(180);
        Piece drawnUpsideDown = withUp(sleeve(), Optional.of(QuarterTurn.HALF));
        MarkerOrder sameCloth = order(cloth(Direction.ONE_WAY), bundle(ONE, alike(drawnUpsideDown, 1)));
        assertThat(check(sameCloth, placed(drawnUpsideDown, ONE, TURNED, 100_000, 60_000)))
                .isEmpty();
    }

    @Test
    void aFlipLeavesUpWhereItIs() {
        MarkerOrder order = order(cloth(Direction.ONE_WAY), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, FLIPPED, 0, 160_000)))
                .isEmpty();
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), ONE, new Orientation(true, QuarterTurn.HALF), 100_000, 100_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongWayUp.class);
    }

    @Test
    void aStripThatIgnoresThePrintMayLieAcrossOneWayFabric() {
        Piece tie = withUp(strip(), Optional.empty());
        MarkerOrder order = order(cloth(Direction.ONE_WAY), bundle(ONE, alike(tie, 1)));
        assertThat(check(order, placed(tie, ONE, turned(QuarterTurn.QUARTER), 30_000, 0)))
                .isEmpty();
        Piece follows = withUp(wedge(Turning.ANY_QUARTER), Optional.of(QuarterTurn.NONE));
        MarkerOrder followed = order(cloth(Direction.ONE_WAY), bundle(ONE, alike(follows, 1)));
        assertThat(only(
                                Violation.WrongWayUp.class,
                                check(followed, placed(follows, ONE, turned(QuarterTurn.QUARTER), 60_000, 0)))
                        .degrees())
                .isEqualTo(90);
    }

    @Test
    void piecesOfOneGarmentAgreeWhereGarmentsMayTurn() {
        Fabric fabric = cloth(Direction.ONE_WAY_PER_GARMENT);
        MarkerOrder order = order(fabric, bundle(ONE, alike(sleeve(), 3)), bundle(TWO, alike(sleeve(), 1)));
        Placement[] legal = {
            placed(sleeve(), ONE, 0, 0),
            placed(sleeve(), ONE, 0, 60_000),
            placed(sleeve(), ONE, 0, 120_000),
            placed(sleeve(), TWO, TURNED, 300_000, 60_000)
        };
        assertThat(check(order, legal)).isEmpty();
        legal[1] = placed(sleeve(), ONE, TURNED, 100_000, 240_000);
        Violation.WrongWayInGarment wrong = only(Violation.WrongWayInGarment.class, check(order, legal));
        assertThat(wrong.piece().outline()).isEqualTo(legal[1].outline());
    }

    @Test
    void aPieceThatLooksTheSameUpsideDownAgreesEitherWay() {
        MarkerOrder order =
                order(cloth(Direction.ONE_WAY_PER_GARMENT), bundle(ONE, alike(sleeve(), 1), alike(block(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(block(), ONE, TURNED, 100_000, 130_000)))
                .isEmpty();
    }

    /** Found by a random order: a strip shared by two garments does not bind them. */
    @Test
    void aSharedStripThatIgnoresThePrintBindsNobody() {
        Piece tie = withUp(block(), Optional.empty());
        Fabric fabric = withDirection(folded(), Direction.ONE_WAY_PER_GARMENT);
        MarkerOrder order = order(
                fabric, bundle(ONE, pair(sleeve(), 1), alike(tie, 1)), bundle(TWO, pair(sleeve(), 1), alike(tie, 1)));
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), TWO, TURNED, 300_000, 60_000),
                        placed(item(tie, Hand.NONE, ONE, TWO), Orientation.AS_DRAWN, 0, 60_000)))
                .isEmpty();
    }

    @Test
    void aPairIsOneAsDrawnAndOneMirrored() {
        MarkerOrder order = order(cloth(), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, FLIPPED, 0, 160_000)))
                .isEmpty();
        Violation.WrongHand wrong = only(
                Violation.WrongHand.class, check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, 0, 60_000)));
        assertThat(wrong.sentence())
                .isEqualTo("sleeve S of garment 1 lies as drawn, but of this garment's 1 have to lie as drawn and 1"
                        + " mirrored.");
    }

    @Test
    void theLetterIsTheHandThatLiesThere() {
        MarkerOrder order = order(cloth(), bundle(ONE, new CutPiece(sleeve(), new Cut(1, Manner.PAIR), Hand.LEFT)));
        Placement left = placed(item(sleeve(), Hand.LEFT, ONE), new Orientation(false, QuarterTurn.NONE), 0, 0);
        Placement right = placed(item(sleeve(), Hand.RIGHT, ONE), FLIPPED, 0, 160_000);
        assertThat(check(order, left, right)).isEmpty();
        Placement letteredLeft = placed(item(sleeve(), Hand.LEFT, ONE), FLIPPED, 0, 160_000);
        assertThat(only(Violation.WrongHand.class, check(order, left, letteredLeft))
                        .sentence())
                .isEqualTo("sleeve S, L, of garment 1 is marked L, but what lies there is R.");
        assertThat(check(order, left))
                .singleElement()
                .extracting(Violation::sentence)
                .isEqualTo("Garment 1 lacks 1 × sleeve S, mirrored (R).");
    }

    @Test
    void piecesThatAreAlikeAreNotMirroredUnlessTheyAreSymmetric() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 2)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, FLIPPED, 0, 160_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongHand.class);
        MarkerOrder blocks = order(cloth(), bundle(ONE, alike(block(), 2)));
        assertThat(check(blocks, placed(block(), ONE, 0, 0), placed(block(), ONE, FLIPPED, 0, 60_000)))
                .isEmpty();
    }

    @Test
    void aPieceDrawnSymmetricToATwentiethOfAMillimetreIsSymmetric() {
        Piece tongue = piece("tongue", Outline.of(Ring.of(0, 0, 80_000, 10_000, 80_030, 40_000, 0, 50_000)));
        MarkerOrder order = order(cloth(), bundle(ONE, alike(tongue, 2)));
        assertThat(check(order, placed(tongue, ONE, 0, 0), placed(tongue, ONE, FLIPPED, 0, 100_000)))
                .isEmpty();
    }

    @Test
    void nothingIsMissingAndNothingBesides() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 1)), bundle(TWO, alike(sleeve(), 1)));
        assertThat(only(Violation.Missing.class, check(order, placed(sleeve(), ONE, 0, 0)))
                        .sentence())
                .isEqualTo("Garment 2 lacks 1 × sleeve S.");
        Violation.Surplus surplus = only(
                Violation.Surplus.class,
                check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), TWO, 0, 60_000),
                        placed(sleeve(), TWO, 0, 120_000)));
        assertThat(surplus.sentence()).isEqualTo("There is one more of sleeve S of garment 2 than ordered.");
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), TWO, 0, 60_000),
                        placed(block(), ONE, 0, 120_000)))
                .singleElement()
                .isInstanceOf(Violation.NotOrdered.class);
    }

    @Test
    void aHalfPieceIsOpenedOnASingleLayer() {
        Piece back = halfBack();
        MarkerOrder order = order(cloth(), bundle(ONE, new CutPiece(back, new Cut(1, Manner.ON_FOLD), Hand.NONE)));
        // Fold edge from (0, 0) to (80, 0): the whole is the half and its image in y = 0.
        Outline whole = Outline.of(Ring.of(0, 30_000, 80_000, 0, 80_000, 100_000, 0, 70_000));
        assertThat(check(order, read(back, "", whole))).isEmpty();
        assertThat(check(order, placed(back, ONE, 0, 0))).singleElement().isInstanceOf(Violation.WrongShape.class);
    }

    @Test
    void theFoldEdgeLiesOnTheFold() {
        Piece back = halfBack();
        MarkerOrder order = order(folded(), bundle(ONE, new CutPiece(back, new Cut(1, Manner.ON_FOLD), Hand.NONE)));
        assertThat(check(order, placed(back, ONE, 0, 0))).isEmpty();
        assertThat(check(order, placed(back, ONE, new Orientation(true, QuarterTurn.HALF), 80_000, 0)))
                .isEmpty();
        Violation.OffFold off = only(Violation.OffFold.class, check(order, placed(back, ONE, 0, 200)));
        assertThat(off.sentence())
                .isEqualTo("The fold edge of back S of garment 1 is 0.2 mm off the fold, which is 0.4 mm on the"
                        + " opened piece.");
        assertThat(only(Violation.OffFold.class, check(order, placed(back, ONE, 0, 1)))
                        .by())
                .isEqualTo(0.001);
        assertThat(check(order, placed(back, ONE, FLIPPED, 0, 50_000)))
                .singleElement()
                .isInstanceOf(Violation.OffFold.class);
    }

    @Test
    void twoLayersGiveAPairInOneGo() {
        MarkerOrder order = order(folded(), bundle(ONE, pair(sleeve(), 2)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0), placed(sleeve(), ONE, FLIPPED, 0, 160_000)))
                .isEmpty();
        assertThat(only(Violation.Missing.class, check(order, placed(sleeve(), ONE, 0, 0)))
                        .count())
                .isEqualTo(2);
        assertThat(check(
                        order,
                        placed(sleeve(), ONE, 0, 0),
                        placed(sleeve(), ONE, 0, 60_000),
                        placed(sleeve(), ONE, 0, 120_000)))
                .singleElement()
                .isInstanceOf(Violation.Surplus.class);
    }

    @Test
    void twoLayersServeTwoGarmentsWithASymmetricPiece() {
        MarkerOrder order = order(folded(), bundle(ONE, alike(block(), 1)), bundle(TWO, alike(block(), 1)));
        Item both = item(block(), Hand.NONE, ONE, TWO);
        assertThat(check(order, placed(both, Orientation.AS_DRAWN, 0, 0))).isEmpty();
        assertThat(check(order, placed(block(), ONE, 0, 0))).singleElement().isInstanceOf(Violation.Missing.class);
    }

    @Test
    void anOddPieceIsLeftOverOnTwoLayers() {
        MarkerOrder order = order(folded(), bundle(ONE, alike(block(), 3)));
        assertThat(check(order, placed(block(), ONE, 0, 0), placed(block(), ONE, 0, 30_000)))
                .isEmpty();
        assertThat(check(
                        order,
                        placed(block(), ONE, 0, 0),
                        placed(block(), ONE, 0, 30_000),
                        placed(block(), ONE, 0, 60_000)))
                .singleElement()
                .isInstanceOf(Violation.Surplus.class);
    }

    @Test
    void twoLayersCannotGiveAsymmetricPiecesAlike() {
        MarkerOrder order = order(folded(), bundle(ONE, alike(sleeve(), 2)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 0)))
                .isNotEmpty()
                .allMatch(violation -> violation instanceof Violation.WrongHand);
    }

    @Test
    void aPieceSymmetricAcrossItsGrainIsNoPairOfItselfInAPrint() {
        // Its mirror image about the grain is itself upside down.
        Piece tongue = piece("tongue", Outline.of(Ring.of(0, 0, 60_000, 0, 40_000, 50_000, 20_000, 50_000)));
        MarkerOrder either = order(folded(), bundle(ONE, alike(tongue, 2)));
        assertThat(check(either, placed(tongue, ONE, 0, 0))).isEmpty();
        MarkerOrder oneWay = order(withDirection(folded(), Direction.ONE_WAY), bundle(ONE, alike(tongue, 2)));
        assertThat(check(oneWay, placed(tongue, ONE, 0, 0)))
                .isNotEmpty()
                .allMatch(violation -> violation instanceof Violation.WrongHand);
    }

    @Test
    void aMatchPointLiesOnThePrint() {
        Piece cup = withMatchPoint(sleeve(), new Point(50_000, 20_000), Length.ofMillimetres(1));
        Fabric print = withRepeat(cloth(), new Repeat(mm(320), mm(160), false, mm(10), mm(20)));
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)));
        // Lattice points: (10 + 320 i, 20 + 160 j) mm.
        assertThat(check(order, placed(cup, ONE, 280_000, 160_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 281_000, 159_000))).isEmpty();
        Violation.OffMatchPoint off =
                only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 281_200, 160_000)));
        assertThat(off.lengthwise()).isEqualTo(1.2);
        assertThat(off.crosswise()).isZero();
        assertThat(off.tolerance()).isEqualTo(mm(1));
    }

    @Test
    void aHalfDropMovesEveryNextColumn() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        Fabric print = withRepeat(cloth(), new Repeat(mm(320), mm(160), true, mm(0), mm(0)));
        MarkerOrder order = order(print, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 160_000, 160_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 480_000, 480_000))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 320_000, 320_000))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 320_000, 160_000)))
                        .lengthwise())
                .isEqualTo(160);
    }

    @Test
    void aStripedClothMatchesAlongOneAxisOnly() {
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        Fabric stripes = withRepeat(cloth(), new Repeat(mm(50), mm(0), false, mm(0), mm(0)));
        MarkerOrder order = order(stripes, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 150_000, 123_456))).isEmpty();
        assertThat(only(Violation.OffMatchPoint.class, check(order, placed(cup, ONE, 150_001, 123_456)))
                        .lengthwise())
                .isEqualTo(0.001);
    }

    @Test
    void aWashedRepeatIsSmaller() {
        // By hand: 32 cm at 3 % lengthwise is 31.04 cm on the table.
        Piece cup = withMatchPoint(sleeve(), Point.ORIGIN, Length.ZERO);
        Fabric print = withRepeat(cloth(), new Repeat(mm(320), mm(0), false, mm(0), mm(0)));
        Fabric washed = withShrinkage(print, new Shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH));
        MarkerOrder order = order(washed, bundle(ONE, alike(cup, 1)));
        assertThat(check(order, placed(cup, ONE, 620_800, 0))).isEmpty();
        assertThat(check(order, placed(cup, ONE, 640_000, 0)))
                .singleElement()
                .isInstanceOf(Violation.OffMatchPoint.class);
    }

    @Test
    void aFileFromOutsideIsJudgedToTwoHundredths() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 2)));
        Random noise = new Random(7);
        List<PlacedPiece> pieces = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Outline rough = SLEEVE.moved(new Point(5, 60_000L * i))
                    .mapped(p -> new Point(p.x() + noise.nextInt(-8, 9), p.y() + noise.nextInt(-8, 9)));
            pieces.add(read(sleeve(), "", rough));
        }
        assertThat(MarkerCheck.violations(order, pieces, METRE, MarkerCheck.OUTSIDE_TOLERANCE))
                .isEmpty();
        assertThat(MarkerCheck.violations(order, pieces, METRE, Length.ZERO)).isNotEmpty();
        PlacedPiece shifted = read(sleeve(), "", pieces.get(1).outline().moved(new Point(0, -200)));
        assertThat(only(
                                Violation.Overlap.class,
                                MarkerCheck.violations(
                                        order, List.of(pieces.get(0), shifted), METRE, MarkerCheck.OUTSIDE_TOLERANCE))
                        .thickness())
                .isBetween(0.05, 0.2);
    }

    @Test
    void whatIsWrongDoesNotDependOnWhereItLiesOrInWhichOrder() {
        MarkerOrder order = order(cloth(), bundle(ONE, alike(sleeve(), 2), pair(block(), 1)));
        List<Placement> wrong = List.of(
                placed(sleeve(), ONE, 0, 0),
                placed(sleeve(), ONE, 500, 59_000),
                placed(block(), ONE, 90_000, 20_000),
                placed(block(), ONE, turned(QuarterTurn.QUARTER), 300_000, 0));
        List<String> found = kinds(check(order, wrong.toArray(Placement[]::new)));
        assertThat(found).contains("Overlap", "OffGrain");
        Random shuffle = new Random(11);
        for (int i = 0; i < 20; i++) {
            Point by = new Point(shuffle.nextInt(400_000), shuffle.nextInt(500_000));
            List<Placement> moved = new ArrayList<>(wrong.stream()
                    .map(p -> new Placement(
                            p.item(),
                            new Pose(p.pose().orientation(), p.pose().offset().plus(by))))
                    .toList());
            Collections.shuffle(moved, shuffle);
            assertThat(kinds(check(order, moved.toArray(Placement[]::new)))).isEqualTo(found);
        }
    }

    private static List<String> kinds(List<Violation> violations) {
        return violations.stream()
                .map(violation -> violation.getClass().getSimpleName())
                .sorted()
                .toList();
    }

    private static Violation.OffFabric.Edge off(List<Violation> violations) {
        return only(Violation.OffFabric.class, violations).edge();
    }

    private static <T extends Violation> T only(Class<T> kind, List<Violation> violations) {
        assertThat(violations).singleElement().isInstanceOf(kind);
        return kind.cast(violations.get(0));
    }

    private static List<Violation> check(MarkerOrder order, Placement... placements) {
        return MarkerCheck.violations(marker(order, placements));
    }

    private static List<Violation> check(MarkerOrder order, PlacedPiece piece) {
        return MarkerCheck.violations(order, List.of(piece), METRE, Length.ZERO);
    }

    private static Marker marker(MarkerOrder order, Placement... placements) {
        return new Marker(order, List.of(placements), METRE);
    }

    private static MarkerOrder order(Fabric fabric, Bundle... bundles) {
        return new MarkerOrder(fabric, Length.ZERO, List.of(bundles));
    }

    private static Bundle bundle(Garment garment, CutPiece... pieces) {
        return new Bundle(garment, List.of(pieces));
    }

    private static CutPiece alike(Piece piece, int count) {
        return new CutPiece(piece, new Cut(count, Manner.ALIKE), Hand.NONE);
    }

    private static CutPiece pair(Piece piece, int count) {
        return new CutPiece(piece, new Cut(count, Manner.PAIR), Hand.NONE);
    }

    private static Item item(Piece piece, Hand hand, Garment... garments) {
        return new Item(piece, List.of(garments), hand, false);
    }

    private static Placement placed(Piece piece, Garment garment, long x, long y) {
        return placed(piece, garment, Orientation.AS_DRAWN, x, y);
    }

    private static Placement placed(Piece piece, Garment garment, Orientation orientation, long x, long y) {
        return placed(item(piece, Hand.NONE, garment), orientation, x, y);
    }

    private static Placement placed(Item item, Orientation orientation, long x, long y) {
        return new Placement(item, new Pose(orientation, new Point(x, y)));
    }

    private static PlacedPiece read(Piece piece, String hand, Outline outline) {
        return new PlacedPiece(piece.name(), piece.size().name(), List.of(1), hand, outline);
    }

    private static Orientation turned(QuarterTurn turn) {
        return new Orientation(false, turn);
    }

    private static Outline rotated(Outline outline, double degrees) {
        double cosine = Math.cos(Math.toRadians(degrees));
        double sine = Math.sin(Math.toRadians(degrees));
        return outline.mapped(
                p -> new Point(Math.round(cosine * p.x() - sine * p.y()), Math.round(sine * p.x() + cosine * p.y())));
    }

    private static Piece sleeve() {
        return piece("sleeve", SLEEVE);
    }

    private static Piece block() {
        return piece("block", BLOCK);
    }

    private static Piece strip() {
        return with(piece("tie", BLOCK), Turning.ANY_QUARTER);
    }

    private static Piece wedge(Turning turning) {
        return with(piece("wedge", SLEEVE), turning);
    }

    /** Fold edge along y = 0, body on its far side. */
    private static Piece halfBack() {
        Piece half = piece("back", Outline.of(Ring.of(0, 0, 80_000, 0, 80_000, 50_000, 0, 20_000)));
        return new Piece(
                half.name(),
                half.size(),
                half.outline(),
                half.up(),
                half.turning(),
                Optional.of(new Segment(Point.ORIGIN, new Point(80_000, 0))),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    private static Piece piece(String name, Outline outline) {
        return new Piece(
                name,
                S,
                outline,
                Optional.of(QuarterTurn.NONE),
                Turning.ALONG_GRAIN,
                Optional.empty(),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    private static Piece with(Piece piece, Turning turning) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                piece.up(),
                turning,
                Optional.empty(),
                Optional.empty(),
                true,
                PieceMarks.NONE);
    }

    private static Piece withUp(Piece piece, Optional<QuarterTurn> up) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                up,
                piece.turning(),
                Optional.empty(),
                Optional.empty(),
                piece.strip(),
                PieceMarks.NONE);
    }

    private static Piece withMatchPoint(Piece piece, Point at, Length tolerance) {
        return new Piece(
                piece.name(),
                S,
                piece.outline(),
                piece.up(),
                piece.turning(),
                Optional.empty(),
                Optional.of(new MatchPoint(at, tolerance)),
                false,
                PieceMarks.NONE);
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }

    /** One metre wide, nothing lost. */
    private static Fabric cloth() {
        return new Fabric(
                "sand-plain",
                "shell",
                METRE,
                Fabric.UnusableEdge.eachSide(Length.ZERO),
                Direction.EITHER_WAY,
                Optional.empty(),
                Optional.empty(),
                Shrinkage.NONE,
                new Spread(Spread.Form.SINGLE_LAYER, Length.ZERO),
                Optional.empty(),
                mm(100),
                List.of());
    }

    private static Fabric cloth(Direction direction) {
        return withDirection(cloth(), direction);
    }

    private static Fabric folded() {
        return changed(
                cloth(),
                Direction.EITHER_WAY,
                Optional.empty(),
                Shrinkage.NONE,
                Spread.Form.FOLD_LENGTHWISE,
                List.of());
    }

    private static Fabric withDirection(Fabric fabric, Direction direction) {
        return changed(
                fabric,
                direction,
                fabric.repeat(),
                fabric.shrinkage(),
                fabric.spread().form(),
                fabric.flaws());
    }

    private static Fabric withRepeat(Fabric fabric, Repeat repeat) {
        return changed(
                fabric,
                fabric.direction(),
                Optional.of(repeat),
                fabric.shrinkage(),
                fabric.spread().form(),
                fabric.flaws());
    }

    private static Fabric withShrinkage(Fabric fabric, Shrinkage shrinkage) {
        return changed(
                fabric,
                fabric.direction(),
                fabric.repeat(),
                shrinkage,
                fabric.spread().form(),
                fabric.flaws());
    }

    private static Fabric withFlaw(Fabric fabric, Box flaw) {
        return changed(
                fabric,
                fabric.direction(),
                fabric.repeat(),
                fabric.shrinkage(),
                fabric.spread().form(),
                List.of(flaw));
    }

    private static Fabric changed(
            Fabric fabric,
            Direction direction,
            Optional<Repeat> repeat,
            Shrinkage shrinkage,
            Spread.Form form,
            List<Box> flaws) {
        return new Fabric(
                fabric.name(),
                fabric.role(),
                fabric.width(),
                fabric.unusableEdge(),
                direction,
                fabric.mostStretch(),
                repeat,
                shrinkage,
                new Spread(form, Length.ZERO),
                fabric.price(),
                fabric.soldBy(),
                flaws);
    }
}
