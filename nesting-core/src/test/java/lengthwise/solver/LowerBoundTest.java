package lengthwise.solver;

import static lengthwise.testing.TestPieces.cut;
import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.order;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;

import lengthwise.model.Cut;
import lengthwise.model.MarkerOrder;
import lengthwise.rules.Ruling;
import lengthwise.testing.TestFabric;
import org.junit.jupiter.api.Test;

class LowerBoundTest {
    /** By hand: 40 triangles of 300 × 200 / 2 on 1460 mm. */
    @Test
    void areaOverHeight() {
        MarkerOrder order =
                order(TestFabric.plain().fabric(), 0, 40, cut(triangle("flap", 300, 200), 1, Cut.Manner.ALIKE));
        assertThat(bound(order)).isEqualTo((long) Math.ceil(40 * 300e3 * 200e3 / 2 / 1460e3));
    }

    @Test
    void theLongestPiece() {
        MarkerOrder order =
                order(TestFabric.plain().fabric(), 0, 1, cut(triangle("flap", 300, 200), 1, Cut.Manner.PAIR));
        assertThat(bound(order)).isEqualTo(300_000);
    }

    /** By hand: three half pieces with 300 mm each on the fold, 3 mm apart. */
    @Test
    void whatLiesOnTheFoldLiesSideBySide() {
        MarkerOrder order = order(
                TestFabric.plain().folded().fabric(),
                3,
                3,
                cut(onFold(rectangle("front", 300, 50), 300), 1, Cut.Manner.ON_FOLD));
        assertThat(bound(order)).isEqualTo(906_000);
    }

    private static long bound(MarkerOrder order) {
        return LowerBound.of(((Ruling.Task) Ruling.of(order)).task());
    }
}
