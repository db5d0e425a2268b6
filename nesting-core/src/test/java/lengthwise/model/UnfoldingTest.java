package lengthwise.model;

import static lengthwise.testing.TestPieces.onFold;
import static lengthwise.testing.TestPieces.piece;
import static lengthwise.testing.TestPieces.rectangle;
import static lengthwise.testing.TestPieces.ring;
import static lengthwise.testing.TestPieces.triangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import lengthwise.geometry.Outline;
import org.junit.jupiter.api.Test;

class UnfoldingTest {
    /** A half piece with a mirror line is mirrored once: half 150 cm² gives 300 cm² (follows from the definition). */
    @Test
    void theWholeHasTwiceTheAreaOfTheHalf() {
        Piece half = onFold(rectangle("front", 150, 100), 150);
        Piece whole = Unfolding.whole(half);
        assertThat(half.outline().squareMillimetres()).isEqualTo(15_000);
        assertThat(whole.outline().squareMillimetres()).isEqualTo(30_000);
        assertThat(whole.isSymmetric()).isTrue();
        assertThat(whole.foldEdge()).isEmpty();
    }

    @Test
    void theTriangleOpensToAnArrowHead() {
        Piece whole = Unfolding.whole(onFold(triangle("front", 300, 200), 300));
        assertThat(Congruence.byTranslation(whole.outline(), Outline.of(ring(300, 0, 0, 200, 0, -200))))
                .isTrue();
        assertThat(whole.outline().squareMillimetres()).isEqualTo(60_000);
    }

    @Test
    void anOutlineThatMeetsTheFoldTwiceIsRefused() {
        Piece half = onFold(
                piece("front", Optional.empty(), 0, 0, 100, 0, 100, 50, 150, 50, 150, 0, 300, 0, 300, 99, 0, 99), 100);
        assertThatThrownBy(() -> Unfolding.whole(half)).hasMessageContaining("2 places");
    }
}
