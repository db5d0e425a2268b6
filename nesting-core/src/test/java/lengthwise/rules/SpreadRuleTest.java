package lengthwise.rules;

import static lengthwise.rules.Rulings.refusal;
import static lengthwise.rules.Rulings.ruled;
import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.ring;
import static lengthwise.testing.TestPieces.strip;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Orientation;
import lengthwise.geometry.Outline;
import lengthwise.geometry.Point;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutOut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Hand;
import lengthwise.model.Item;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.PieceMarks;
import lengthwise.model.Segment;
import lengthwise.model.Size;
import lengthwise.model.Spread.Form;
import lengthwise.model.Spread.PlyRun;
import lengthwise.rules.PlacementDomain.Positions;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What each way of spreading makes of an order. ICTM is <i>Industrial Cutting of Textile Materials</i>. */
class SpreadRuleTest {
    private static final CutPiece PAIR = cut(triangle("cup", 90, 60), 1, Cut.Manner.PAIR);
    private static final CutPiece TIE = cut(halfTie(), 1, Cut.Manner.ON_FOLD);

    /**
     * Folding across turns one layer by 180°, a vector (0, 1) below is (0, −1) above: a pair is refused on one-way cloth,
     * but what lies on the fold is one piece of cloth. By geometry.
     */
    @Test
    void aCrosswiseFoldOnOneWayClothTakesATieOnTheFoldAndNoPair() {
        Fabric cloth = spread(Form.FOLD_CROSSWISE, Direction.ONE_WAY);
        Ruling.Task tie = ruled(order(cloth, 0, 1, TIE));
        assertThat(tie.items()).hasSize(1);
        PlacementDomain domain = tie.task().demands().get(0).domain();
        assertThat(domain.positions()).isEqualTo(new Positions.Window(0, 230_000));
        assertThat(domain.orientations()).containsExactly(Orientation.AS_DRAWN);
        assertThat(refusal(order(cloth, 0, 1, PAIR)))
                .contains("cup", "test-cloth", "folded crosswise", "upside down", "plies-face-to-face")
                .doesNotContain("\n");
        assertThat(ruled(order(spread(Form.FOLD_CROSSWISE, Direction.EITHER_WAY), 0, 1, PAIR))
                        .items())
                .hasSize(1);
    }

    /** A strip that ignores the print has no up end to be turned. */
    @Test
    void whatIgnoresThePrintIsCutThroughACrosswiseFold() {
        CutPiece band = cut(strip("band", 300, 40), 2, Cut.Manner.ALIKE);
        assertThat(ruled(order(spread(Form.FOLD_CROSSWISE, Direction.ONE_WAY), 0, 1, band))
                        .items())
                .hasSize(1);
    }

    /** The half behind the fold is the mirror image of the one ahead of it, and the opened piece is the same. */
    @Test
    void ofAHalfDrawnBehindItsFoldTheOtherHalfIsLaid() {
        Piece behind = withFold(
                new Piece(
                        "tie",
                        Size.ONE,
                        Outline.of(ring(-230, 0, 0, 0, 0, 40, -200, 30)),
                        Optional.of(QuarterTurn.NONE),
                        Piece.Turning.ALONG_GRAIN,
                        Optional.empty(),
                        Optional.empty(),
                        false,
                        PieceMarks.NONE),
                40);
        Ruling.Task task =
                ruled(order(spread(Form.FOLD_CROSSWISE, Direction.ONE_WAY), 0, 1, cut(behind, 1, Cut.Manner.ON_FOLD)));
        assertThat(task.task().demands().get(0).outline().box().minX()).isZero();
        assertThat(task.task().demands().get(0).outline().box().maxX()).isEqualTo(230_000);
        assertThat(task.task().demands().get(0).domain().orientations()).containsExactly(Orientation.AS_DRAWN);
    }

