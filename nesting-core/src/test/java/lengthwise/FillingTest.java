package lengthwise;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.check.MarkerCheck;
import lengthwise.check.Violation;
import lengthwise.geometry.Point;
import lengthwise.geometry.Pose;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Length;
import lengthwise.model.Marker;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Placement;
import lengthwise.model.Size;
import lengthwise.solver.Search;
import lengthwise.solver.StopRule;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fillers in the room that blocks leave; what fits is worked out by hand. */
class FillingTest {
    /** On cloth of 200 mm three blocks are 200 mm long and leave room for one more. */
    private static final CutPiece THREE_BLOCKS = cut(rectangle("block", 100, 100), 3, Cut.Manner.ALIKE);

    private static final Fabric CLOTH = TestFabric.plain().width(200, 0).fabric();

    @Test
    void oneFillerFitsIntoTheRoomOfABlock() {
        Filling filling = filled(CLOTH, filler(rectangle("patch", 100, 100), 5));
        assertThat(filling.kinds()).containsExactly(new Filling.Kind("patch", 1, 5));
        assertThat(filling.marker().length()).isEqualTo(Length.ofMillimetres(200));
        assertThat(filling.marker().placements()).hasSize(4);
        assertThat(filling.marker().efficiency()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {100.001, 100.2, 300})
    void oneThatIsAMicrometreTooWideStaysOut(double side) {
        Filling filling = filled(CLOTH, filler(rectangle("patch", 100, side), 5));
        assertThat(filling.kinds()).containsExactly(new Filling.Kind("patch", 0, 5));
        assertThat(filling.marker().placements()).hasSize(3);
        assertThat(filling.marker().length()).isEqualTo(Length.ofMillimetres(200));
    }

    /** 100 × 100 holds one of 100 × 60 and, on what is left of it, two of 50 × 40: the larger one goes first. */
    @Test
    void theLargestGoesFirst() {
        Filling filling = filled(CLOTH, filler(rectangle("small", 50, 40), 9), filler(rectangle("large", 100, 60), 2));
        assertThat(filling.kinds()).containsExactly(new Filling.Kind("small", 2, 9), new Filling.Kind("large", 1, 2));
        assertThat(MarkerCheck.violations(filling.marker())).isEmpty();
    }

    /** The room of a block takes one of 100 × 60, but not two: so of a pair neither is laid. */
    @Test
    void ofAPairNoHalfIsLaid() {
        Piece cup = piece("cup", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 60, 10, 60, 0, 50);
        assertThat(filled(CLOTH, filler(cup, 3)).kinds()).containsExactly(new Filling.Kind("cup", 1, 3));
        assertThat(filled(CLOTH, new Fillers(cut(cup, 1, Cut.Manner.PAIR), 3)).kinds())
                .containsExactly(new Filling.Kind("cup", 0, 3));
        Piece half = piece("cup", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 50, 10, 50, 0, 40);
        assertThat(filled(CLOTH, new Fillers(cut(half, 1, Cut.Manner.PAIR), 3)).kinds())
                .containsExactly(new Filling.Kind("cup", 1, 3));
    }

    /** Folded cloth gives two at a time, so that of three allowed two are laid. */
    @Test
    void noMoreComeOutThanAreAllowed() {
        Fabric folded = TestFabric.plain().width(400, 0).folded().fabric();
        CutPiece six = cut(rectangle("block", 100, 100), 6, Cut.Manner.ALIKE);
        Filling filling = filled(withFillers(order(folded, 0, 1, six), filler(rectangle("patch", 50, 50), 3)));
        assertThat(filling.kinds()).containsExactly(new Filling.Kind("patch", 2, 3));
    }

    /** A triangle in the corner that its like leaves has to be turned, which one-way cloth does not allow. */
    @Test
    void fillersKeepTheDirection() {
        CutPiece slope = cut(triangle("slope", 200, 200), 1, Cut.Manner.ALIKE);
        TestFabric cloth = TestFabric.plain().width(200, 0);
        Fillers like = filler(triangle("patch", 200, 200), 1);
        assertThat(filled(withFillers(order(cloth.fabric(), 0, 1, slope), like))
                        .kinds()
                        .get(0)
                        .laid())
                .isEqualTo(1);
        Fabric oneWay = cloth.direction(Direction.ONE_WAY).fabric();
        assertThat(filled(withFillers(order(oneWay, 0, 1, slope), like))
                        .kinds()
                        .get(0)
                        .laid())
                .isZero();
    }

    @Test
    void theCheckFindsAFillerThatLies200MicrometresIntoAPiece() {
        Marker filled = filled(CLOTH, filler(rectangle("patch", 100, 100), 1)).marker();
        assertThat(sentences(moved(filled, 3, 0))).isEmpty();
        assertThat(sentences(moved(filled, 3, 200))).isNotEmpty().allMatch(sentence -> sentence.contains("patch"));
    }

    @Test
    void theCheckFindsOneFillerMoreThanAllowed() {
        Marker filled = filled(CLOTH, filler(rectangle("patch", 100, 100), 1)).marker();
        MarkerOrder none = order(CLOTH, 0, 1, THREE_BLOCKS);
        assertThat(sentences(new Marker(none, filled.placements(), filled.length())))
                .containsExactly("patch of garment 2 is not in the order.");
        MarkerOrder allowed = withFillers(none, filler(rectangle("patch", 100, 100), 1));
        assertThat(sentences(new Marker(allowed, filled.placements(), filled.length())))
                .isEmpty();
    }

    @Test
    void theCheckFindsHalfAPairOfAFiller() {
        Fabric wide = TestFabric.plain().width(400, 0).fabric();
        MarkerOrder order = withFillers(
                order(wide, 0, 1, THREE_BLOCKS), new Fillers(cut(triangle("cup", 90, 45), 1, Cut.Manner.PAIR), 1));
        Marker filled = filled(order).marker();
        assertThat(filled.placements()).hasSize(5);
        Marker half = new Marker(order, filled.placements().subList(0, 4), filled.length());
        assertThat(sentences(half)).singleElement().asString().startsWith("Garment 2 lacks 1 × cup");
    }

    @Test
    void aFillerThatTheClothRefusesIsRefusedBeforeTheSearch() {
        Fabric folded = TestFabric.plain().width(400, 0).folded().fabric();
        MarkerOrder order = withFillers(order(folded, 0, 1, THREE_BLOCKS), filler(triangle("patch", 50, 40), 1));
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Impossible.class);
        assertThat(((MarkerAnswer.Impossible) answer).reason()).startsWith("patch is cut alike");
    }

