package lengthwise.plan.lays;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lengthwise.model.Length;
import org.junit.jupiter.api.Test;

class BoltPliesTest {
    /** A lay of 6.5 m from rolls of 15 and 16 m: two plies of each, remnants of 2 and 3 m (scribd.com/document/561483911). */
    @Test
    void twoPliesOfEachRoll() {
        BoltPlies cut = of(metres(15, 16), metres(6.5), List.of(4)).orElseThrow();
        assertThat(cut.plies()).containsExactly(List.of(2), List.of(2));
        assertThat(cut.left()).isEqualTo(metres(2, 3));
    }

    /** A roll of 100 m gives nine plies of 10.5 m and leaves 5.5 m (a puzzle "Optimize cloth usage", copied widely). */
    @Test
    void ninePliesOfARoll() {
        assertThat(of(metres(100), metres(10.5), List.of(9)).orElseThrow().left())
                .isEqualTo(metres(5.5));
        assertThat(of(metres(100), metres(10.5), List.of(10))).isEmpty();
    }

    /** By hand: 3 + 3 m and 4 + 2 m fill two bolts of 6 m; the long bolt stays whole. */
    @Test
    void shortBoltsBeforeALongOne() {
        BoltPlies cut = of(metres(20, 6, 6), metres(3, 4, 2), List.of(2, 1, 1)).orElseThrow();
        assertThat(cut.left()).isEqualTo(metres(20, 0, 0));
    }

    /** By hand: 6 cm of each begun bolt go for its square ends, so a bolt of 6 m does not hold two plies of 3 m. */
    @Test
    void squareEndsAreLostOnceOnABolt() {
        Length lost = Length.ofMillimetres(60);
        List<Length> bolts = metres(6, 6.06, 9);
        BoltPlies cut =
                BoltPlies.of(bolts, metres(3), List.of(2), lost, () -> false).orElseThrow();
        assertThat(cut.plies()).containsExactly(List.of(0), List.of(2), List.of(0));
        assertThat(cut.left()).isEqualTo(metres(6, 0, 9));
        assertThat(BoltPlies.of(metres(6), metres(3), List.of(2), lost, () -> false))
                .isEmpty();
    }

    /** By hand: 12 m of cloth, but no bolt of 4 m holds a ply of 5 m. */
    @Test
    void aPlyIsNeverJoined() {
        assertThat(of(metres(4, 4, 4), metres(5), List.of(1))).isEmpty();
    }

    /** The same rolls and bolts where the search may not even begin: a plan that is ended is cut from them all the same. */
    @Test
    void endedAtOnceItStillSaysFromWhichBolts() {
        BoltPlies cut = endedAtOnce(metres(15, 16), metres(6.5), List.of(4)).orElseThrow();
        assertThat(cut.plies()).containsExactly(List.of(2), List.of(2));
        assertThat(cut.left()).isEqualTo(metres(2, 3));
        assertThat(endedAtOnce(metres(20, 6, 6), metres(3, 4, 2), List.of(2, 1, 1))
                        .orElseThrow()
                        .left())
                .isEqualTo(metres(20, 0, 0));
        assertThat(endedAtOnce(metres(4, 4, 4), metres(5), List.of(1))).isEmpty();
        // by hand: the shortest bolt holds one ply and its ends, so that a second one is begun
        assertThat(BoltPlies.of(metres(6, 6.06, 9), metres(3), List.of(2), Length.ofMillimetres(60), () -> true)
                        .orElseThrow()
                        .left())
                .isEqualTo(metres(2.94, 3, 9));
    }

    private static Optional<BoltPlies> endedAtOnce(List<Length> bolts, List<Length> lengths, List<Integer> wanted) {
        return BoltPlies.of(bolts, lengths, wanted, Length.ZERO, () -> true);
    }

    private static Optional<BoltPlies> of(List<Length> bolts, List<Length> lengths, List<Integer> wanted) {
        return BoltPlies.of(bolts, lengths, wanted, Length.ZERO, () -> false);
    }

    private static List<Length> metres(double... metres) {
        return IntStream.range(0, metres.length)
                .mapToObj(i -> new Length(Math.round(1e6 * metres[i])))
                .toList();
    }
}
