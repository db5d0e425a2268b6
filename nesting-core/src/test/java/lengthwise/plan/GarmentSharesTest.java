package lengthwise.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import lengthwise.geometry.Point;
import lengthwise.model.Bundle;
import lengthwise.model.Cut;
import lengthwise.model.CutPiece;
import lengthwise.model.Garment;
import lengthwise.model.Hand;
import lengthwise.model.Length;
import lengthwise.model.MarkerOrder;
import lengthwise.model.Piece;
import lengthwise.model.Segment;
import lengthwise.model.Size;
import lengthwise.testing.TestFabric;
import lengthwise.testing.TestPieces;
import org.junit.jupiter.api.Test;

class GarmentSharesTest {
    /**
     * By hand, in cm²: the small one a pair of 10 × 10 and one of 10 × 20 (400); the large one a half of 10 × 40 that opens
     * to 20 × 40 (800) and two alike of 10 × 10 (200), 1000 together. Of 1400 that is 2/7 and 5/7.
     */
    @Test
    void garmentsPayByTheAreaOfTheirPieces() {
        MarkerOrder order = new MarkerOrder(
                TestFabric.plain().fabric(),
                Length.ZERO,
                List.of(
                        new Bundle(
                                new Garment(1, new Size("S")),
                                List.of(
                                        cut(TestPieces.rectangle("cup", 100, 100), 1, Cut.Manner.PAIR),
                                        cut(TestPieces.rectangle("band", 100, 200), 1, Cut.Manner.ALIKE))),
                        new Bundle(
                                new Garment(2, new Size("L")),
                                List.of(
                                        cut(half(), 1, Cut.Manner.ON_FOLD),
                                        cut(TestPieces.rectangle("loop", 100, 100), 2, Cut.Manner.ALIKE)))));

        GarmentShares shares = GarmentShares.of(order);

        assertThat(shares.of(1)).isCloseTo(2.0 / 7, within(1e-12));
        assertThat(shares.of(2)).isCloseTo(5.0 / 7, within(1e-12));
        assertThat(shares.of(3)).isZero();
    }

    private static Piece half() {
        Piece whole = TestPieces.rectangle("front", 400, 100);
        return new Piece(
                whole.name(),
                whole.size(),
                whole.outline(),
                whole.up(),
                whole.turning(),
                Optional.of(new Segment(new Point(0, 0), new Point(400_000, 0))),
                whole.matchPoint(),
                whole.strip(),
                whole.marks());
    }

    private static CutPiece cut(Piece piece, int count, Cut.Manner manner) {
        return new CutPiece(piece, new Cut(count, manner), Hand.NONE);
    }
}
