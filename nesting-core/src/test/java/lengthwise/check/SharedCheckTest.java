package lengthwise.check;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.ring;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import lengthwise.geometry.Outline;
import lengthwise.geometry.QuarterTurn;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Direction;
import lengthwise.model.Fabric;
import lengthwise.model.Garment;
import lengthwise.model.Length;
import lengthwise.model.PlacedPiece;
import lengthwise.model.SharedOrder;
import lengthwise.model.Size;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

/** Markers laid by hand on a remnant and on a bolt, and what is wrong with them together. */
class SharedCheckTest {
    private static final Fabric LEFT =
            TestFabric.plain().named("left").width(200, 0).onHand(200).fabric();
    private static final Fabric BOLT =
            TestFabric.plain().named("bolt").width(400, 0).fabric();

    /** Two garments of two blocks each. */
    private static final SharedOrder BLOCKS = shared(cut(rectangle("block", 100, 100), 2, Cut.Manner.ALIKE));

    private static final CutPiece CUPS =
            cut(piece("cup", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 60, 10, 60, 0, 50), 1, Cut.Manner.PAIR);

    @Test
    void togetherTheyHoldTheOrder() {
        assertThat(sentences(BLOCKS, onLeft(block(1, 0), block(1, 100), block(2, 200)), onBolt(block(2, 0))))
                .isEmpty();
        assertThat(sentences(BLOCKS, onBolt(block(1, 0), block(1, 100), block(2, 200), block(2, 300))))
                .isEmpty();
    }

    @Test
    void whatOneOfThemLacksIsMissing() {
        assertThat(sentences(BLOCKS, onLeft(block(1, 0), block(1, 100)), onBolt(block(2, 0))))
                .containsExactly("Garment 2 lacks 1 × block.");
        assertThat(sentences(BLOCKS, onLeft(block(1, 0), block(1, 100)))).containsExactly("Garment 2 lacks 2 × block.");
    }

    @Test
    void whatBothOfThemHaveIsOneTooMany() {
        assertThat(sentences(
                        BLOCKS, onLeft(block(1, 0), block(1, 100)), onBolt(block(1, 0), block(2, 100), block(2, 200))))
                .containsExactly("There is one more of block of garment 1 than ordered.");
    }

    /** Each is held to its own cloth: 200 mm of the remnant are there, and of the bolt as much as need be. */
    @Test
    void eachIsHeldToItsOwnCloth() {
        SharedCheck.Findings findings = SharedCheck.of(
                BLOCKS,
                List.of(
                        onLeft(block(1, 0), at("block", 2, "", 101, 0, 201, 0, 201, 100, 101, 100)),
                        onBolt(block(1, 0), at("block", 2, "", 900, 0, 1000, 0, 1000, 100, 900, 100))),
                Length.ZERO);
        assertThat(findings.ofEach().get(0)).hasSize(1).first().isInstanceOf(Violation.BeyondCloth.class);
        assertThat(findings.ofEach().get(1)).isEmpty();
        assertThat(findings.together()).isEmpty();
    }

    @Test
    void aGarmentThatIsKeptTogetherIsNotCutFromTwo() {
        SharedOrder together = new SharedOrder(BLOCKS.cloths(), true);
        assertThat(sentences(together, onLeft(block(1, 0), block(2, 100)), onBolt(block(1, 0), block(2, 100))))
                .containsExactly(
                        "Garment 1 is cut from left and bolt; all of it has to come from one piece of cloth.",
                        "Garment 2 is cut from left and bolt; all of it has to come from one piece of cloth.");
        assertThat(sentences(together, onLeft(block(1, 0), block(1, 100)), onBolt(block(2, 0), block(2, 100))))
                .isEmpty();
    }

    /** Without a word of it where the shade drifts. */
    @Test
    void oneShadeKeepsGarmentsTogether() {
        SharedOrder shaded = new SharedOrder(
                BLOCKS.cloths().stream()
                        .map(order -> order.withFabric(order.fabric()
                                .withShade(TestFabric.plain()
                                        .shadeLengthwise(500)
                                        .fabric()
                                        .shade())))
                        .toList(),
                false);
        assertThat(sentences(shaded, onLeft(block(1, 0), block(2, 100)), onBolt(block(1, 0), block(2, 100))))
                .hasSize(2);
    }

    @Test
    void leftAndRightComeFromOneCloth() {
        SharedOrder cups = shared(CUPS);
        assertThat(sentences(cups, onLeft(right(1, 0), left(1, 60)), onBolt(right(2, 0), left(2, 60))))
                .isEmpty();
        assertThat(sentences(cups, onLeft(right(1, 0), right(2, 60)), onBolt(left(1, 0), left(2, 60))))
                .containsExactly(
                        "Left and right of cup of garment 1 are cut from left and bolt; a pair comes from one piece of cloth.",
                        "Left and right of cup of garment 2 are cut from left and bolt; a pair comes from one piece of cloth.");
    }

