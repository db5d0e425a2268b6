package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Ring;
import lengthwise.model.Direction;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import org.junit.jupiter.api.Test;

class CountTest {
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
        MarkerOrder oneWay = order(folded().direction(Direction.ONE_WAY), bundle(ONE, alike(tongue, 2)));
        assertThat(check(oneWay, placed(tongue, ONE, 0, 0)))
                .isNotEmpty()
                .allMatch(violation -> violation instanceof Violation.WrongHand);
    }
}
