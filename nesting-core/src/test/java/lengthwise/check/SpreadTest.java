package lengthwise.check;

import static lengthwise.check.Laying.FLIPPED;
import static lengthwise.check.Laying.ONE;
import static lengthwise.check.Laying.TURNED;
import static lengthwise.check.Laying.TWO;
import static lengthwise.check.Laying.alike;
import static lengthwise.check.Laying.block;
import static lengthwise.check.Laying.bundle;
import static lengthwise.check.Laying.check;
import static lengthwise.check.Laying.cloth;
import static lengthwise.check.Laying.halfBack;
import static lengthwise.check.Laying.item;
import static lengthwise.check.Laying.only;
import static lengthwise.check.Laying.order;
import static lengthwise.check.Laying.pair;
import static lengthwise.check.Laying.piece;
import static lengthwise.check.Laying.placed;
import static lengthwise.check.Laying.sleeve;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.geometry.Ring;
import lengthwise.model.Cut;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.model.Spread.Form;
import lengthwise.model.Spread.PlyRun;
import org.junit.jupiter.api.Test;

/** Each way of spreading kept, and broken by 0.2 mm, a hand or a turn. The cloth is one metre wide. */
class SpreadTest {
    /** Fold edge along x = 0, body ahead of it, one side bulging. */
    private static Piece halfBand() {
        Piece half = piece("band", Outline.of(Ring.of(0, 0, 80_000, 0, 60_000, 30_000, 0, 20_000)));
        return new Piece(
                half.name(),
                half.size(),
                half.outline(),
                half.up(),
                half.turning(),
                Optional.of(new Segment(Point.ORIGIN, new Point(0, 20_000))),
                Optional.empty(),
                false,
                PieceMarks.NONE);
    }

    private static CutPiece onFold(Piece half) {
        return new CutPiece(half, new Cut(1, Manner.ON_FOLD), Hand.NONE);
    }

    @Test
    void onACrosswiseFoldAHalfLiesAtTheStart() {
        MarkerOrder order = order(
                cloth().spread(Form.FOLD_CROSSWISE).direction(Direction.ONE_WAY), bundle(ONE, onFold(halfBand())));
        assertThat(check(order, placed(halfBand(), ONE, 0, 500_000))).isEmpty();
        assertThat(only(Violation.OffFold.class, check(order, placed(halfBand(), ONE, 200, 500_000)))
                        .by())
                .isEqualTo(0.2);
        assertThat(only(Violation.OffFabric.class, check(order, placed(halfBand(), ONE, 0, -200)))
                        .by())
                .isEqualTo(0.2);
    }

    /** Mirrored about the grain the opened band is not the ordered one, unless it may be turned round. */
    @Test
    void onACrosswiseFoldAHalfIsNotMirroredInAPrint() {
        Orientation flipped = FLIPPED;
        assertThat(check(
                        order(
                                cloth().spread(Form.FOLD_CROSSWISE).direction(Direction.ONE_WAY),
                                bundle(ONE, onFold(halfBand()))),
                        placed(halfBand(), ONE, flipped, 0, 500_000)))
                .singleElement()
                .isInstanceOf(Violation.WrongHand.class);
        assertThat(check(
                        order(cloth().spread(Form.FOLD_CROSSWISE), bundle(ONE, onFold(halfBand()))),
                        placed(halfBand(), ONE, flipped, 0, 500_000)))
                .isEmpty();
    }

    /** The half behind the fold is the other layer: what lies there is the same opened piece. */
    @Test
    void aHalfDrawnBehindItsFoldIsLaidAheadOfIt() {
        Piece behind = halfBand().mapped(point -> new Point(-point.x(), point.y()));
        Piece ordered = new Piece(
                behind.name(),
                behind.size(),
                behind.outline(),
                behind.up(),
                behind.turning(),
                behind.foldEdge(),
                Optional.empty(),
                false,
                PieceMarks.NONE);
        MarkerOrder order =
                order(cloth().spread(Form.FOLD_CROSSWISE).direction(Direction.ONE_WAY), bundle(ONE, onFold(ordered)));
        assertThat(check(order, placed(halfBand(), ONE, 0, 500_000))).isEmpty();
    }

    @Test
    void whatHasAnUpEndIsNotCutThroughACrosswiseFoldInAPrint() {
        MarkerOrder oneWay =
                order(cloth().spread(Form.FOLD_CROSSWISE).direction(Direction.ONE_WAY), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(oneWay, placed(sleeve(), ONE, 0, 0)))
                .singleElement()
                .isInstanceOf(Violation.UpsideDownBelow.class);
        MarkerOrder either = order(cloth().spread(Form.FOLD_CROSSWISE), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(either, placed(sleeve(), ONE, 0, 0))).isEmpty();
        MarkerOrder plies = order(
                cloth().plies(Form.PLIES_FACE_TO_FACE, 2, PlyRun.TO_AND_FRO).direction(Direction.ONE_WAY),
                bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(plies, placed(sleeve(), ONE, 0, 0)))
                .singleElement()
                .isInstanceOf(Violation.UpsideDownBelow.class);
    }