    /** Two right hands and one left: the second right is not what is ordered, wherever it lies. */
    @Test
    void handsAreCountedOverAll() {
        SharedOrder cups = shared(CUPS);
        assertThat(sentences(cups, onLeft(right(1, 0), left(1, 60)), onBolt(right(2, 0), right(2, 60))))
                .singleElement()
                .asString()
                .contains("lies as drawn", "1 have to lie as drawn and 1 mirrored");
    }

    /** A filler is laid once, on one cloth or on the other. */
    @Test
    void aFillerIsLaidOnce() {
        SharedOrder filled = new SharedOrder(
                BLOCKS.cloths().stream()
                        .map(order -> order.withFillers(List.of(new Bundle(
                                new Garment(3, Size.ONE),
                                List.of(cut(rectangle("patch", 50, 50), 1, Cut.Manner.ALIKE))))))
                        .toList(),
                false);
        PlacedPiece patch = at("patch", 3, "", 100, 0, 150, 0, 150, 50, 100, 50);
        SharedCheck.Part blocks = onBolt(block(1, 0), block(1, 100), block(2, 200), block(2, 300));
        assertThat(sentences(filled, blocks, onLeft(patch))).isEmpty();
        SharedCheck.Part withPatch = onBolt(
                block(1, 0),
                block(1, 100),
                block(2, 200),
                block(2, 300),
                at("patch", 3, "", 200, 0, 250, 0, 250, 50, 200, 50));
        assertThat(sentences(filled, withPatch, onLeft(patch)))
                .containsExactly("There is one more of patch of garment 3 than ordered.");
    }

    /** Where garments lie one way each, a garment's direction is found on its own cloth. */
    @Test
    void garmentsPointOneWayOnTheirOwnCloth() {
        SharedOrder oneWayEach = new SharedOrder(
                shared(cut(
                                piece("cap", Optional.of(QuarterTurn.NONE), 0, 0, 100, 0, 100, 60, 0, 50),
                                2,
                                Cut.Manner.ALIKE))
                        .cloths()
                        .stream()
                        .map(order -> order.withFabric(order.fabric().withDirection(Direction.ONE_WAY_PER_GARMENT)))
                        .toList(),
                false);
        PlacedPiece turned = at("cap", 1, "", 0, 100, 100, 110, 100, 160, 0, 160);
        PlacedPiece asDrawn = at("cap", 1, "", 0, 0, 100, 0, 100, 60, 0, 50);
        SharedCheck.Part second = onBolt(
                at("cap", 2, "", 0, 0, 100, 0, 100, 60, 0, 50), at("cap", 2, "", 0, 100, 100, 100, 100, 160, 0, 150));
        assertThat(sentences(oneWayEach, second, onLeft(asDrawn, turned)))
                .singleElement()
                .asString()
                .contains("lies the other way than the rest of its garment");
    }

    @Test
    void aPieceOfClothHasOneMarker() {
        assertThatThrownBy(() -> sentences(BLOCKS, onLeft(block(1, 0)), onLeft(block(1, 100))))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static SharedOrder shared(CutPiece pieces) {
        return new SharedOrder(List.of(order(BOLT, 0, 2, pieces), order(LEFT, 0, 2, pieces)), false);
    }

    private static List<String> sentences(SharedOrder shared, SharedCheck.Part... parts) {
        return SharedCheck.of(shared, List.of(parts), Length.ZERO).all().stream()
                .map(Violation::sentence)
                .toList();
    }

    private static SharedCheck.Part onLeft(PlacedPiece... pieces) {
        return part("left", pieces);
    }

    private static SharedCheck.Part onBolt(PlacedPiece... pieces) {
        return part("bolt", pieces);
    }

    private static SharedCheck.Part part(String cloth, PlacedPiece... pieces) {
        Length end = new Length(Stream.of(pieces)
                .mapToLong(piece -> piece.outline().box().maxX())
                .max()
                .orElseThrow());
        return new SharedCheck.Part(cloth, List.of(pieces), end);
    }

    /** A block in the first column, or from 200 on in the second. */
    private static PlacedPiece block(int garment, double place) {
        double x = place >= 200 ? 100 : 0;
        double y = place % 200;
        return at("block", garment, "", x, y, x + 100, y, x + 100, y + 100, x, y + 100);
    }

    private static PlacedPiece right(int garment, double y) {
        return at("cup", garment, "R", 0, y, 100, y, 100, y + 60, 10, y + 60, 0, y + 50);
    }

    private static PlacedPiece left(int garment, double y) {
        return at("cup", garment, "L", 0, y + 60, 0, y + 10, 10, y, 100, y, 100, y + 60);
    }

    private static PlacedPiece at(String name, int garment, String hand, double... corners) {
        return new PlacedPiece(name, "", List.of(garment), hand, Outline.of(ring(corners)));
    }
}
