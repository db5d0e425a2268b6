package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TURNED;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.mate;
import static lengthwise.testing.TestPieces.otherHand;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.model.Axis;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Hand;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Repeat;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** By hand, on a print that comes again every 150 mm lengthwise and 80 mm crosswise. */
class MatchedPiecesTest {
    private static final Piece FRONT = holed(sleeve(), 50, 20);
    private static final Piece POCKET =
            matched(holed(piece("pocket", Laying.SLEEVE), 10, 5), 1, Optional.empty(), mate("sleeve", 1));

    private static TestFabric print() {
        return cloth().direction(Direction.ONE_WAY)
                .repeat(new Repeat(mm(150), mm(80), /* halfDrop= */ false, /* mirrored= */ true, mm(7), mm(20)));
    }

    /** The marks are at (50, 20) and (110, 305) less (10, 5): 60 = 150 − 90 along, 240 = 3 × 80 across. */
    @Test
    void twoMarksLieAWholeNumberOfRepeatsApart() {
        MarkerOrder order = order(print(), bundle(ONE, alike(FRONT, 1), alike(POCKET, 1)));
        Placement front = placed(FRONT, ONE, 0, 0);
        assertThat(check(order, front, placed(POCKET, ONE, 190_000, 255_000))).isEmpty();
        assertThat(check(order, front, placed(POCKET, ONE, 191_000, 254_000))).isEmpty();
        Violation.OffMatchedPiece off =
                only(Violation.OffMatchedPiece.class, check(order, front, placed(POCKET, ONE, 191_200, 255_000)));
        assertThat(off.lengthwise()).isEqualTo(1.2);
        assertThat(off.crosswise()).isZero();
        assertThat(off.sentence()).contains("pocket", "sleeve", "1.2 mm lengthwise", "1 mm is allowed");
        assertThat(only(Violation.OffMatchedPiece.class, check(order, front, placed(POCKET, ONE, 190_000, 253_800)))
                        .crosswise())
                .isEqualTo(1.2);
        // both moved alike: the print may begin anywhere
        assertThat(check(order, placed(FRONT, ONE, 33_333, 4_444), placed(POCKET, ONE, 223_333, 259_444)))
                .isEmpty();
    }

    @Test
    void aHalfDropMovesEveryNextColumn() {
        TestFabric drop = cloth().direction(Direction.ONE_WAY).repeat(new Repeat(mm(150), mm(80), true, mm(0), mm(0)));
        MarkerOrder order = order(drop, bundle(ONE, alike(FRONT, 1), alike(POCKET, 1)));
        Placement front = placed(FRONT, ONE, 0, 0);
        assertThat(check(order, front, placed(POCKET, ONE, 190_000, 175_000))).isEmpty();
        assertThat(check(order, front, placed(POCKET, ONE, 115_000, 255_000))).isEmpty();
        assertThat(only(Violation.OffMatchedPiece.class, check(order, front, placed(POCKET, ONE, 190_000, 255_000)))
                        .lengthwise())
                .isEqualTo(75);
    }

    @Test
    void matchedOneWayOnlyTheOtherIsFree() {
        Piece pocket = matched(
                holed(piece("pocket", Laying.SLEEVE), 10, 5), 0, Optional.of(Axis.LENGTHWISE), mate("sleeve", 1));
        MarkerOrder order = order(print(), bundle(ONE, alike(FRONT, 1), alike(pocket, 1)));
        Placement front = placed(FRONT, ONE, 0, 0);
        assertThat(check(order, front, placed(pocket, ONE, 190_000, 277_777))).isEmpty();
        assertThat(only(Violation.OffMatchedPiece.class, check(order, front, placed(pocket, ONE, 190_200, 277_777)))
                        .lengthwise())
                .isEqualTo(0.2);
    }