    /** A fold on both sides: a half may lie on either, with its body between them. */
    @ParameterizedTest
    @EnumSource(
            value = Form.class,
            names = {"SELVEDGES_TO_MIDDLE", "TUBE"})
    void aHalfLiesOnEitherOfTwoFolds(Form form) {
        CutPiece front = cut(onFold(triangle("front", 300, 200), 300), 1, Cut.Manner.ON_FOLD);
        Ruling.Task task = ruled(order(spread(form, Direction.EITHER_WAY), 0, 1, front));
        long width = form == Form.TUBE ? 1_500_000 : 750_000;
        assertThat(task.task().height()).isEqualTo(width);
        PlacementDomain domain = task.task().demands().get(0).domain();
        assertThat(domain.orientations()).hasSize(4);
        assertThat(domain.positions())
                .isEqualTo(new Positions.Either(
                        new Positions.Line(Point.ORIGIN, 0), new Positions.Line(Point.ORIGIN, width)));
    }

    /** 1.50 m of cloth folded at 37.5 cm from each selvedge, of which 2 cm are not used: by hand. */
    @Test
    void nothingLiesAcrossTheSelvedgesInTheMiddle() {
        Ruling.Task task = ruled(order(spread(Form.SELVEDGES_TO_MIDDLE, Direction.EITHER_WAY), 0, 1, PAIR));
        assertThat(task.items()).hasSize(1);
        assertThat(task.task().demands().get(0).domain().positions())
                .isEqualTo(new Positions.Either(
                        new Positions.Between(0, 355_000), new Positions.Between(395_000, 750_000)));
    }

    /** Face up, one direction: every ply gives the same hand (ICTM p. 34). */
    @Test
    void pliesFaceUpGiveEachContourOncePerPly() {
        Fabric cloth =
                TestFabric.plain().plies(Form.PLIES_FACE_UP, 3, PlyRun.SAME_WAY).fabric();
        MarkerOrder order = order(cloth, 0, 6, PAIR);
        Ruling.Task task = ruled(order);
        assertThat(task.items()).extracting(Item::hand).containsExactly(Hand.RIGHT, Hand.LEFT, Hand.RIGHT, Hand.LEFT);
        assertThat(task.items().get(0).garments()).extracting(g -> g.number()).containsExactly(1, 2, 3);
        assertThat(CutOut.of(task.items().get(1), order))
                .extracting(CutOut::hand)
                .containsExactly(Hand.LEFT, Hand.LEFT, Hand.LEFT);
        assertThat(task.surplus()).isEmpty();
    }

    /** Pieces of one garment are cut from one ply, so that they are of one shade: common practice, no source. */
    @Test
    void aGarmentIsCutFromOnePlyAndTheContoursAreThoseOfOne() {
        CutPiece body = cut(triangle("body", 90, 60), 1, Cut.Manner.ALIKE);
        CutPiece yokes = cut(triangle("yoke", 50, 30), 2, Cut.Manner.ALIKE);
        Ruling.Task one = ruled(order(TestFabric.plain().fabric(), 0, 2, body, yokes));
        Ruling.Task plies = ruled(order(threePlies(), 0, 6, body, yokes));
        assertThat(plies.items().stream().map(Item::piece).toList())
                .isEqualTo(one.items().stream().map(Item::piece).toList());
        assertThat(plies.items())
                .extracting(item -> item.garments().stream()
                        .map(garment -> garment.number())
                        .toList())
                .containsExactly(
                        List.of(1, 2, 3),
                        List.of(1, 2, 3),
                        List.of(1, 2, 3),
                        List.of(4, 5, 6),
                        List.of(4, 5, 6),
                        List.of(4, 5, 6));
    }

    /** Four garments of two yokes in three plies: of the eight, six are cut three at a time, and the last two together. By hand. */
    @Test
    void whatIsLeftOverIsCutTogetherWhicheverGarmentItIsFor() {
        CutPiece yokes = cut(triangle("yoke", 50, 30), 2, Cut.Manner.ALIKE);
        Ruling.Task task = ruled(order(threePlies(), 0, 4, yokes));
        assertThat(task.items()).hasSize(3);
        assertThat(task.items().get(2).garments())
                .extracting(garment -> garment.number())
                .containsExactly(4, 4);
        assertThat(task.surplus()).singleElement().asString().startsWith("One yoke more");
    }

