package lengthwise.check;

import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.folded;
import static lengthwise.check.Laying.halfBack;
import static lengthwise.check.Laying.mm;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static lengthwise.testing.TestPieces.hole;
import static lengthwise.testing.TestPieces.holed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Hand;
import lengthwise.model.Lying;
import lengthwise.model.Lying.MotifTie;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Motif;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Unfolding;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** On a print of 300 by 200 mm in half-drop, from 0, 0. */
class MindedMotifsTest {
    private static final TestFabric PRINT = cloth().repeat(new Repeat(mm(300), mm(200), true, mm(0), mm(0)));

    /** Round, of 40 mm, its middle at 100, 50. */
    private static final Motif ROSE = new Motif("rose", new Box(80_000, 30_000, 120_000, 70_000), true);

    /** 100 mm long, its base from 0, 0 to 100, 0, with a hole at 50, 20. */
    private static final Piece SLEEVE = holed(sleeve(), 50, 20);

    /** The hole comes to 100, 30, where the circle begins; in the next column, half a repeat on, to 250, 230. */
    @Test
    void aMarkKeepsOff() {
        MarkerOrder order = sleeves(new MotifTie(ROSE, false, Optional.of(hole(1))));
        assertThat(check(order, placed(SLEEVE, ONE, 50_000, 10_000))).isEmpty();
        assertThat(check(order, placed(SLEEVE, ONE, 200_000, 210_000))).isEmpty();
        // off the middle of the rose by 20 mm: across and along 14.143 each
        assertThat(check(order, placed(SLEEVE, ONE, 50_000 + 14_143, 30_000 - 14_143)))
                .isEmpty();
        for (long[] at : new long[][] {{50_000, 10_200}, {200_000, 210_200}, {50_000, 410_200}}) {
            Violation.OverMotif over = only(Violation.OverMotif.class, check(order, placed(SLEEVE, ONE, at[0], at[1])));
            assertThat(over.by()).isCloseTo(0.2, within(1e-9));
            assertThat(over.sentence())
                    .isEqualTo("The drill hole 1 of sleeve S of garment 1 lies 0.2 mm inside the motif rose,"
                            + " which it keeps off.");
        }
        assertThat(check(order, placed(SLEEVE, ONE, 50_000, 210_200))).isEmpty();
    }

    /** The sleeve's base from 0 to 100 comes to y = 70, where the circle ends. */
    @Test
    void aPieceKeepsOff() {
        MarkerOrder order = sleeves(new MotifTie(ROSE, false, Optional.empty()));
        assertThat(check(order, placed(SLEEVE, ONE, 50_000, 70_000))).isEmpty();
        Violation.OverMotif over = only(Violation.OverMotif.class, check(order, placed(SLEEVE, ONE, 50_000, 69_800)));
        assertThat(over.sentence())
                .startsWith("sleeve S of garment 1 lies over the motif rose, which it keeps off: 0.");
        assertThat(over.by()).isGreaterThan(0.15).isLessThanOrEqualTo(0.2);
        // all of a motif within the piece
        Motif dot = new Motif("dot", new Box(0, 0, 2_000, 2_000), true);
        MarkerOrder dots = sleeves(new MotifTie(dot, false, Optional.empty()));
        only(Violation.OverMotif.class, check(dots, placed(SLEEVE, ONE, 260_000, 385_000)));
    }

    @Test
    void aMarkLiesOnAMotif() {
        MarkerOrder order = sleeves(new MotifTie(ROSE, true, Optional.of(hole(1))));
        assertThat(check(order, placed(SLEEVE, ONE, 50_000, 10_000))).isEmpty();
        assertThat(check(order, placed(SLEEVE, ONE, 350_000, 50_000))).isEmpty();
        assertThat(check(order, placed(SLEEVE, ONE, 200_000, 250_000))).isEmpty();
        Violation.BesideMotif beside =
                only(Violation.BesideMotif.class, check(order, placed(SLEEVE, ONE, 50_000, 9_800)));
        assertThat(beside.by()).isCloseTo(0.2, within(1e-9));
        assertThat(beside.sentence())
                .isEqualTo("The drill hole 1 of sleeve S of garment 1 lies 0.2 mm beside the motif rose,"
                        + " on which it has to lie.");
        only(Violation.BesideMotif.class, check(order, placed(SLEEVE, ONE, 50_000, 210_000)));
    }

    /** A half with a hole 10 mm from its fold, opened: the mirror image of the hole comes to the edge of the rose. */
    @Test
    void theOtherMarkOfAnOpenedHalfCounts() {
        Piece half = holed(halfBack(), 20, 10);
        MarkerOrder order = lying(
                order(PRINT, bundle(ONE, new CutPiece(half, new Cut(1, Cut.Manner.ON_FOLD), Hand.NONE))),
                half,
                new MotifTie(ROSE, false, Optional.of(hole(1))));
        Piece whole = Unfolding.whole(half);
        assertThat(check(order, placed(whole, ONE, 80_000, 80_000))).isEmpty();
        only(Violation.OverMotif.class, check(order, placed(whole, ONE, 80_000, 79_800)));
    }

    /** A point of the print at y = 10: roses from 40 to 80 and, in the lower layer, from 120 to 160 (200 − 80 to 200 − 40). */
    @Test
    void onFoldedClothTheLowerLayerCounts() {
        TestFabric print = folded().repeat(new Repeat(mm(300), mm(200), false, mm(0), mm(10)));
        MarkerOrder order = lying(
                order(print, bundle(ONE, pair(SLEEVE, 1))), SLEEVE, new MotifTie(ROSE, false, Optional.of(hole(1))));
        assertThat(check(order, placed(SLEEVE, ONE, 50_000, 100_000))).isEmpty();
        only(Violation.OverMotif.class, check(order, placed(SLEEVE, ONE, 50_000, 100_200)));
        MarkerOrder on = lying(
                order(print, bundle(ONE, pair(SLEEVE, 1))), SLEEVE, new MotifTie(ROSE, true, Optional.of(hole(1))));
        only(Violation.BesideMotif.class, check(on, placed(SLEEVE, ONE, 50_000, 120_000)));
    }

    private static MarkerOrder sleeves(MotifTie tie) {
        return lying(order(PRINT, bundle(ONE, alike(SLEEVE, 1))), SLEEVE, tie);
    }

    private static MarkerOrder lying(MarkerOrder order, Piece piece, MotifTie tie) {
        return order.withLying(Map.of(
                piece.name(), new Lying(false, Optional.empty(), Optional.empty(), Optional.empty(), List.of(tie))));
    }
}
