package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.halfBack;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.read;
import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Hand;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import org.junit.jupiter.api.Test;

class FoldEdgeTest {
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
}