    private static Fabric threePlies() {
        return TestFabric.plain().plies(Form.PLIES_FACE_UP, 3, PlyRun.SAME_WAY).fabric();
    }

    @Test
    void whatPliesGiveBesidesIsSaid() {
        Fabric cloth =
                TestFabric.plain().plies(Form.PLIES_FACE_UP, 3, PlyRun.SAME_WAY).fabric();
        Ruling.Task task = ruled(order(cloth, 0, 5, cut(triangle("flap", 90, 60), 1, Cut.Manner.ALIKE)));
        assertThat(task.items()).hasSize(2);
        assertThat(task.surplus())
                .containsExactly(
                        "One flap more than ordered: 5 are ordered and the lay of 3 plies gives them 3 at a time.");
    }

    /** Face to face: mirrored plies give one left and one right per two plies (ICTM pp. 272, 279; pairing by geometry). */
    @Test
    void pliesFaceToFaceGiveHalfAsManyPairs() {
        Fabric cloth = TestFabric.plain()
                .plies(Form.PLIES_FACE_TO_FACE, 4, PlyRun.SAME_WAY)
                .direction(Direction.ONE_WAY)
                .fabric();
        MarkerOrder order = order(cloth, 0, 4, PAIR);
        Ruling.Task task = ruled(order);
        assertThat(task.items()).hasSize(2);
        assertThat(CutOut.of(task.items().get(0), order))
                .extracting(CutOut::hand)
                .containsExactly(Hand.RIGHT, Hand.LEFT, Hand.RIGHT, Hand.LEFT);
        assertThat(ruled(order(cloth, 0, 3, PAIR)).surplus())
                .containsExactly(
                        "One pair of cup more than ordered: 3 are ordered and the lay of 4 plies gives them two at"
                                + " a time.");
    }

    /** Zig-zag turns nap and hand: never for one-way cloth (ICTM p. 51). */
    @Test
    void pliesToAndFroAreRefusedForOneWayCloth() {
        TestFabric cloth = TestFabric.plain().plies(Form.PLIES_FACE_TO_FACE, 2, PlyRun.TO_AND_FRO);
        assertThat(refusal(order(cloth.direction(Direction.ONE_WAY).fabric(), 0, 1, PAIR)))
                .contains("cup", "to and fro", "upside down", "plies-run: same-way");
        assertThat(refusal(order(cloth.direction(Direction.ONE_WAY_PER_GARMENT).fabric(), 0, 1, PAIR)))
                .contains("upside down");
        assertThat(ruled(order(cloth.direction(Direction.EITHER_WAY).fabric(), 0, 1, PAIR))
                        .items())
                .hasSize(1);
    }

    /** Two rights cannot be cut from layers face to face. */
    @ParameterizedTest
    @EnumSource(
            value = Form.class,
            mode = EnumSource.Mode.EXCLUDE,
            names = {"SINGLE_LAYER", "PLIES_FACE_UP"})
    void whatIsAlikeWithoutSymmetryIsRefusedFaceToFace(Form form) {
        assertThat(refusal(order(
                        spread(form, Direction.EITHER_WAY), 0, 1, cut(triangle("flap", 90, 60), 2, Cut.Manner.ALIKE))))
                .contains("flap", "mirrored", "single layer");
        assertThat(ruled(order(
                                spread(form, Direction.EITHER_WAY),
                                0,
                                1,
                                cut(rectangle("pocket", 90, 60), 2, Cut.Manner.ALIKE)))
                        .items())
                .hasSize(1);
    }

    private static Fabric spread(Form form, Direction direction) {
        return TestFabric.plain().spread(form).direction(direction).fabric();
    }

    /** 23 cm from the fold to its end, 4 cm wide. */
    private static Piece halfTie() {
        return withFold(rectangle("tie", 230, 40), 40);
    }

    private static Piece withFold(Piece piece, double across) {
        return new Piece(
                piece.name(),
                piece.size(),
                piece.outline(),
                piece.up(),
                piece.turning(),
                Optional.of(new Segment(Point.ORIGIN, new Point(0, Math.round(across * 1000)))),
                Optional.empty(),
                piece.strip(),
                piece.marks());
    }
}
