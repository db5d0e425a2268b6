package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import lengthwise.geometry.Box;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Item;
import lengthwise.model.Length;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** Jigsaws on cloth of which there is only so much; what comes out is worked out by hand. */
class ClothOnHandTest {
    private static final CutPiece BLOCKS = cut(rectangle("block", 100, 100), 6, Cut.Manner.ALIKE);

    /** Two rows of three blocks are 300 mm. */
    @Test
    void whatJustFitsFits() {
        MarkerAnswer answer = make(TestFabric.plain().width(200, 0).onHand(300).fabric(), BLOCKS);
        assertThat(((MarkerAnswer.Made) answer).marker().length()).isEqualTo(Length.ofMillimetres(300));
    }

    /** A micrometre less and one column of two blocks stays out. */
    @Test
    void aMicrometreLessAndAColumnStaysOut() {
        MarkerAnswer.TooLong answer = (MarkerAnswer.TooLong)
                make(TestFabric.plain().width(200, 0).onHand(299.999).fabric(), BLOCKS);
        assertThat(answer.shortfall()).isEqualTo(new Length(1));
        assertThat(answer.isCertain()).isTrue();
        assertThat(answer.staysOut()).hasSize(2);
    }

    /** The long piece sets the length; without it the six blocks fit, so that it alone stays out. */
    @Test
    void theLongPieceAloneStaysOut() {
        MarkerAnswer.TooLong answer = (MarkerAnswer.TooLong) make(
                TestFabric.plain().width(300, 0).onHand(300).fabric(),
                BLOCKS,
                cut(rectangle("tie", 350, 50), 1, Cut.Manner.ALIKE));
        assertThat(answer.shortfall()).isEqualTo(Length.ofMillimetres(50));
        assertThat(answer.staysOut().stream().map(Item::piece))
                .extracting("name")
                .containsExactly("tie");
    }

    /** 400 mm less 2 × 20 at the ends, of cloth that keeps 0.9 in the wash: 320 mm; the blocks take 300. */
    @Test
    void roomIsWhatIsLeftAfterTheWash() {
        Fabric washed = TestFabric.plain()
                .endAllowance(20)
                .shrinkage(0.1, 0, lengthwise.model.Shrinkage.Handling.PRE_WASH)
                .onHand(400)
                .fabric();
        assertThat(washed.room()).contains(Length.ofMillimetres(320));
    }

    /** An L: 200 × 100 beside 100 × 100. The L-shaped piece of the same outline has one place, three blocks have three. */
    @Test
    void anLShapedRemnantTakesItsOwnShape() {
        double[] corner = {0, 0, 100, 0, 100, 100, 200, 100, 200, 200, 0, 200};
        Fabric remnant = TestFabric.plain()
                .width(200, 0)
                .direction(Direction.ONE_WAY)
                .remnant(corner)
                .fabric();
        MarkerAnswer whole =
                make(remnant, cut(piece("ell", Optional.of(QuarterTurn.NONE), corner), 1, Cut.Manner.ALIKE));
        assertThat(whole).isInstanceOf(MarkerAnswer.Made.class);
        MarkerAnswer three = make(remnant, cut(rectangle("block", 100, 100), 3, Cut.Manner.ALIKE));
        assertThat(three).isInstanceOf(MarkerAnswer.Made.class);
        MarkerAnswer four = make(remnant, cut(rectangle("block", 100, 100), 4, Cut.Manner.ALIKE));
        assertThat(((MarkerAnswer.TooLong) four).staysOut()).hasSize(1);
    }

    /** Slanted ends, known answer: a parallelogram of cloth takes the parallelogram cut from it. */
    @Test
    void aSlantedRemnantTakesThePieceOfItsShape() {
        double[] slanted = {0, 0, 300, 0, 400, 200, 100, 200};
        MarkerAnswer answer = make(
                TestFabric.plain()
                        .width(200, 0)
                        .direction(Direction.ONE_WAY)
                        .remnant(slanted)
                        .fabric(),
                cut(piece("slant", Optional.of(QuarterTurn.NONE), slanted), 1, Cut.Manner.ALIKE));
        assertThat(((MarkerAnswer.Made) answer).marker().length()).isEqualTo(Length.ofMillimetres(400));
    }

    /** A flaw of 10 mm over the whole width at 100 mm: a column of blocks, the flaw, two columns: 310 mm. */
    @Test
    void aFlawOverTheWholeWidthIsLeftBetweenColumns() {
        MarkerAnswer answer = make(
                TestFabric.plain()
                        .width(200, 0)
                        .flaws(new Box(100_000, 0, 110_000, 200_000))
                        .onHand(310)
                        .fabric(),
                BLOCKS);
        assertThat(((MarkerAnswer.Made) answer).marker().length()).isEqualTo(Length.ofMillimetres(310));
    }

    private static MarkerAnswer make(Fabric fabric, CutPiece... pieces) {
        return MarkerMaking.make(
                order(fabric, 0, 1, pieces), Search.of(StopRule.iterations(60), 7, 1), (marker, progress) -> {});
    }
}
