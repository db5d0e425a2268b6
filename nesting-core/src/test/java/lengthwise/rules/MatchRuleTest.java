package lengthwise.rules;

import static lengthwise.rules.Rulings.refusal;
import static lengthwise.rules.Rulings.ruled;
import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.holed;
import static lengthwise.testing.TestPieces.matched;
import static lengthwise.testing.TestPieces.mate;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.otherHand;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Axis;
import lengthwise.model.Cut.Manner;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Length;
import lengthwise.model.Piece;
import lengthwise.model.Repeat;
import lengthwise.model.Spread;
import lengthwise.rules.PlacementDomain.Positions.Lattice;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MatchRuleTest {
    private static final Fabric PRINT =
            TestFabric.plain().direction(Direction.ONE_WAY).repeat(150, 80).fabric();
    private static final Piece FRONT = holed(triangle("front", 90, 60), 50, 20, 10, 10);
    private static final Piece POCKET =
            matched(holed(triangle("pocket", 40, 30), 5, 8), 2, Optional.empty(), mate("front", 2));

    /** By hand: the pocket's hole (5, 8) falls as the front's second one (10, 10), which is (−40, −10) from its first. */
    @Test
    void aFixedMateTakesThePocketAlong() {
        Piece fixed = matched(FRONT, 1, Optional.empty(), Optional.empty());
        Ruling.Task task = ruled(order(PRINT, 0, 1, cut(fixed, 1, Manner.ALIKE), cut(POCKET, 1, Manner.ALIKE)));
        assertThat(task.task().bonds()).isEmpty();
        assertThat(lattice(task, 0))
                .isEqualTo(new Lattice(new Point(50_000, 20_000), Point.ORIGIN, 150_000, 80_000, false, 1_000));
        assertThat(lattice(task, 1))
                .isEqualTo(new Lattice(new Point(45_000, 18_000), Point.ORIGIN, 150_000, 80_000, false, 1_000));
    }

    @Test
    void withoutAFixedOneThePhaseIsFreeForEachGarment() {
        Ruling.Task task = ruled(order(PRINT, 0, 2, cut(FRONT, 1, Manner.ALIKE), cut(POCKET, 1, Manner.ALIKE)));
        assertThat(task.task().bonds())
                .containsExactlyInAnyOrder(
                        new Bond.SamePhase(List.of(0, 1), List.of()), new Bond.SamePhase(List.of(2, 3), List.of()));
        assertThat(lattice(task, 0).anchor()).isEqualTo(new Point(10_000, 10_000));
        assertThat(lattice(task, 1).anchor()).isEqualTo(new Point(5_000, 8_000));
        assertThat(lattice(task, 1).tolerance()).isEqualTo(1_000);
    }

    /** A left pocket goes with the left front; a flip turns the way between the marks with the piece. */
    @Test
    void handsGoTogether() {
        Ruling.Task task = ruled(order(PRINT, 0, 1, cut(FRONT, 1, Manner.PAIR), cut(POCKET, 1, Manner.PAIR)));
        assertThat(task.task().bonds())
                .containsExactlyInAnyOrder(
                        new Bond.SamePhase(List.of(0, 2), List.of()), new Bond.SamePhase(List.of(1, 3), List.of()));
    }

    @Test
    void leftAndRightMoveMirrored() {
        Piece front = matched(FRONT, 1, Optional.empty(), otherHand());
        Fabric mirrored = TestFabric.plain()
                .direction(Direction.ONE_WAY)
                .repeat(new Repeat(mm(150), mm(80), /* halfDrop= */ false, /* mirrored= */ true, mm(0), mm(0)))
                .fabric();
        CutPiece pair = cut(front, 1, Manner.PAIR);
        Ruling.Task task = ruled(order(mirrored, 0, 1, pair, cut(POCKET, 1, Manner.PAIR)));
        assertThat(task.task().bonds()).hasSize(1);
        Bond.SamePhase phase = (Bond.SamePhase) task.task().bonds().get(0);
        assertThat(phase.members()).containsExactlyInAnyOrder(0, 1, 2, 3);
        // right front and right pocket, left front and left pocket
        assertThat(phase.mirrored()).containsExactlyInAnyOrder(1, 3);
        assertThat(refusal(order(PRINT, 0, 1, pair)))
                .contains("print of test-cloth", "mirror image?", "front", "mirrored: yes", "along: lengthwise");
        assertThat(refusal(order(mirrored, 0, 1, cut(front, 1, Manner.ALIKE))))
                .contains("front is matched to its other hand", "cut it as a pair");
    }

    @Test
    void whatIsMatchedAlongOneAxisIsFreeAlongTheOther() {
        Piece front = matched(FRONT, 1, Optional.of(Axis.CROSSWISE), Optional.empty());
        assertThat(lattice(ruled(order(PRINT, 0, 1, cut(front, 1, Manner.ALIKE))), 0))
                .isEqualTo(new Lattice(new Point(50_000, 20_000), Point.ORIGIN, 0, 80_000, false, 1_000));
        assertThat(refusal(order(PRINT, 0, 1, cut(front, 1, Manner.ALIKE), cut(POCKET, 1, Manner.ALIKE))))
                .contains("pocket is matched to front lengthwise", "same along");
    }

    /** Pieces that may be turned turn together: else the way from mark to mark would be another. */
    @Test
    void matchedPiecesLieAtOneTurn() {
        Fabric eitherWay = TestFabric.plain().repeat(150, 80).fabric();
        Ruling.Task task = ruled(order(eitherWay, 0, 1, cut(FRONT, 1, Manner.ALIKE), cut(POCKET, 1, Manner.ALIKE)));
        assertThat(task.task().bonds())
                .containsExactly(new Bond.SameTurn(List.of(0, 1)), new Bond.SamePhase(List.of(0, 1), List.of()));
        Fabric perGarment = TestFabric.plain()
                .direction(Direction.ONE_WAY_PER_GARMENT)
                .repeat(150, 80)
                .fabric();
        Ruling.Task turned = ruled(order(
                perGarment,
                0,
                1,
                cut(FRONT, 1, Manner.ALIKE),
                cut(triangle("flap", 30, 20), 1, Manner.ALIKE),
                cut(POCKET, 1, Manner.ALIKE)));
        assertThat(turned.task().bonds().get(0)).isEqualTo(new Bond.SameTurn(List.of(0, 1, 2)));
        assertThat(turned.task().bonds()).hasSize(2);
    }

    @Test
    void contradictionsNameBoth() {
        assertThat(refusal(order(PRINT, 0, 1, cut(POCKET, 1, Manner.ALIKE))))
                .contains("pocket is matched to front", "front is not cut from test-cloth");
        assertThat(refusal(order(
                        PRINT, 0, 1, cut(triangle("front", 90, 60), 1, Manner.ALIKE), cut(POCKET, 1, Manner.ALIKE))))
                .contains("pocket is matched to drill hole 2 of front", "no such mark");
        // one pocket cannot lie as the left and as the right of a mirrored pair
        Piece front = matched(FRONT, 1, Optional.empty(), otherHand());
        Fabric mirrored = TestFabric.plain()
                .direction(Direction.ONE_WAY)
                .repeat(new Repeat(mm(150), mm(80), /* halfDrop= */ false, /* mirrored= */ true, mm(0), mm(0)))
                .fabric();
        assertThat(refusal(order(mirrored, 0, 1, cut(front, 1, Manner.PAIR), cut(POCKET, 1, Manner.ALIKE))))
                .contains("pocket", "front", "contradict each other");
    }

    /** Where layers hide the print no other reason is given, such as how the print falls on a fold, and none that is untrue. */
    @ParameterizedTest
    @EnumSource(
            value = Spread.Form.class,
            names = {"FOLD_CROSSWISE", "SELVEDGES_TO_MIDDLE", "TUBE", "PLIES_FACE_TO_FACE"})
    void layersThatHideThePrintAreTheReason(Spread.Form form) {
        Repeat besideTheFold = new Repeat(mm(150), mm(80), /* halfDrop= */ false, mm(0), mm(17));
        Fabric hidden = TestFabric.plain().spread(form).repeat(besideTheFold).fabric();
        Piece fixed = matched(FRONT, 1, Optional.empty(), Optional.empty());
        assertThat(refusal(order(hidden, 0, 1, cut(fixed, 1, Manner.PAIR))))
                .contains("front is matched", "does not lie under it", "single layer");
    }

    @Test
    void withoutARepeatNothingIsMatched() {
        Ruling.Task task = ruled(order(TestFabric.plain().fabric(), 0, 1, cut(POCKET, 1, Manner.ALIKE)));
        assertThat(task.task().demands().get(0).domain().positions()).isEqualTo(new PlacementDomain.Positions.Free());
    }

    private static Lattice lattice(Ruling.Task task, int demand) {
        return (Lattice) task.task().demands().get(demand).domain().positions();
    }

    private static Length mm(double millimetres) {
        return Length.ofMillimetres(millimetres);
    }
}