    @Test
    void onlyPiecesOfOneGarmentAreMatched() {
        MarkerOrder order = order(
                print(),
                bundle(ONE, alike(FRONT, 1), alike(POCKET, 1)),
                bundle(TWO, alike(FRONT, 1), alike(POCKET, 1)));
        assertThat(check(
                        order,
                        placed(FRONT, ONE, 0, 0),
                        placed(POCKET, ONE, 190_000, 255_000),
                        placed(FRONT, TWO, 11_000, 100_000),
                        placed(POCKET, TWO, 201_000, 355_000)))
                .isEmpty();
        assertThat(check(
                        order,
                        placed(FRONT, ONE, 0, 0),
                        placed(POCKET, TWO, 190_000, 255_000),
                        placed(FRONT, TWO, 11_000, 100_000),
                        placed(POCKET, ONE, 201_000, 355_000)))
                .hasSize(2);
    }

    /** Seen from the pieces, a print is another one where one of two lies turned. */
    @Test
    void matchedPiecesLieTheSameWay() {
        MarkerOrder order =
                order(print().direction(Direction.EITHER_WAY), bundle(ONE, alike(FRONT, 1), alike(POCKET, 1)));
        assertThat(check(
                        order,
                        placed(FRONT, ONE, TURNED, 300_000, 300_000),
                        placed(POCKET, ONE, TURNED, 410_000, 525_000)))
                .isEmpty();
        only(
                Violation.TurnedFromMatch.class,
                check(order, placed(FRONT, ONE, 0, 0), placed(POCKET, ONE, TURNED, 210_000, 265_000)));
    }

    /**
     * The right one has its mark 100 mm beyond the axis at 20 mm; the left one, over which the piece is turned, must have it
     * 100 mm before one: its mark is at y − 20, and 180 − 20 − 20 = 140 = 240 − 100.
     */
    @Test
    void leftAndRightAreMirroredAboutTheAxisOfThePrint() {
        Piece front = matched(FRONT, 0, Optional.empty(), otherHand());
        MarkerOrder order = order(print(), bundle(ONE, pair(front)));
        Placement right = placed(item(front, Hand.RIGHT, ONE), Orientation.AS_DRAWN, 0, 100_000);
        assertThat(check(order, right, placed(item(front, Hand.LEFT, ONE), FLIPPED, 300_000, 180_000)))
                .isEmpty();
        assertThat(only(
                                Violation.OffMatchedPiece.class,
                                check(order, right, placed(item(front, Hand.LEFT, ONE), FLIPPED, 300_000, 180_200)))
                        .crosswise())
                .isEqualTo(0.2);
        assertThat(only(
                                Violation.OffMatchedPiece.class,
                                check(order, right, placed(item(front, Hand.LEFT, ONE), FLIPPED, 300_200, 180_000)))
                        .lengthwise())
                .isEqualTo(0.2);
    }

    /** Cut in one go they are mirrored about the fold, which must lie on the axis of the print, or half a repeat from it. */
    @Test
    void throughTwoLayersTheFoldIsTheAxis() {
        Piece front = matched(FRONT, 0, Optional.empty(), otherHand());
        for (double axis : new double[] {0, 40, -80}) {
            assertThat(check(onFold(front, axis), placed(front, ONE, 0, 100_000)))
                    .isEmpty();
        }
        assertThat(only(Violation.OffMatchedPiece.class, check(onFold(front, 40.1), placed(front, ONE, 0, 100_000)))
                        .crosswise())
                .isEqualTo(0.2);
    }

    private static MarkerOrder onFold(Piece front, double axis) {
        Repeat repeat = new Repeat(mm(150), mm(80), /* halfDrop= */ false, /* mirrored= */ true, mm(0), mm(axis));
        return order(folded().direction(Direction.ONE_WAY).repeat(repeat), bundle(ONE, pair(front)));
    }

    private static CutPiece pair(Piece piece) {
        return new CutPiece(piece, new Cut(1, Cut.Manner.PAIR), Hand.RIGHT);
    }
}