    /** The selvedges of one metre meet at 25 cm, 1 mm of each left alone. */
    @Test
    void nothingLiesAcrossTheSelvedges() {
        MarkerOrder order = order(cloth().spread(Form.SELVEDGES_TO_MIDDLE), bundle(ONE, pair(sleeve(), 1)));
        assertThat(check(order, placed(sleeve(), ONE, 0, 189_000))).isEmpty();
        assertThat(check(order, placed(sleeve(), ONE, 0, 251_000))).isEmpty();
        assertThat(only(Violation.OverJoin.class, check(order, placed(sleeve(), ONE, 0, 189_200)))
                        .by())
                .isEqualTo(0.2);
        assertThat(only(Violation.OverJoin.class, check(order, placed(sleeve(), ONE, 0, 250_800)))
                        .sentence())
                .isEqualTo("sleeve S of garment 1 reaches 0.2 mm into the join of the two selvedges.");
    }

    @Test
    void aHalfLiesOnEitherFoldOfATube() {
        MarkerOrder order = order(cloth().spread(Form.TUBE), bundle(ONE, onFold(halfBack())));
        Orientation over = new Orientation(true, QuarterTurn.NONE);
        assertThat(check(order, placed(halfBack(), ONE, 0, 0))).isEmpty();
        assertThat(check(order, placed(halfBack(), ONE, over, 0, 1_000_000))).isEmpty();
        assertThat(only(Violation.OffFold.class, check(order, placed(halfBack(), ONE, over, 0, 999_800)))
                        .by())
                .isEqualTo(0.2);
        assertThat(check(order, placed(halfBack(), ONE, over, 0, 1_000_200)))
                .satisfiesExactlyInAnyOrder(
                        off -> assertThat(off.sentence()).contains("0.2 mm over the far fold"),
                        off -> assertThat(off).isInstanceOf(Violation.OffFold.class));
    }

    @Test
    void pliesFaceUpAreCountedPlyByPly() {
        MarkerOrder order = order(
                cloth().plies(Form.PLIES_FACE_UP, 2, PlyRun.SAME_WAY),
                bundle(ONE, pair(sleeve(), 1)),
                bundle(TWO, pair(sleeve(), 1)));
        Item both = item(sleeve(), Hand.NONE, ONE, TWO);
        assertThat(check(order, placed(both, Orientation.AS_DRAWN, 0, 0), placed(both, FLIPPED, 0, 200_000)))
                .isEmpty();
        assertThat(check(order, placed(both, Orientation.AS_DRAWN, 0, 0), placed(both, TURNED, 100_000, 200_000)))
                .hasSize(2)
                .allSatisfy(wrong -> assertThat(wrong).isInstanceOf(Violation.WrongHand.class));
        assertThat(check(order, placed(both, Orientation.AS_DRAWN, 0, 0)))
                .hasSize(2)
                .allSatisfy(wrong -> assertThat(wrong).isInstanceOf(Violation.Missing.class));
    }

    @Test
    void fourPliesFaceToFaceGiveTwoPairs() {
        MarkerOrder order = order(
                cloth().plies(Form.PLIES_FACE_TO_FACE, 4, PlyRun.SAME_WAY),
                bundle(ONE, pair(sleeve(), 1)),
                bundle(TWO, pair(sleeve(), 1)));
        assertThat(check(order, placed(item(sleeve(), Hand.NONE, ONE, TWO), Orientation.AS_DRAWN, 0, 0)))
                .isEmpty();
        assertThat(check(order, placed(sleeve(), ONE, 0, 0))).singleElement().isInstanceOf(Violation.Missing.class);
        MarkerOrder alike =
                order(cloth().plies(Form.PLIES_FACE_TO_FACE, 4, PlyRun.SAME_WAY), bundle(ONE, alike(sleeve(), 2)));
        assertThat(check(alike, placed(sleeve(), ONE, 0, 0)))
                .isNotEmpty()
                .allSatisfy(wrong -> assertThat(wrong).isInstanceOf(Violation.WrongHand.class));
        MarkerOrder blocks =
                order(cloth().plies(Form.PLIES_FACE_TO_FACE, 4, PlyRun.SAME_WAY), bundle(ONE, alike(block(), 4)));
        assertThat(check(blocks, placed(block(), ONE, 0, 0))).isEmpty();
        assertThat(check(blocks, placed(block(), ONE, 0, 0), placed(block(), ONE, 200_000, 0)))
                .singleElement()
                .isInstanceOf(Violation.Surplus.class);
    }
}
