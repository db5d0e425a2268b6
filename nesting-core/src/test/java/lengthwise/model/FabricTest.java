package lengthwise.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class FabricTest {
    /**
     * Marker width = fabric width − selvedges − allowance (Industrial Cutting of Textile Materials, p. 19): 150 cm with
     * 2 cm unusable each side is 146 cm, not 148.
     */
    @Test
    void cuttableWidthLosesBothEdges() {
        assertThat(TestFabric.plain().fabric().cuttableWidth()).isEqualTo(Length.ofMillimetres(1460));
    }

    /** By hand: half of 150 cm, less one edge: the fold is no edge. */
    @Test
    void foldedFabricLosesOneEdge() {
        assertThat(TestFabric.plain().folded().fabric().cuttableWidth()).isEqualTo(Length.ofMillimetres(730));
    }

    /** By hand: 146 cm less 2 % is 143.08 cm; a 32 cm repeat less 3 % is 31.04 cm. */
    @Test
    void washedFirstTheClothIsNarrowerAndTheRepeatSmaller() {
        Fabric washed = TestFabric.plain()
                .repeat(320, 0)
                .shrinkage(0.03, 0.02, Shrinkage.Handling.PRE_WASH)
                .fabric();
        assertThat(washed.cuttableWidth()).isEqualTo(Length.ofMillimetres(1430.8));
        assertThat(washed.repeatOnTable().orElseThrow().lengthwise()).isEqualTo(Length.ofMillimetres(310.4));
    }

    @Test
    void shrinkageHandledElsewhereLeavesTheClothAlone() {
        for (Shrinkage.Handling handled : List.of(Shrinkage.Handling.ADD_TO_PIECES, Shrinkage.Handling.IN_PATTERN)) {
            assertThat(TestFabric.plain()
                            .shrinkage(0.03, 0.02, handled)
                            .fabric()
                            .cuttableWidth())
                    .isEqualTo(Length.ofMillimetres(1460));
        }
    }
}