    private record Fillers(CutPiece piece, int atMost) {}

    private static Fillers filler(Piece piece, int atMost) {
        return new Fillers(cut(piece, 1, Cut.Manner.ALIKE), atMost);
    }

    private static MarkerOrder withFillers(MarkerOrder order, Fillers... fillers) {
        List<Bundle> units = new ArrayList<>();
        int number = order.bundles().size();
        for (Fillers kind : fillers) {
            for (int i = 0; i < kind.atMost(); i++) {
                units.add(new Bundle(new Garment(++number, Size.ONE), List.of(kind.piece())));
            }
        }
        return order.withFillers(units);
    }

    private static Filling filled(Fabric fabric, Fillers... fillers) {
        return filled(withFillers(order(fabric, 0, 1, THREE_BLOCKS), fillers));
    }

    private static Filling filled(MarkerOrder order) {
        MarkerAnswer answer = MarkerMaking.make(order, search(), (marker, progress) -> {});
        assertThat(answer).isInstanceOf(MarkerAnswer.Made.class);
        return Filling.of(((MarkerAnswer.Made) answer).marker(), Search.of(progress -> 0, 7, 1));
    }

    private static Search search() {
        return Search.of(StopRule.iterations(60), 7, 1);
    }

    private static Marker moved(Marker marker, int number, long by) {
        List<Placement> placements = IntStream.range(0, marker.placements().size())
                .mapToObj(i -> {
                    Placement placement = marker.placements().get(i);
                    Point offset = placement.pose().offset();
                    // towards the middle of the cloth, where the blocks are
                    long inwards = placement.outline().box().minY() == 0 ? by : -by;
                    return i == number
                            ? new Placement(
                                    placement.item(),
                                    new Pose(placement.pose().orientation(), offset.plus(new Point(0, inwards))))
                            : placement;
                })
                .toList();
        return new Marker(marker.order(), placements, marker.length());
    }

    private static List<String> sentences(Marker marker) {
        return MarkerCheck.violations(marker).stream().map(Violation::sentence).toList();
    }
}
